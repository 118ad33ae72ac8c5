import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { beginJudge, stepJudge, type Finding, type JudgeSettings } from '@/judge/judge'
import { replayTake } from '@/judge/replay'
import { standards } from '@/judge/flaw'
import type { Chunk } from '@/music/chunk'
import type { KeyEvent, Take } from '@/music/keyEvent'
import { key, ms } from '@/music/units'
import {
  anyChunk,
  anySeed,
  createDice,
  evenManner,
  play,
  slipIn,
  slips,
  takeOf,
  type Manner,
} from './player'

const settings: JudgeSettings = { standard: 'notes', forgiveBrushed: false }

describe('a clean take', () => {
  const anyManner: fc.Arbitrary<Manner> = fc.record({
    quarter: fc.integer({ min: 350, max: 1400 }),
    gapSd: fc.double({ min: 0, max: 0.2, noNaN: true }),
    chordSd: fc.double({ min: 0, max: 20, noNaN: true }),
    held: fc.double({ min: 0.2, max: 2.5, noNaN: true }),
  })

  test('is one clean repetition at notes, however unevenly it is played', () => {
    fc.assert(
      fc.property(anyChunk(), anyManner, anySeed, (chunk, manner, seed) => {
        const { repetitions } = replayTake(
          chunk,
          settings,
          takeOf(play(chunk, manner, createDice(seed))),
        )
        expect(repetitions.map((r) => r.verdict)).toEqual(['clean'])
      }),
      { numRuns: 400 },
    )
  })
})

describe('one slip', () => {
  test.each(slips)('%s: is flagged, at its note or key, and nothing else is blamed', (slip) => {
    fc.assert(
      fc.property(anyChunk(2), anySeed, (chunk, seed) => {
        const dice = createDice(seed)
        const played = slipIn(chunk, play(chunk, evenManner, dice), slip, dice)
        fc.pre(played !== undefined)
        if (!played) return
        const { repetitions } = replayTake(chunk, settings, takeOf(played.struck))
        expect(repetitions.flatMap((r) => r.flaws)).toHaveLength(1)
        expect(repetitions.map((r) => r.verdict)).toEqual(['flawed'])
      }),
      { numRuns: 400 },
    )
  })
})

const noise: fc.Arbitrary<Take> = fc
  .array(
    fc.record({
      kind: fc.constantFrom('down' as const, 'up' as const, 'pedal' as const),
      key: fc.integer({ min: 55, max: 70 }),
      wait: fc.oneof(
        fc.constant(0),
        fc.integer({ min: 0, max: 700 }),
        fc.integer({ min: 0, max: 9000 }),
      ),
      velocity: fc.integer({ min: 1, max: 127 }),
    }),
    { maxLength: 60 },
  )
  .map((plan) => {
    let at = 0
    return {
      events: plan.map(({ kind, key: k, wait, velocity }): KeyEvent => {
        at += wait
        switch (kind) {
          case 'down':
            return { kind, key: key(k), velocity, at: ms(at) }
          case 'up':
            return { kind, key: key(k), at: ms(at) }
          case 'pedal':
            return { kind, pedal: 'sustain', value: velocity, at: ms(at) }
        }
      }),
    }
  })

const anyStandard = fc.constantFrom(...standards)

describe('live equals replay', () => {
  /** The page's clock goes on at moments of its own; it never runs past a key on its way by more than the lag. */
  const listenLive = (
    chunk: Chunk,
    set: JudgeSettings,
    take: Take,
    dice: () => number,
  ): Finding[] => {
    const findings: Finding[] = []
    let judge = beginJudge(chunk, set)
    const feed = (event: Parameters<typeof stepJudge>[1]): void => {
      const [next, found] = stepJudge(judge, event)
      judge = next
      findings.push(...found)
    }
    let last = 0
    for (const event of take.events) {
      const gap = event.at - last
      for (const share of [dice(), dice(), dice()].toSorted((a, b) => a - b)) {
        feed({ kind: 'clock', at: ms(last + share * gap) })
      }
      feed(event)
      last = event.at
    }
    for (let at = last; at < last + 60_000; at += 997) feed({ kind: 'clock', at: ms(at) })
    return findings
  }

  test('the same findings in the same order, whatever the page tells of the time', () => {
    fc.assert(
      fc.property(anyChunk(), anyStandard, noise, anySeed, (chunk, standard, take, seed) => {
        const set = { ...settings, standard }
        const live = listenLive(chunk, set, take, createDice(seed))
        expect(live).toEqual(replayTake(chunk, set, take).findings)
      }),
      { numRuns: 150 },
    )
  })
})

describe('whatever is played', () => {
  test('each key struck is told once: in one repetition or as a stray', () => {
    fc.assert(
      fc.property(anyChunk(), anyStandard, noise, (chunk, standard, take) => {
        const { findings, repetitions } = replayTake(chunk, { ...settings, standard }, take)
        const strikes = take.events.filter((e) => e.kind === 'down').length
        const strays = findings.filter((f) => f.kind === 'stray').length
        const told = repetitions.map(
          (r) => new Set(r.marks.flatMap((m) => m.played?.index ?? [])).size,
        )
        expect(strays + told.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(strikes)
        for (const r of repetitions) {
          expect(r.lastOnset).toBeGreaterThanOrEqual(r.start)
          expect(r.verdict === 'flawed').toBe(r.flaws.some((f) => !f.forgiven))
        }
      }),
      { numRuns: 200 },
    )
  })

  test('a repetition ends before the next begins, and numbers count up from 0', () => {
    fc.assert(
      fc.property(anyChunk(), noise, (chunk, take) => {
        const numbers = replayTake(chunk, settings, take).findings.flatMap((f) =>
          f.kind === 'ended' ? [f.repetition.number] : [],
        )
        expect(numbers).toEqual(numbers.map((_, i) => i))
      }),
      { numRuns: 150 },
    )
  })
})
