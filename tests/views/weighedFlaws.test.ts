import { describe, expect, test } from 'vitest'
import type { SystemBars } from '@/engraving/systems'
import { chunkId, key, noteId } from '@/music/units'
import type { BarFlaws, NoteFlaw } from '@/review/flawBars'
import { markOf } from '@/views/flawMarks'
import { stretchesByLine } from '@/views/flawStretches'
import { flawsByLine, isCrowded, marksOnLine, weighingOf, weightOf } from '@/views/weighedFlaws'
import { writeScore } from '../music/writeScore'

const score = writeScore({ right: 'C5 D5 E5 F5 G5 A5 B5 C6', left: 'C3:4 G3:4' })
/** A staff space, CSS pixels: wide enough that numbers need no more room. */
const space = 12
const right = score.notes.filter(({ hand }) => hand === 'right').map(({ id }) => id)
const plan: readonly SystemBars[] = score.bars.map((_, bar) => ({ fromBar: bar, toBar: bar }))

const played = [
  { key: key(73), times: 8 },
  { key: key(71), times: 1 },
]

/** '0 wrong 5, 4 missing 2': kind and times at the notes of the right hand. */
const barsOf = (text: string): readonly BarFlaws[] => {
  const notes = text.split(', ').map((word): NoteFlaw & { readonly barIndex: number } => {
    const [index = '', kind = '', times = ''] = word.split(' ')
    const note = right[Number(index)] ?? noteId('')
    const barIndex = score.notes.find(({ id }) => id === note)?.barIndex ?? 0
    return { note, kind: kind as NoteFlaw['kind'], times: Number(times), barIndex }
  })
  return score.bars.map((bar, barIndex) => {
    const of = notes.filter((each) => each.barIndex === barIndex)
    const times = of.reduce((sum, each) => sum + each.times, 0)
    return { bar, barIndex, times, notes: of, chunk: chunkId('a') }
  })
}

describe('how hard the pencil is pressed', () => {
  test.each([
    [1, 'light'],
    [2, 'light middle'],
    [3, 'light middle heavy'],
    [12, 'light middle middle middle middle heavy heavy heavy heavy heavy heavy heavy'],
  ])('where the most frequent flaw came %i times: %s', (most, weights) => {
    const weighing = weighingOf(barsOf(`0 wrong ${most}`))
    const found = Array.from({ length: most }, (_, i) => weightOf(weighing, i + 1))
    expect(found.join(' ')).toBe(weights)
  })

  test('nothing wrong weighs nothing', () => {
    expect(weightOf(weighingOf([]), 1)).toBe('light')
  })
})

test('flaws stand on the line of their note, in the order of the score, with all their kinds', () => {
  const bars = barsOf('5 missing 1, 2 wrong 3, 1 hesitation 2, 2 missing 4')
  const lines = flawsByLine(score, plan, bars, undefined, space)
  expect([...lines.keys()]).toEqual([0, 1])
  expect(lines.get(0)?.notes.map(({ note, times }) => [note, times])).toEqual([
    [right[1], 2],
    [right[2], 7],
  ])
  const missing = flawsByLine(score, plan, bars, 'missing', space)
  expect(missing.get(0)?.notes.map(({ times }) => times)).toEqual([4])
})

test('a note is marked for its most frequent flaw, the heaviest mark last, with the key struck most', () => {
  const bars = barsOf('0 wrong 9, 1 hesitation 1, 1 missing 2, 2 order 4')
  const struck = bars.map((bar) => ({
    ...bar,
    notes: bar.notes.map((each) => (each.kind === 'wrong' ? { ...each, played } : each)),
  }))
  const line = flawsByLine(score, plan, struck, undefined, space).get(0)
  if (!line) throw new Error('nothing on the line')
  expect(marksOnLine(score, line, weighingOf(bars))).toEqual([
    { mark: { shape: 'missing', note: right[1] }, weight: 'middle' },
    { mark: { shape: 'order', notes: [right[2], right[3]] }, weight: 'middle' },
    { mark: { shape: 'wrong', note: right[0], playedKey: 73 }, weight: 'heavy' },
  ])
})

test('marks on more than a third of the notes are a crowd', () => {
  expect(isCrowded(score, barsOf('0 wrong 1, 1 wrong 1, 2 wrong 1'))).toBe(false)
  expect(isCrowded(score, barsOf('0 wrong 1, 1 wrong 1, 2 wrong 1, 3 missing 1'))).toBe(true)
})

describe('a drift', () => {
  const long = writeScore({ right: 'C5 D5 E5 F5 G5 A5 B5 C6 D6 C6 B5 A5', left: 'C3:4 G3:4 C3:4' })
  const ids = long.notes.filter(({ hand }) => hand === 'right').map(({ id }) => id)
  const lines: readonly SystemBars[] = long.bars.map((_, bar) => ({ fromBar: bar, toBar: bar }))
  const drift = (from: number, until: number, times: number, faster = 0): NoteFlaw => {
    const [note, last] = [ids[from], ids[until]]
    if (note === undefined || last === undefined) throw new Error('no such note')
    return { note, until: last, kind: 'drift', times, faster }
  }
  /** Rows are 1.9 spaces high, the middle of the first 3.45 under the line. */
  const rowOf = (under = 0): number => Math.round((under - 3.45) / 1.9)
  /** Where each stands on its line: its notes by their number, its row, '·' where it goes on. */
  const drawn = (...flaws: readonly NoteFlaw[]): string =>
    [...stretchesByLine(long, lines, flaws, space)]
      .toSorted(([a], [b]) => a - b)
      .map(([line, of]) => {
        const told = of.map(
          ({ mark, isBegin }) =>
            `${isBegin ? '' : '·'}${ids.indexOf(mark.from)}–${ids.indexOf(mark.to)} in ${rowOf(mark.under)}${mark.faster ? ' up' : ''}`,
        )
        return `${line}: ${told.join(', ')}`
      })
      .join(' | ')

  test.each([
    ['on its line', drawn(drift(0, 3, 1)), '0: 0–3 in 0'],
    [
      'on the next line goes on',
      drawn(drift(1, 9, 2, 1)),
      '0: 1–3 in 0 up | 1: ·4–7 in 0 up | 2: ·8–9 in 0 up',
    ],
    ['with a single onset on a line leaves that out', drawn(drift(3, 8, 1)), '1: 4–7 in 0'],
    [
      'beside another shares its row',
      drawn(drift(0, 1, 1), drift(2, 3, 1)),
      '0: 0–1 in 0, 2–3 in 0',
    ],
    [
      'over another stands nearer when more frequent',
      drawn(drift(0, 1, 1), drift(1, 3, 4)),
      '0: 1–3 in 0, 0–1 in 1',
    ],
  ])('%s', (_, found, is) => expect(found).toBe(is))

  test('stands beside the mark of its first note, and is weighed like it', () => {
    const of: readonly NoteFlaw[] = [
      drift(0, 3, 6),
      { note: drift(0, 3, 6).note, kind: 'missing', times: 1 },
    ]
    const bars = long.bars.map((bar, barIndex) => ({
      bar,
      barIndex,
      times: 7,
      notes: barIndex === 0 ? of : [],
      chunk: chunkId('a'),
    }))
    const line = flawsByLine(long, lines, bars, undefined, space).get(0)
    if (!line) throw new Error('nothing on the line')
    expect(
      marksOnLine(long, line, weighingOf(bars)).map(({ mark, weight }) => [mark.shape, weight]),
    ).toEqual([
      ['missing', 'light'],
      ['drift', 'heavy'],
    ])
    expect([...flawsByLine(long, lines, bars, 'missing', space).values()][0]?.stretches).toEqual([])
  })
})

test.each<[NoteFlaw, ReturnType<typeof markOf>]>([
  [flawOf('extra', { played }), { shape: 'extra', near: noteId('n'), key: key(73) }],
  [flawOf('extra', {}), undefined],
  [flawOf('wrong', {}), { shape: 'missing', note: noteId('n') }],
  [
    flawOf('drift', { faster: 4 }),
    { shape: 'drift', from: noteId('n'), to: noteId('n'), faster: false },
  ],
])('the mark of %j', (flaw, mark) => expect(markOf(flaw)).toEqual(mark))

function flawOf(kind: NoteFlaw['kind'], more: Partial<NoteFlaw>): NoteFlaw {
  return { note: noteId('n'), kind, times: 9, ...more }
}
