import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { buildUp, type Exercise } from '@/exercises/buildUp'
import { directions } from '@/exercises/order'
import { leastMeetings, thoroughnesses } from '@/exercises/steps'
import { handChoices, type HandChoice, type Score } from '@/music/music'
import { tick, type Tick } from '@/music/units'
import { writeScore } from '../music/writeScore'

const word = fc
  .tuple(
    fc.constantFrom('C5', 'D5', 'E5+G5', 'F5', 'r', '(A5)'),
    fc.constantFrom('1/4', '1/4', '1/3', '1/2', '1', '3'),
  )
  .map(([name, length]) => `${name}:${length}`)
const line = fc.array(word, { maxLength: 40 }).map((words) => words.join(' '))
const built = fc
  .record({
    right: line.map((l) => `C5 ${l}`),
    left: line.map((l) => l.replaceAll('5', '3')),
    time: fc.constantFrom([4, 4], [3, 4], [6, 8], [5, 8]) as fc.Arbitrary<[number, number]>,
    hand: fc.constantFrom(...handChoices),
    thoroughness: fc.constantFrom(...thoroughnesses),
    direction: fc.constantFrom(...directions),
    moves: fc.array(fc.nat(60), { maxLength: 5 }),
    from: fc.nat(12),
    length: fc.nat(40),
  })
  .map(({ right, left, time, moves, from, length, ...options }) => {
    const score = writeScore({ right, left, time })
    const passage = { from: tick(480 * from), to: tick(480 * (from + length)) }
    const positionChanges = { right: moves.map((at) => tick(at * 240)) }
    const all = buildUp(score, passage, { ...options, positionChanges })
    return { ...options, all, onsets: onsetsIn(score, passage, options.hand), score, passage }
  })

/** Starts of the onsets of a passage and which hands play them. */
const onsetsIn = (
  score: Score,
  { from, to }: { readonly from: Tick; readonly to: Tick },
  hand: HandChoice,
): readonly Tick[] => [
  ...new Set(
    score.notes
      .filter((n) => !n.grace && n.start >= from && n.start < to)
      .filter((n) => hand === 'both' || n.hand === hand)
      .map((n) => n.start),
  ),
]

/** Whether an exercise holds all that these onsets ask of the passage, from the first to the last. */
const holds = (
  exercise: Exercise,
  score: Score,
  passageHand: HandChoice,
  starts: readonly Tick[],
) => {
  const [first, last] = [starts[0] ?? 0, starts.at(-1) ?? 0]
  const played = (exercise.hand === 'both' ? ['left', 'right'] : [exercise.hand]) as string[]
  return (
    exercise.from <= first &&
    exercise.to >= last &&
    score.notes
      .filter((n) => !n.grace && n.start >= first && n.start <= last)
      .filter((n) => passageHand === 'both' || n.hand === passageHand)
      .every((n) => played.includes(n.hand))
  )
}

const windows = (onsets: readonly Tick[], size: number): readonly (readonly Tick[])[] =>
  Array.from({ length: Math.max(0, onsets.length - size + 1) }, (_, i) => onsets.slice(i, i + size))

const isWritten = ({ form }: Exercise): boolean => form === 'asWritten'

describe('of every passage', () => {
  test('each transition is met in three exercises, brisk in two, where there are so many groups with it', () => {
    fc.assert(
      fc.property(built, ({ all, onsets, score, hand, thoroughness }) => {
        for (const [i, pair] of windows(onsets, 2).entries()) {
          const possible = (i + 1) * (onsets.length - 1 - i)
          const met = all.filter((e) => isWritten(e) && holds(e, score, hand, pair)).length
          expect(met).toBeGreaterThanOrEqual(Math.min(leastMeetings[thoroughness], possible))
        }
      }),
    )
  })

  test('each hand that is to join the other meets each of its transitions so often, too', () => {
    fc.assert(
      fc.property(built, ({ all, score, passage, hand, thoroughness }) => {
        if (!all.some((e) => e.hand !== hand)) return
        for (const one of ['left', 'right'] as const) {
          const onsets = onsetsIn(score, passage, one)
          const own = all.filter((e) => isWritten(e) && e.hand === one)
          for (const [i, pair] of windows(onsets, 2).entries()) {
            const possible = (i + 1) * (onsets.length - 1 - i)
            const met = own.filter((e) => holds(e, score, one, pair)).length
            expect(met).toBeGreaterThanOrEqual(Math.min(leastMeetings[thoroughness], possible))
          }
        }
      }),
    )
  })

  test('every join is bridged: any three neighbouring onsets are met together before the whole is', () => {
    fc.assert(
      fc.property(built, ({ all, onsets, score, hand, thoroughness }) => {
        if (onsets.length <= (thoroughness === 'brisk' ? 5 : 3)) return
        for (const three of windows(onsets, 3))
          expect(all.slice(0, -1).some((e) => isWritten(e) && holds(e, score, hand, three))).toBe(
            true,
          )
      }),
    )
  })

  test('before the hands come together, each has met the transitions that they meet', () => {
    fc.assert(
      fc.property(built, ({ all, score, passage, hand }) => {
        if (!all.some((e) => e.hand !== hand)) return
        for (const [i, together] of all.entries()) {
          if (together.hand !== 'both') continue
          for (const one of ['left', 'right'] as const)
            for (const pair of windows(onsetsIn(score, passage, one), 2)) {
              const [first = 0, last = 0] = pair
              if (first < together.from || last > together.to) continue
              expect(
                all.slice(0, i).some((e) => e.hand === one && holds(e, score, one, pair)),
              ).toBe(true)
            }
        }
      }),
    )
  })

  test('in a stage, the exercises of one hand that overlap those of both come before them', () => {
    fc.assert(
      fc.property(built, ({ all }) => {
        for (const [i, together] of all.entries()) {
          if (together.hand !== 'both') continue
          const later = all.slice(i + 1).filter((e) => e.hand !== 'both')
          const overlapping = later.filter(
            (e) => e.stage === together.stage && e.from < together.to && together.from < e.to,
          )
          expect(overlapping).toEqual([])
        }
      }),
    )
  })

  test('from stage to stage the sizes of a hand grow', () => {
    fc.assert(
      fc.property(built, ({ all }) => {
        for (const one of handChoices) {
          const written = all.filter((e) => e.hand === one && isWritten(e))
          const stages = [...new Set(written.map(({ stage }) => stage))].map((stage) =>
            written.filter((e) => e.stage === stage).map(({ size }) => size),
          )
          const [least, most] = [Math.min, Math.max].map((of) => stages.map((s) => of(...s)))
          expect(least).toEqual(least?.toSorted((a, b) => a - b))
          expect(most).toEqual(most?.toSorted((a, b) => a - b))
        }
        expect(all.map(({ stage }) => stage)).toEqual(
          all.map(({ stage }) => stage).toSorted((a, b) => a - b),
        )
      }),
    )
  })

  test('nothing comes twice', () => {
    fc.assert(
      fc.property(built, ({ all }) => {
        expect(new Set(all.map(({ chunk }) => chunk.id)).size).toBe(all.length)
        const written = all
          .filter(isWritten)
          .map(({ chunk }) =>
            chunk.onsets.flatMap(({ notes }) => notes.flatMap(({ ids }) => ids)).join(),
          )
        expect(new Set(written).size).toBe(written.length)
      }),
    )
  })

  test('the last is the whole passage as written, and the only one up to the goal tempo', () => {
    fc.assert(
      fc.property(built, ({ all, onsets, hand }) => {
        expect(all.length > 0).toBe(onsets.length > 0)
        const last = all.at(-1)
        if (!last) return
        const starts = last.chunk.onsets.map(({ start }) => last.chunk.start + start)
        expect([last.form, last.hand, last.what, starts]).toEqual([
          'asWritten',
          hand,
          'whole',
          onsets,
        ])
        expect(all.filter(({ reach }) => reach === 1)).toEqual([last])
      }),
    )
  })

  test('the list stays workable: no more than two exercises for each onset of a hand, brisk one', () => {
    fc.assert(
      fc.property(built, ({ all, onsets, thoroughness, hand }) => {
        const hands = hand === 'both' ? 3 : 1
        const most = thoroughness === 'thorough' ? 2 : 1
        expect(all.length).toBeLessThanOrEqual(hands * most * onsets.length + 6)
      }),
    )
  })
})
