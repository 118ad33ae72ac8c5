/** Digits at the notes, and the pencil that keeps clear of them. */
import { beforeAll, expect, test } from 'vitest'
import type { VerovioToolkit } from 'verovio/esm'
import { draw } from '@/engraving/draw'
import { strokesOf } from '@/engraving/marks'
import { writeMei } from '@/engraving/mei'
import { readPage } from '@/engraving/page'
import { cutStretch, type Fingers } from '@/engraving/stretch'
import { openEngraverHere } from '../support/toolkit'
import type { Finger, Score } from '@/music/music'
import { noteId, tick } from '@/music/units'
import { scoreOf } from './notation'

let toolkit: VerovioToolkit
beforeAll(async () => {
  toolkit = await openEngraverHere()
})

const withFingers = (text: string, fingers: Readonly<Record<string, readonly Finger[]>>): Score => {
  const score = scoreOf(text)
  return {
    ...score,
    notes: score.notes.map((note) => {
      const own = fingers[note.id]
      return own ? { ...note, fingers: own } : note
    }),
  }
}

const whole = (score: Score, fingers?: Fingers) => {
  const stretch = cutStretch(score, tick(0), score.end, 'both', fingers)
  if (!stretch) throw new Error('no such stretch')
  return stretch
}

/** 'n0k72 above 1' for each. */
const digits = (score: Score, fingers?: Fingers): string[] =>
  [
    ...writeMei(whole(score, fingers)).mei.matchAll(
      /<fing startid="#([^"]+)" place="(\w+)">([^<]+)</g,
    ),
  ].map(([, id, place, text]) => `${id} ${place} ${text}`)

// Common practice, no source: right hand above, left hand below.
test('digits stand above the right hand and below the left', () => {
  const score = withFingers('C5 1 D5 1\nl: C3 2', { n0k72: [1], n1k74: [2, 3], n0k48: [5] })
  expect(digits(score)).toEqual(['n0k72 above 1', 'n1k74 above 2–3', 'n0k48 below 5'])
})

test('those of a chord are stacked as its notes are', () => {
  const score = withFingers('C5+E5+G5 4\nl: C3+E3+G3 4', {
    n0k72: [1],
    n0k76: [3],
    n0k79: [5],
    n0k48: [5],
    n0k52: [3],
    n0k55: [1],
  })
  const { svg } = draw(toolkit, whole(score), { width: 600, height: 400 })
  const text = [
    ...svg.matchAll(/class="fing"><text [^>]*\sy="(\d+)"[\s\S]*?<tspan font-size[^>]*>(\d)</g),
  ]
  const fromAbove = text
    .map(([, y, digit]) => ({ y: Number(y), digit }))
    .toSorted((a, b) => a.y - b.y)
  expect(fromAbove.map(({ digit }) => digit).join('')).toBe('531135')
})

test('the person’s own digits take the place of those in the file', () => {
  const score = withFingers('C5 1 D5 1 E5 2', { n0k72: [1], n1k74: [2] })
  const own: Fingers = new Map([
    [noteId('n0k72'), [3]],
    [noteId('n1k74'), []],
    [noteId('n2k76'), [5]],
  ])
  expect(digits(score, own)).toEqual(['n0k72 above 3', 'n2k76 above 5'])
})

test('ticks keep clear of the digits below a staff', () => {
  const fingers = { n0k48: [5], n1k50: [4], n2k52: [3] } as const
  const heights = (score: Score): number[] => {
    const stretch = cutStretch(score, tick(0), score.end, 'left')
    if (!stretch) throw new Error('no such stretch')
    const { svg } = draw(toolkit, stretch, { width: 600, height: 200 })
    const page = readPage(svg)
    const digit = Math.max(
      0,
      ...[...svg.matchAll(/<g [^>]*class="fing"><text [^>]*\sy="(\d+)"/g)].map(([, y]) =>
        Number(y),
      ),
    )
    return score.notes.map(({ id }) => {
      const [tick] = strokesOf({ shape: 'right', note: id }, page)
      const ys = [...(tick?.path ?? '').matchAll(/ (-?[\d.]+)(?=[A-Z ]|$)/g)].map(([, y]) =>
        Number(y),
      )
      return Math.min(...ys) - digit
    })
  }
  const text = 'l: C3 1 D3 1 E3 2'
  for (const below of heights(withFingers(text, fingers))) expect(below).toBeGreaterThan(0)
})
