/** Marks pencilled into a line: at their notes, in their shapes, and the harder the more often. */
import { beforeAll, expect, test } from 'vitest'
import type { VerovioToolkit } from 'verovio/esm'
import { drawSystem } from '@/engraving/drawSystem'
import { flatten } from '@/engraving/flatten'
import { weights, type PencilMark, type WeighedMark } from '@/engraving/pencilMark'
import { cutSystem } from '@/engraving/stretch'
import { readSystemPlaces } from '@/engraving/systemPlaces'
import { openEngraverHere } from '../support/toolkit'
import { key, noteId } from '@/music/units'
import { writeScore } from '../music/writeScore'

let toolkit: VerovioToolkit
beforeAll(async () => {
  toolkit = await openEngraverHere()
})

const score = writeScore({ right: 'C5 F#5 G5 A5', left: 'C3:4' })
const [first, second] = score.notes.filter(({ hand }) => hand === 'right').map(({ id }) => id)
const line = (marks: readonly WeighedMark[]) => {
  const stretch = cutSystem(score, 0, 0)
  if (!stretch) throw new Error('no such bar')
  return drawSystem(toolkit, stretch, { width: 600, height: Infinity, space: 9 }, marks)
}
const ring = (note = first ?? noteId('')): PencilMark => ({ shape: 'missing', note })

const numbers = (found: RegExpExecArray | null): number[] => [...(found ?? [])].map(Number)

test('the music is drawn as without them', () => {
  const [plain, marked] = [line([]), line([{ mark: ring(), weight: 'light' }])]
  expect(plain.pencil).toBeUndefined()
  expect(flatten(marked.svg)).toBe(flatten(plain.svg))
  expect(readSystemPlaces(marked.svg)).toEqual(readSystemPlaces(plain.svg))
})

test('a mark stands around the head of its note', () => {
  for (const note of [first, second]) {
    const { svg, pencil = '' } = line([{ mark: ring(note), weight: 'light' }])
    const [, width = 0] = numbers(/viewBox="0 0 ([\d.]+)/.exec(svg))
    const [, shift = 0] = numbers(/class="page-margin" transform="translate\((-?\d+)/.exec(svg))
    // The ring begins at its left: 'M1256 945a198 176 …'.
    const [, left = 0, radius = 0] = numbers(/M([\d.]+) [\d.]+a([\d.]+)/.exec(pencil))
    const head = readSystemPlaces(svg).notes.get(note ?? noteId(''))?.x ?? 0
    // Within a quarter of a staff space of 180 units; the music is drawn at ten times its size.
    expect(Math.abs(left + radius + shift - head * 10 * width)).toBeLessThan(45)
  }
})

test('the more often the thicker, each shape as its own', () => {
  const { pencil = '' } = line(
    weights.map((weight) => ({
      mark: { shape: 'wrong', note: first ?? noteId(''), playedKey: key(73) },
      weight,
    })),
  )
  const widths = [
    ...pencil.matchAll(
      /data-shape="wrong" data-weight="(\w+)"><path d="[^"]*" stroke-width="(\d+)"/g,
    ),
  ]
  expect(widths.map(([, weight]) => weight)).toEqual(['light', 'middle', 'heavy'])
  const [light = 0, middle = 0, heavy = 0] = widths.map(([, , width]) => Number(width))
  expect(middle / light).toBeGreaterThan(1.5)
  expect(heavy / middle).toBeGreaterThan(1.5)
})

test('a note that the line lacks has no strokes', () => {
  expect(line([{ mark: ring(noteId('n99k60')), weight: 'heavy' }]).pencil).not.toContain('<path')
})

test('marks over a stretch stand as far under all that is printed as they are told, with room of their own', () => {
  const drift = (under: number): WeighedMark => ({
    mark: {
      shape: 'drift',
      from: first ?? noteId(''),
      to: second ?? noteId(''),
      faster: true,
      under,
    },
    weight: 'light',
  })
  const [one, two] = [line([drift(3)]), line([drift(3), drift(8)])]
  expect(two.height).toBeGreaterThan(one.height)
  const { bottom, space } = readSystemPlaces(two.svg)
  const [, height = 0] = numbers(/viewBox="0 0 [\d.]+ ([\d.]+)/.exec(two.svg))
  const [, shift = 0] = numbers(
    /class="page-margin" transform="translate\(-?\d+, (-?\d+)/.exec(two.svg),
  )
  const middles = [
    ...(two.pencil ?? '').matchAll(/<path d="M[\d.]+ ([\d.]+)L[\d.]+ ([\d.]+)"/g),
  ].map(([, from, to]) => ((Number(from) + Number(to)) / 2 + shift) / (10 * height))
  // Within a tenth of a staff space, and neither at the edge. Nothing is printed under the lower staff.
  expect(middles).toHaveLength(2)
  for (const [i, under] of [3, 8].entries()) {
    const middle = middles[i] ?? 0
    expect(Math.abs(middle - ((two.lowest ?? 0) + under * space))).toBeLessThan(0.1 * space)
    expect(Math.abs(middle - (bottom + under * space))).toBeLessThan(0.2 * space)
    expect(middle).toBeLessThan(1 - 0.5 * space)
  }
})

test('of the notes struck together an extra key stands by the nearest, on its staff', () => {
  const low = score.notes.find(({ hand }) => hand === 'left')?.id ?? noteId('')
  const near = (id: typeof low): WeighedMark => ({
    mark: { shape: 'extra', near: id, key: key(74) },
    weight: 'light',
  })
  expect(line([near(low)]).pencil).toBe(line([near(first ?? low)]).pencil)
})
