/** Where the pencil puts its marks, against what verovio itself prints at those places. */
import { beforeAll, describe, expect, test } from 'vitest'
import type { VerovioToolkit } from 'verovio/esm'
import { ledgerLines } from '@/engraving/clefs'
import { draw } from '@/engraving/draw'
import { ledgers, strokesOf } from '@/engraving/marks'
import { readPage, type Page, type PageNote } from '@/engraving/page'
import type { PencilMark } from '@/engraving/pencilMark'
import { spell } from '@/music/spelling'
import { cutStretch } from '@/engraving/stretch'
import { openEngraverHere } from '../support/toolkit'
import { formatKey, parseKey } from '@/music/pitch'
import { key, noteId, tick } from '@/music/units'
import { scoreOf, type Frame } from './notation'

let toolkit: VerovioToolkit
beforeAll(async () => {
  toolkit = await openEngraverHere()
})

const pageOf = (text: string, frame: Frame = {}, width = 900, height = 300): Page => {
  const score = scoreOf(text, frame)
  const hand = text.includes('l:') ? 'both' : 'right'
  const stretch = cutStretch(score, tick(0), score.end, hand)
  if (!stretch) throw new Error('no such stretch')
  return readPage(draw(toolkit, stretch, { width, height }).svg)
}

const noteOf = (page: Page, id: string): PageNote => {
  const note = page.notes.get(id)
  if (!note) throw new Error(`no note ${id}`)
  return note
}

/** The middle height of the first stroke of a mark, and its reach from left to right. */
const placeOf = (mark: PencilMark, page: Page, stroke = 0) => {
  const path = strokesOf(mark, page)[stroke]?.path ?? ''
  const points = [...path.matchAll(/(-?[\d.]+) (-?[\d.]+)(?=[A-Z]|$)/g)]
  const xs = points.map(([, x]) => Number(x))
  const ys = points.map(([, , y]) => Number(y))
  return {
    left: Math.min(...xs),
    right: Math.max(...xs),
    y: (Math.min(...ys) + Math.max(...ys)) / 2,
  }
}

/** How many ledger lines a head on this page has. */
const ledgerCount = ({ y, staff }: PageNote): number =>
  Math.floor(Math.max(0, staff.top - y, y - staff.bottom) / staff.space + 0.01)

const names = ['A3', 'B3', 'C4', 'E4', 'F#4', 'Bb4', 'C5', 'D5', 'F5', 'A5', 'C6']

describe('the pencil on the page', () => {
  // Middle C stands one ledger line below the treble staff, one above the bass: common practice, no source.
  test('staff positions of keys by the clef', () => {
    const step = (name: string): number =>
      spell(parseKey(name) ?? key(0), { fifths: 0, mode: 'major' }).step
    expect(ledgerLines(step('C4'), 'treble')).toBe(1)
    expect(ledgerLines(step('C4'), 'bass')).toBe(1)
    expect(ledgerLines(step('D4'), 'treble')).toBe(0)
    expect(ledgerLines(step('G5'), 'treble')).toBe(0)
    expect(ledgerLines(step('A5'), 'treble')).toBe(1)
    expect(ledgerLines(step('C6'), 'treble')).toBe(2)
    expect(ledgerLines(step('E2'), 'bass')).toBe(1)
    expect(ledgers(30, 38, step('A3'))).toEqual([28, 26])
    expect(ledgers(30, 38, step('D4'))).toEqual([])
    expect(ledgers(30, 38, step('C6'))).toEqual([40, 42])
  })

  test('each note of the drawing is found on its staff', () => {
    const page = pageOf('C5 1 D5 1 E5 2\nl: C3 2 E3 2')
    expect([...page.notes.keys()].toSorted()).toEqual(
      ['n0k72', 'n1k74', 'n2k76', 'n0k48', 'n2k52'].toSorted(),
    )
    expect(page.staves).toHaveLength(2)
    expect(noteOf(page, 'n0k72').staff.top).toBeLessThan(noteOf(page, 'n0k48').staff.top)
    expect(noteOf(page, 'n0k72').x).toBeCloseTo(noteOf(page, 'n0k48').x, -1)
    const { y, staff } = noteOf(page, 'n1k74')
    expect((staff.bottom - y) / (staff.space / 2)).toBeCloseTo(6, 5)
  })

  test.each(names)('the head of a played %s stands where verovio prints that note', (name) => {
    const played = parseKey(name) ?? key(0)
    // One drawing, so that the same staff holds the written note and the printed model of the played one.
    const page = pageOf(
      `G4 1 ${formatKey(played, name.includes('b') ? 'flats' : 'sharps')} 1 r 2`,
      {
        fifths: name.includes('b') ? -1 : 0,
      },
    )
    const model = noteOf(page, `n1k${played}`)
    const head = placeOf({ shape: 'wrong', note: noteId('n0k67'), playedKey: played }, page, 1)
    expect(head.y).toBeCloseTo(model.y, 0)
  })

  test.each([
    ['F4', 'G4 1', 0, 0],
    ['F#4', 'G4 1', 0, 1],
    ['F#4', 'G4 1', 1, 0],
    ['F4', 'G4 1', 1, 1],
    ['F4', 'F#4 1', 0, 1],
    ['F#4', 'F#4 1 G4 1', 0, 0],
  ])(
    'a played %s beside %s in a signature of %d takes %d accidentals',
    (name, text, fifths, count) => {
      const page = pageOf(`${text} r 3`, { fifths })
      const [id = ''] = page.notes.keys()
      const strokes = strokesOf(
        { shape: 'wrong', note: noteId(id), playedKey: parseKey(name) ?? key(0) },
        page,
      )
      // Ring and head first; a sharp or natural is four strokes.
      expect((strokes.length - 2) / 4).toBe(count)
    },
  )

  test.each(['D7', 'F#7', 'B6', 'G6', 'E6'])(
    'under 8va the head of a played %s stands where verovio prints that note under the line',
    (name) => {
      const played = parseKey(name) ?? key(0)
      const page = pageOf(`E7 1/2 C7 1/2 E7 1/2 C7 1/2 E7 1 ${name} 1`)
      const model = noteOf(page, `n3k${played}`)
      const mark = { shape: 'wrong', note: noteId('n0k100'), playedKey: played } as const
      expect(placeOf(mark, page, 1).y).toBeCloseTo(model.y, 0)
      // Ring and head, then the four strokes of a sharp, then ledger lines.
      const strokes = strokesOf(mark, page).length - 2 - ledgerCount(model)
      expect(strokes).toBe(name.includes('#') ? 4 : 0)
    },
  )

  test('an accidental under 8va holds for its line there, and is cancelled after it', () => {
    const page = pageOf('C7 1/2 F#7 1/2 E7 1/2 F#7 1/2 C7 1 E7 1 | F#7 1 F#6 1 C5 2')
    const first = noteOf(page, 'n1_2k102')
    // F#7 is step 52 raised by one.
    expect(first.step).toBe(52)
    expect(first.inForce.get(52)).toBe(1)
    expect(noteOf(page, 'n0k96').inForce.get(52)).toBeUndefined()
  })

  test('right marks of a run stand in one level row, below every note and beam', () => {
    const page = pageOf('C5 1/2 D5 1/2 E5 1/2 F5 1/2 E4 1/2 F4 1/2 G4 1/2 A4 1/2')
    const rows = [...page.notes.keys()].map(
      (id) => placeOf({ shape: 'right', note: noteId(id) }, page).y,
    )
    const lowest = Math.max(...page.staves.flatMap(({ ink }) => ink.map(({ y1 }) => y1)))
    expect(new Set(rows).size).toBe(1)
    expect(rows[0]).toBeGreaterThan(lowest)
  })

  test('a tick never runs through a low note, and leaves the others level', () => {
    const page = pageOf('C5 1 C5 1 F3 1 C5 1')
    const row = (id: string): number => placeOf({ shape: 'right', note: noteId(id) }, page).y
    const low = noteOf(page, 'n2k53')
    expect(row('n2k53')).toBeGreaterThan(low.y + low.staff.space / 2)
    expect(row('n0k72')).toBe(row('n3k72'))
  })

  test('the ticks of a chord stand side by side', () => {
    const page = pageOf('C4+E4+G4 4')
    const xs = ['n0k60', 'n0k64', 'n0k67'].map(
      (id) => placeOf({ shape: 'right', note: noteId(id) }, page).left,
    )
    const space = page.staves[0]?.space ?? 0
    expect((xs[1] ?? 0) - (xs[0] ?? 0)).toBeGreaterThan(0.8 * space)
    expect((xs[2] ?? 0) - (xs[1] ?? 0)).toBeGreaterThan(0.8 * space)
  })

  test('early points back, late points on, and more is longer', () => {
    const page = pageOf('C5 1 D5 1 E5 1 F5 1')
    const note = noteId('n1k74')
    const { x } = noteOf(page, note)
    const shaft = (shape: 'early' | 'late', ms: number) => placeOf({ shape, note, ms }, page)
    expect(shaft('early', -60).right).toBeCloseTo(x, 0)
    expect(shaft('late', 60).left).toBeCloseTo(x, 0)
    expect(shaft('late', 120).right).toBeGreaterThan(shaft('late', 60).right)
    expect(shaft('early', -120).left).toBeLessThan(shaft('early', -60).left)
  })

  test('the caesura and the rolled line stand before the onset with its accidentals', () => {
    const page = pageOf('C5 1 F#4+D5 1 G4 2')
    const before = noteOf(page, 'n1k66').left
    expect(placeOf({ shape: 'hesitation', note: noteId('n1k66') }, page, 1).right).toBeLessThan(
      before + 20,
    )
    const rolled = placeOf({ shape: 'spread', notes: [noteId('n1k66'), noteId('n1k74')] }, page)
    expect(rolled.right).toBeLessThan(before)
  })

  test('the caesura keeps clear of a ring around the note that it stands before', () => {
    const page = pageOf('C5 1 D5 1 E5 1 F5 1')
    const { id, x, half, staff } = noteOf(page, 'n1k74')
    const caesura = placeOf({ shape: 'hesitation', note: noteId(id) }, page, 1)
    // Half the head, half a space of paper, half the thickness of both strokes.
    expect(caesura.right).toBeLessThanOrEqual(x - half - 0.7 * staff.space)
  })

  test.each([
    // So narrow that the played head stands right after the note before.
    [300, 'above'],
    [900, 'beside'],
  ])('on a page of %i pixels the accidental of a played key stands %s its head', (width, place) => {
    const music = 'C5 1/2 D5 1/2 E5 1/2 F5 1/2 G5 1/2 A5 1/2 G5 1/2 F5 1/2'
    const page = pageOf(music, { fifths: -1 }, width, 200)
    const mark = { shape: 'wrong', note: noteId('n1_2k74'), playedKey: key(75) } as const
    const { space } = noteOf(page, 'n1_2k74').staff
    const [head, flat] = [placeOf(mark, page, 1), placeOf(mark, page, 2)]
    const isAbove = flat.y < head.y - 1.5 * space && flat.left > head.left - 0.4 * space
    const isBeside = flat.y > head.y - space && flat.right < head.left + 0.2 * space
    expect([isAbove, isBeside]).toEqual([place === 'above', place === 'beside'])
  })

  test('a mark on a note that the page lacks draws nothing', () => {
    const page = pageOf('C5 4')
    expect(strokesOf({ shape: 'right', note: noteId('n9k72') }, page)).toEqual([])
    expect(strokesOf({ shape: 'spread', notes: [noteId('n9k72')] }, page)).toEqual([])
  })

  test('no two shapes are drawn alike', () => {
    const page = pageOf('C5 1 D5 1 E5 1 F5 1')
    const note = noteId('n1k74')
    const other = noteId('n2k76')
    const marks: PencilMark[] = [
      { shape: 'right', note },
      { shape: 'wrong', note, playedKey: key(75) },
      { shape: 'missing', note },
      { shape: 'extra', near: note, key: key(69) },
      { shape: 'repeated', note },
      { shape: 'order', notes: [note, other] },
      { shape: 'restart', note },
      { shape: 'hesitation', note },
      { shape: 'early', note, ms: -50 },
      { shape: 'late', note, ms: 50 },
      { shape: 'uneven', note },
      { shape: 'spread', notes: [note] },
      { shape: 'drift', from: note, to: other, faster: true },
      { shape: 'drift', from: note, to: other, faster: false },
    ]
    const drawings = marks.map((mark) => JSON.stringify(strokesOf(mark, page)))
    expect(drawings.every((text) => text.length > 10)).toBe(true)
    expect(new Set(drawings).size).toBe(marks.length)
  })
})
