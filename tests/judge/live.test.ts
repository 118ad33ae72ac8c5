import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { replayTake } from '@/judge/replay'
import { addUp, compareMarks } from './liveMarks'
import { anyChunk, createDice, evenManner, play, slipIn, slips, takeOf } from './player'

const settings = { standard: 'notes', forgiveBrushed: false } as const

/** 1500 takes of chunks as they are drilled, half of them clean, half with one slip of any kind. */
const total = fc
  .sample(fc.tuple(anyChunk(3), fc.nat(), fc.constantFrom('clean' as const, ...slips)), {
    numRuns: 1500,
    seed: 20,
  })
  .map(([chunk, seed, slip]) => {
    const dice = createDice(seed)
    const clean = play(chunk, { ...evenManner, quarter: 400 + 600 * dice() }, dice)
    const isClean = slip === 'clean' || dice() < 0.5
    const struck = isClean ? clean : slipIn(chunk, clean, slip, dice)?.struck
    return compareMarks(replayTake(chunk, settings, takeOf(struck ?? clean)).findings)
  })
  .reduce(addUp)

describe('live marks over 1500 simulated takes', () => {
  test('at least 99 of 100 are right at the moment of the key', () => {
    expect(total.marks).toBeGreaterThan(10_000)
    expect(total.atOnce / total.marks).toBeGreaterThan(0.99)
  })

  test('a note played right is shown as false meanwhile in fewer than 1 of 2000', () => {
    expect(total.slandered / total.marks).toBeLessThan(1 / 2000)
  })
})

test('a clean take shows right marks only, each with its own key, and takes none away', () => {
  fc.assert(
    fc.property(anyChunk(), fc.nat(), (chunk, seed) => {
      const dice = createDice(seed)
      const take = takeOf(play(chunk, evenManner, dice))
      const { findings } = replayTake(chunk, settings, take)
      const marks = findings.flatMap((f) => (f.kind === 'mark' ? [f.mark.kind] : []))
      expect(new Set(marks)).toEqual(new Set(['right']))
      expect(findings.filter((f) => f.kind === 'unmark')).toEqual([])
    }),
    { numRuns: 300 },
  )
})
