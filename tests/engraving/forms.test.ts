/** The variants of a passage on the page: what is engraved is what is to be played. */
import { expect, test } from 'vitest'
import { writeMei } from '@/engraving/mei'
import { cutStretch } from '@/engraving/stretch'
import { openEngraverHere } from '../support/toolkit'
import { writeVariant } from '@/exercises/variants'
import { cutChunk } from '@/music/chunk'
import type { Form } from '@/music/form'
import { tick } from '@/music/units'
import { printed } from './printed'
import { resolution, scoreOf, type Frame } from './notation'

const meiOf = (notes: string, form: Form, frame: Frame = {}, from = 0): string => {
  const score = scoreOf(notes, frame)
  const written = cutChunk(
    score,
    tick(from * resolution),
    score.end,
    notes.includes('l:') ? 'both' : 'right',
  )
  const variant = written && writeVariant(score, written, form)
  const stretch =
    variant && cutStretch(variant.score, variant.chunk.start, variant.chunk.end, variant.chunk.hand)
  if (!stretch) throw new Error(`no ${form}`)
  return writeMei(stretch).mei
}

/** Bars parted by '|', staves by '/'. */
const engraved = (notes: string, form: Form, frame: Frame = {}, from = 0): string =>
  printed(meiOf(notes, form, frame, from))
    .map((bar) => bar.join(' / '))
    .join(' | ')

const run = 'C4 1/4 D4 1/4 E4 1/4 F4 1/4 G4 1/4 A4 1/4 B4 1/4 C5 1/4 D5 2'
const eighths = 'C4 1/2 D4 1/2 E4 1/2 F4 1/2 G4 1/2 A4 1/2'

test.each([
  ['longShort', '[C4:16. D4:32 E4:16. F4:32] [G4:16. A4:32 B4:16. C5:32] D5:2'],
  ['shortLong', '[C4:32 D4:16. E4:32 F4:16.] [G4:32 A4:16. B4:32 C5:16.] D5:2'],
  ['stopAfter4', '[C4:16 D4:16 E4:16 F4:16~] F4:4 | [G4:16 A4:16 B4:16 C5:16~] C5:4 | D5:2'],
  ['stopAfter3', '[C4:16 D4:16] E4:4. | [F4:16 G4:16] A4:4. | [B4:16 C5:16] D5:4.'],
] as const)('sixteenths, %s: %s', (form, expected) => {
  expect(engraved(run, form)).toBe(expected)
})

test('six eighths, long-short: a quarter and two sixteenths', () => {
  const time = { beats: 6, beatType: 8 }
  expect(engraved(eighths, 'longShort', { time })).toBe('C4:4 [D4:16 E4:16] F4:4 [G4:16 A4:16]')
})

test('a broken chord blocked, under its melody', () => {
  const left = 'C3 1/2 G3 1/2 E3 1/2 G3 1/2 D3 1/2 A3 1/2 F3 1/2 A3 1/2'
  expect(engraved(`C5 2 D5 2\nl: ${left}`, 'blocked')).toBe('C5:2 D5:2 / C3+E3+G3:2 A3+D3+F3:2')
})

test('from the middle of a piece, the bars of the stops begin anew', () => {
  expect(engraved(`C5 4 ${run} r 1`, 'stopAfter4', {}, 4)).toBe(engraved(run, 'stopAfter4'))
})

test('accents are drawn, one at each accented onset', async () => {
  const toolkit = await openEngraverHere()
  const accents = (form: Form): number => {
    toolkit.loadData(meiOf(run, form))
    // U+E4A0 and U+E4A1: accent above and below (SMuFL, Standard Music Font Layout).
    return (toolkit.renderToSVG(1).match(/xlink:href="#E4A[01]/g) ?? []).length
  }
  expect([accents('accentEvery3'), accents('accentEvery4'), accents('longShort')]).toEqual([
    3, 3, 0,
  ])
})
