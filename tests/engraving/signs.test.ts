/** What a Standard MIDI File does not say but a score may: grace notes, ornaments, rolled chords, changes. */
import { beforeAll, describe, expect, test } from 'vitest'
import type { VerovioToolkit } from 'verovio/esm'
import { draw } from '@/engraving/draw'
import { writeMei } from '@/engraving/mei'
import { cutStretch, type Stretch } from '@/engraving/stretch'
import { openEngraverHere } from '../support/toolkit'
import type { Note, Score } from '@/music/music'
import { noteId, tick } from '@/music/units'
import { resolution, scoreOf } from './notation'

let toolkit: VerovioToolkit
beforeAll(async () => {
  toolkit = await openEngraverHere()
})

const whole = (score: Score): Stretch => {
  const stretch = cutStretch(score, tick(0), score.end, 'both')
  if (!stretch) throw new Error('no such stretch')
  return stretch
}
const drawn = (score: Score): string => draw(toolkit, whole(score), { width: 900, height: 300 }).svg
const count = (svg: string, text: string): number => svg.split(text).length - 1

const change = (score: Score, id: string, more: Partial<Note>): Score => ({
  ...score,
  notes: score.notes.map((n) => (n.id === id ? { ...n, ...more } : n)),
})

describe('signs beside the notes', () => {
  test('grace notes stand before their main note, with accidentals of their own', () => {
    const plain = scoreOf('C5 1 D5 1 E5 2')
    const main = plain.notes[1]
    if (!main) throw new Error('no main note')
    const grace = {
      ...main,
      id: noteId('g1'),
      key: (main.key - 1) as Note['key'],
      grace: true as const,
    }
    const score = {
      ...plain,
      notes: [...plain.notes, grace].toSorted((a, b) => a.start - b.start || a.key - b.key),
    }
    const { mei } = writeMei(whole(score))
    expect(mei.indexOf('xml:id="g1" grace="unacc"')).toBeGreaterThan(0)
    expect(mei.indexOf('xml:id="g1"')).toBeLessThan(mei.indexOf('xml:id="n1k74"'))
    expect(mei).toMatch(/xml:id="g1"[^>]*pname="c" oct="5" accid="s"/)
    for (const { id } of score.notes) expect(count(drawn(score), ` id="${id}"`)).toBe(1)
  })

  test('a trill, a rolled chord and a note held past the end are drawn', () => {
    const trill = drawn(change(scoreOf('C5 2 D5 2'), 'n0k72', { ornament: 'trill' }))
    expect(count(trill, 'class="trill"')).toBe(1)
    const rolled = ['n0k60', 'n0k64'].reduce(
      (score, id) => change(score, id, { rolled: true }),
      scoreOf('C4+E4 4'),
    )
    expect(count(drawn(rolled), 'class="arpeg"')).toBe(1)
    const held = scoreOf('C5 1 D5 1 E5 1 F5 5')
    const stretch = cutStretch(held, tick(0), tick(4 * resolution), 'right')
    if (!stretch) throw new Error('no such stretch')
    const { svg } = draw(toolkit, stretch, { width: 900, height: 300 })
    expect(count(svg, 'class="lv"')).toBe(1)
    expect(count(svg, 'class="measure"')).toBe(1)
  })

  // MEI 5, “mordent”: lower has the line through it. SMuFL: U+E56D mordent with it, U+E56C without.
  test.each([
    ['mordent', undefined, 'form="lower"', 'E56D'],
    ['mordent', true, 'form="upper"', 'E56C'],
    ['turn', undefined, 'form="upper"', 'E567'],
    ['turn', true, 'form="lower"', 'E568'],
  ] as const)('a %s, inverted %s, is drawn %s', (ornament, inverted, form, glyph) => {
    const signs = { ornament, ...(inverted ? { inverted } : {}) }
    const score = change(scoreOf('C5 2 D5 2'), 'n0k72', signs)
    expect(writeMei(whole(score)).mei).toContain(`<${ornament} ${form} startid="#n0k72"/>`)
    expect(drawn(score)).toContain(`href="#${glyph}`)
  })

  test('the ornament of a lower voice stands below it', () => {
    const both = change(scoreOf('E5 4\nC5 2 D5 2'), 'n2k74', { ornament: 'trill' })
    const { mei } = writeMei(whole(change(both, 'n0k76', { ornament: 'turn' })))
    expect(mei).toContain('<trill startid="#n2k74" place="below"/>')
    expect(mei).toContain('<turn form="upper" startid="#n0k76"/>')
  })

  test.each([
    ['C5 4', 3, '<bTrem unitdur="32"><note xml:id="n0k72" dur="1"'],
    ['C5 2 r 2', 1, '<bTrem unitdur="8"><note xml:id="n0k72" dur="2"'],
    ['C5 1/2 r 7/2', 2, '<bTrem unitdur="32"><note xml:id="n0k72" dur="8"'],
  ] as const)('a tremolo on %s with %d strokes', (text, strokes, expected) => {
    const tremolo = { kind: 'single', strokes } as const
    const score = change(scoreOf(text), 'n0k72', { ornament: 'tremolo', tremolo })
    expect(writeMei(whole(score)).mei).toContain(expected)
    expect(count(drawn(score), 'class="bTrem"')).toBe(1)
  })

  test('a tremolo between two is written with the value of both, each note by its own id', () => {
    const tremolo = (kind: 'from' | 'to') =>
      ({ ornament: 'tremolo', tremolo: { kind, strokes: 3 } }) as const
    const from = change(scoreOf('C5+E5 2 G5 2'), 'n0k72', tremolo('from'))
    const score = change(from, 'n2k79', tremolo('to'))
    const { mei } = writeMei(whole(score))
    expect(mei).toMatch(
      /<fTrem beams="3" unitdur="32"><chord dur="1">.*<\/chord><note xml:id="n2k79" dur="1"/,
    )
    for (const { id } of score.notes) expect(count(drawn(score), ` id="${id}"`)).toBe(1)
    // verovio counts the time of both together: the bar is four quarters long.
    toolkit.loadData(mei)
    expect(toolkit.renderToTimemap().at(-1)?.qstamp).toBe(4)
  })

  test('a tremolo whose two are not alike stands on each of them alone', () => {
    const tremolo = (kind: 'from' | 'to') =>
      ({ ornament: 'tremolo', tremolo: { kind, strokes: 3 } }) as const
    const from = change(scoreOf('C5 1 G5 3'), 'n0k72', tremolo('from'))
    const { mei } = writeMei(whole(change(from, 'n1k79', tremolo('to'))))
    expect(count(mei, '<bTrem ')).toBe(2)
    expect(count(mei, '<fTrem ')).toBe(0)
  })

  test('a change of key and time signature inside the stretch is written at its bar', () => {
    const plain = scoreOf('C5 1 D5 1 E5 1 F5 1 | G5 1 A5 1 Bb5 1')
    const [first, second] = plain.bars
    if (!first || !second) throw new Error('two bars')
    const score: Score = {
      ...plain,
      bars: [first, { ...second, length: tick(3 * resolution), time: { beats: 3, beatType: 4 } }],
      keys: [...plain.keys, { start: second.start, fifths: -1, mode: 'major' }],
      end: tick(7 * resolution),
    }
    const { mei } = writeMei(whole(score))
    expect(mei).toContain('<scoreDef keysig="1f" meter.count="3" meter.unit="4"/>')
    expect(mei).toMatch(/pname="b" oct="5" accid.ges="f"/)
    const svg = drawn(score)
    // On each of the two staves.
    expect(count(svg, 'class="meterSig"')).toBe(4)
    expect(count(svg, 'class="keyAccid"')).toBe(2)
  })

  test('two notes on one key at one place are both drawn', () => {
    const plain = scoreOf('C5 2\nC5 2')
    const svg = drawn(plain)
    expect(plain.notes.map((n) => n.id)).toEqual(['n0k72', 'n0k72b'])
    for (const { id } of plain.notes) expect(count(svg, ` id="${id}"`)).toBe(1)
  })

  test('bars of odd length and onsets off every grid still give a drawing', () => {
    const plain = scoreOf('C5 1 D5 1 E5 1 F5 1')
    const [bar] = plain.bars
    const notes = plain.notes.map((n, i) => ({
      ...n,
      start: tick(n.start + 7 * i),
      length: tick(13 + 97 * i),
    }))
    const score: Score = {
      ...plain,
      notes,
      bars: bar ? [{ ...bar, length: tick(1901) }] : [],
      end: tick(1901),
    }
    for (const { id } of notes) expect(count(drawn(score), ` id="${id}"`)).toBe(1)
  })
})
