import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { replayTake } from '@/judge/replay'
import type { Finding } from '@/judge/judge'
import { anyChunk, createDice, evenManner, play, slipIn, slips, takeOf } from './player'

const settings = { standard: 'notes', forgiveBrushed: false } as const

interface Agreement {
  readonly marks: number
  readonly atOnce: number
  /** Notes played right that were shown as false meanwhile. */
  readonly slandered: number
}

/** Compares the first mark of each key, right or not, with the final one; a mark held back counts as not right. */
const compare = (findings: readonly Finding[]): Agreement => {
  let first = new Map<string, string>()
  let everFalse = new Set<string>()
  let [marks, atOnce, slandered] = [0, 0, 0]
  for (const finding of findings) {
    switch (finding.kind) {
      case 'began':
        first = new Map()
        everFalse = new Set()
        break
      case 'mark':
        if (!first.has(finding.slot)) first.set(finding.slot, finding.mark.kind)
        if (finding.mark.kind !== 'right') everFalse.add(finding.slot)
        break
      case 'ended':
        for (const mark of finding.repetition.marks) {
          if (mark.kind === 'restart' || !mark.played) continue
          const slot = `k${mark.played.index}`
          const isRight = mark.kind === 'right'
          marks++
          if ((first.get(slot) === 'right') === isRight) atOnce++
          if (isRight && everFalse.has(slot)) slandered++
        }
        break
      case 'unmark':
      case 'stray':
        break
    }
  }
  return { marks, atOnce, slandered }
}

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
    return compare(replayTake(chunk, settings, takeOf(struck ?? clean)).findings)
  })
  .reduce((a, b) => ({
    marks: a.marks + b.marks,
    atOnce: a.atOnce + b.atOnce,
    slandered: a.slandered + b.slandered,
  }))

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
