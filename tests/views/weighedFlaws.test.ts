import { describe, expect, test } from 'vitest'
import type { SystemBars } from '@/engraving/systems'
import { chunkId, key, noteId } from '@/music/units'
import type { BarFlaws, NoteFlaw } from '@/review/flawBars'
import { flawsByLine, isCrowded, marksOnLine, weighingOf, weightOf } from '@/views/weighedFlaws'
import { writeScore } from '../music/writeScore'

const score = writeScore({ right: 'C5 D5 E5 F5 G5 A5 B5 C6', left: 'C3:4 G3:4' })
const right = score.notes.filter(({ hand }) => hand === 'right').map(({ id }) => id)
const plan: readonly SystemBars[] = score.bars.map((_, bar) => ({ fromBar: bar, toBar: bar }))

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
  const lines = flawsByLine(score, plan, bars, undefined)
  expect([...lines.keys()]).toEqual([0, 1])
  expect(lines.get(0)?.map(({ note, times }) => [note, times])).toEqual([
    [right[1], 2],
    [right[2], 7],
  ])
  const missing = flawsByLine(score, plan, bars, 'missing')
  expect(missing.get(0)?.map(({ times }) => times)).toEqual([4])
})

test('a note is marked for its most frequent flaw, the heaviest mark last, with the key struck most', () => {
  const bars = barsOf('0 wrong 9, 1 hesitation 1, 1 missing 2, 2 order 4')
  const notes = flawsByLine(score, plan, bars, undefined).get(0) ?? []
  const substitutions = [{ written: key(72), played: key(73), times: 9 }]
  expect(marksOnLine(score, notes, substitutions, weighingOf(bars))).toEqual([
    { mark: { shape: 'missing', note: right[1] }, weight: 'middle' },
    { mark: { shape: 'order', notes: [right[2], right[3]] }, weight: 'middle' },
    { mark: { shape: 'wrong', note: right[0], playedKey: 73 }, weight: 'heavy' },
  ])
})

test('marks on more than a third of the notes are a crowd', () => {
  expect(isCrowded(score, barsOf('0 wrong 1, 1 wrong 1, 2 wrong 1'))).toBe(false)
  expect(isCrowded(score, barsOf('0 wrong 1, 1 wrong 1, 2 wrong 1, 3 missing 1'))).toBe(true)
})
