/** The flattened picture against the engraver's own: the same outlines at the same places, in few elements. */
import { beforeAll, expect, test } from 'vitest'
import type { VerovioToolkit } from 'verovio/esm'
import { drawSystem } from '@/engraving/drawSystem'
import { flatten } from '@/engraving/flatten'
import { cutSystem } from '@/engraving/stretch'
import { openEngraverHere } from '../support/toolkit'
import { writeScore } from '../music/writeScore'

let toolkit: VerovioToolkit
beforeAll(async () => {
  toolkit = await openEngraverHere()
})

const score = writeScore({
  right: 'C5 F#5:1/2 G5:1/2 A5+C6 r',
  left: 'C3:2 E3:1/3 F3:1/3 G3:1/3 r',
})
const drawing = (): string => {
  const stretch = cutSystem(score, 0, 0)
  if (!stretch) throw new Error('no such bar')
  return drawSystem(toolkit, stretch, { width: 600, height: Infinity, space: 9 }).svg
}

test('glyphs become one path and straight lines one for each width', () => {
  const flat = flatten(drawing())
  const elements = (svg: string): number => svg.match(/<[a-z]/g)?.length ?? 0
  expect(elements(flat)).toBeLessThan(elements(drawing()) / 4)
  expect(flat).not.toContain('<use')
  expect(flat.match(/<g\b/g)?.length).toBe(flat.match(/<\/g>/g)?.length)
  expect(flat).toContain('<text')
})

test('a glyph stands where it stood, as large as it was', () => {
  const square =
    '<svg id="page"><defs><g id="E0A4-x"><path transform="scale(1,-1)" d="M10 20h100v50l-100 -10c1 2 3 4 5 6z"/></g></defs><g transform="translate(1, 1)"><g class="note"><use href="#E0A4-x" transform="translate(1000, 2000) scale(0.5, 0.5)"/></g><path d="M0 5 L9 5" stroke-width="13"/></g></svg>'
  // By hand: half as large, upside down, moved by (1000, 2000).
  expect(flatten(square)).toBe(
    '<svg><g transform="translate(1, 1)"><path d="M0 5 L9 5" stroke-width="13"/><path d="M1005 1990h50v-25l-50 5c0.5 -1 1.5 -2 2.5 -3z" stroke="none"/></g></svg>',
  )
})

test('each glyph of the drawing is in the path', () => {
  const uses = drawing().match(/<use /g)?.length ?? 0
  const [, outlines = ''] = /<path d="([^"]*)" stroke="none"\/>/.exec(flatten(drawing())) ?? []
  expect(uses).toBeGreaterThan(10)
  expect(outlines.match(/M/g)?.length).toBeGreaterThanOrEqual(uses)
})

test('what is added is drawn last, inside the music, and stays as it is', () => {
  const added = '<g class="pencil"><path d="M0 0L9 9" stroke-width="3"/></g>'
  const [plain, flat] = [flatten(drawing()), flatten(drawing(), added)]
  expect(flat.replace(added, '')).toBe(plain)
  expect(flat.indexOf(added)).toBe(plain.lastIndexOf('</g>'))
})
