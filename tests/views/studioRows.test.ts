import { expect, test } from 'vitest'
import type { StudioRow } from '@/app/students'
import type { Day } from '@/journal/day'
import { studentId } from '@/journal/ids'
import { pieceId } from '@/music/units'
import { type columns, piecesIn, sortBy, sortRows } from '@/views/studioRows'

const row = (
  name: string,
  piece: string,
  clean: number,
  of: number,
  more: Partial<StudioRow> = {},
): StudioRow => ({
  student: { id: studentId(name), name },
  piece: pieceId(piece),
  title: piece,
  tally: { clean, flawed: of - clean, brokenOff: 0 },
  ...(of > 0 ? { share: { value: clean / of, low: 0, high: 1 } } : {}),
  repetitions: of,
  minutes: of / 2,
  days: 1,
  lastDay: '2026-01-01' as Day,
  chunks: { practised: 1, secure: 0, kept: 0, slipped: 0 },
  ...more,
})
const titleOf = ({ title }: StudioRow): string => title ?? ''
const rows = [
  row('Öse', 'Steps', 5, 10, { lastDay: '2026-03-01' as Day }),
  row('Ben', 'Steps', 9, 10, { tempo: { least: 0.5, middle: 0.9, most: 1 } }),
  row('Ada', 'Tides', 0, 0, { chunks: { practised: 0, secure: 0, kept: 0, slipped: 3 } }),
  row('Ada', 'Steps', 4, 8),
]
const sorted = (by: (typeof columns)[number], down = false): string =>
  sortRows(rows, { by, down }, titleOf)
    .map(({ student, title }) => `${student.name} ${title}`)
    .join(', ')

test.each([
  ['student', 'Ada Steps, Ada Tides, Ben Steps, Öse Steps'],
  ['piece', 'Ada Steps, Ben Steps, Öse Steps, Ada Tides'],
  ['share', 'Ada Steps, Öse Steps, Ben Steps, Ada Tides'],
  ['repetitions', 'Ada Tides, Ada Steps, Ben Steps, Öse Steps'],
  ['minutes', 'Ada Tides, Ada Steps, Ben Steps, Öse Steps'],
  ['tempo', 'Ben Steps, Ada Steps, Ada Tides, Öse Steps'],
  ['lastDay', 'Ada Steps, Ada Tides, Ben Steps, Öse Steps'],
  ['slipped', 'Ada Steps, Ben Steps, Öse Steps, Ada Tides'],
] as const)('sorted by %s; equal ones by name', (by, order) => {
  expect(sorted(by)).toBe(order)
})

test('numbers in a name go by their size', () => {
  const studies = [row('Ada', 'Study 10', 1, 2), row('Ada', 'Study 9', 1, 2)]
  const order = sortRows(studies, { by: 'piece', down: false }, titleOf)
  expect(order.map(({ title }) => title)).toEqual(['Study 9', 'Study 10'])
})

test('what is not known stands last, whichever way', () => {
  expect(sorted('share', true)).toBe('Ben Steps, Ada Steps, Öse Steps, Ada Tides')
  expect(sorted('tempo', true)).toBe('Ben Steps, Ada Steps, Ada Tides, Öse Steps')
})

test('the same column once more turns the order round, another begins upward', () => {
  const once = sortBy({ by: 'student', down: false }, 'share')
  expect(once).toEqual({ by: 'share', down: false })
  expect(sortBy(once, 'share')).toEqual({ by: 'share', down: true })
  expect(sortBy(sortBy(once, 'share'), 'share')).toEqual(once)
})

test('each piece is named once, by title', () => {
  expect(piecesIn(rows, titleOf).map(({ title }) => title)).toEqual(['Steps', 'Tides'])
})
