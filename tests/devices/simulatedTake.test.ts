import fc from 'fast-check'
import { expect, test } from 'vitest'
import { planRun, planTake, planTrial, slipKinds, type Slip } from '@/devices/simulatedTake'
import type { KeyEvent, Take } from '@/music/keyEvent'
import { ms, tempo } from '@/music/units'
import { writeChunk } from '../support/chunks'
import { faultsOf } from '../support/soundStream'

const scale = writeChunk('C4 D4 E4 F4 G4')
const chords = writeChunk('C4+E4+G4 D4+F4 E4:1/2 F4:1/2 C4+E4+G4+C5:2')
const repeated = writeChunk('C4:1/4 C4:1/4 C4:1/4 C4:1/4 D4')
const chunks = fc.constantFrom(scale, chords, repeated)
const seeds = fc.integer({ min: 0, max: 2 ** 31 })
const tempos = fc.integer({ min: 30, max: 208 }).map(tempo)

const downs = (take: Take) => take.events.filter((e) => e.kind === 'down')
const keysOf = (take: Take) => downs(take).map((e) => e.key as number)
const play = (slips: readonly Slip[], seed = 1, chunk = scale) =>
  planTake(chunk, { tempo: tempo(60), seed, slips })

test('the same seed plays the same, another seed differently', () => {
  expect(play([], 5)).toEqual(play([], 5))
  expect(play([], 5)).not.toEqual(play([], 6))
})

test('a take without slips has the keys of the chunk, each onset near its time, chords together', () => {
  fc.assert(
    fc.property(chunks, tempos, seeds, (chunk, at, seed) => {
      const { events } = planTake(chunk, { tempo: at, seed, start: ms(1000) })
      expect(faultsOf(events, true)).toEqual([])
      const struck = downs({ events })
      let next = 0
      const times = chunk.onsets.map((onset) => {
        const mine = struck.slice(next, (next += onset.notes.length))
        expect(new Set(mine.map((e) => e.key))).toEqual(new Set(onset.notes.map((n) => n.key)))
        // What the judge must call together at its strictest: 60 ms.
        expect((mine.at(-1)?.at ?? 0) - (mine[0]?.at ?? 0)).toBeLessThan(60)
        return mine[0]?.at ?? 0
      })
      const quarter = 60_000 / at
      for (const [i, onset] of chunk.onsets.entries()) {
        const before = chunk.onsets[i - 1]
        if (!before) continue
        const written = ((onset.start - before.start) / chunk.ticksPerQuarter) * quarter
        // And steady: gaps within 20 % of the written ones.
        expect(Math.abs((times[i] ?? 0) - (times[i - 1] ?? 0) - written)).toBeLessThan(
          0.2 * written,
        )
      }
    }),
  )
})

test('over many takes the gaps vary by 3 to 8 %, and the keys of a chord by at most 20 ms', () => {
  const [gaps, spreads]: [number[], number[]] = [[], []]
  for (let seed = 0; seed < 400; seed++) {
    const times = downs(play([], seed)).map((e) => e.at)
    gaps.push(...times.slice(1).map((t, i) => (t - (times[i] ?? 0)) / 1000))
    const [first, second] = downs(play([], seed, writeChunk('C4+G4:2 D4'))).map((e) => e.at)
    spreads.push((second ?? 0) - (first ?? 0))
  }
  const sd = (xs: number[]) => {
    const mean = xs.reduce((a, b) => a + b, 0) / xs.length
    return Math.sqrt(xs.reduce((sum, x) => sum + (x - mean) ** 2, 0) / xs.length)
  }
  expect(sd(gaps)).toBeGreaterThan(0.03)
  expect(sd(gaps)).toBeLessThan(0.08)
  expect(Math.max(...spreads)).toBeGreaterThan(10)
  expect(sd(spreads)).toBeLessThan(20)
})

test('a wrong slip strikes a neighbour in place of the written key', () => {
  const [, , third = 0] = keysOf(play([{ kind: 'wrong', onset: 2 }]))
  expect(keysOf(play([{ kind: 'wrong', onset: 2 }]))).toEqual([60, 62, third, 65, 67])
  expect([1, 2]).toContain(Math.abs(third - 64))
})

test('an octave slip is twelve keys off', () => {
  const [, second = 0] = keysOf(play([{ kind: 'octave', onset: 1 }]))
  expect(Math.abs(second - 62)).toBe(12)
})

test('missing leaves a key out, extra and repeated add one', () => {
  expect(keysOf(play([{ kind: 'missing', onset: 1 }]))).toEqual([60, 64, 65, 67])
  expect(keysOf(play([{ kind: 'repeated', onset: 1 }]))).toEqual([60, 62, 62, 64, 65, 67])
  const extra = keysOf(play([{ kind: 'extra', onset: 1 }]))
  expect(extra.toSpliced(2, 1)).toEqual([60, 62, 64, 65, 67])
  expect([61, 63]).toContain(extra[2])
})

test('a hesitation is a gap of more than twice the written one, and all after it comes later', () => {
  const times = downs(play([{ kind: 'hesitation', onset: 2 }])).map((e) => e.at as number)
  const gaps = times.slice(1).map((t, i) => t - (times[i] ?? 0))
  expect(gaps.map((gap) => gap > 2000)).toEqual([false, true, false, false])
})

test('a slip in a chord spoils one key of it and leaves the rest', () => {
  const keys = keysOf(play([{ kind: 'wrong', onset: 0 }], 3, chords)).slice(0, 3)
  expect(keys.filter((k) => [60, 64, 67].includes(k))).toHaveLength(2)
})

test('whatever the slips, no key sticks and no key is struck while it is down', () => {
  const slip = fc.record({ kind: fc.constantFrom(...slipKinds), onset: fc.nat(4) })
  fc.assert(
    fc.property(
      chunks,
      tempos,
      seeds,
      fc.array(slip, { maxLength: 4 }),
      (chunk, at, seed, slips) => {
        expect(faultsOf(planTake(chunk, { tempo: at, seed, slips }).events, true)).toEqual([])
      },
    ),
  )
})

test('the repetitions of a run begin a whole number of bars apart, with hands off between', () => {
  const run = planRun(scale, {
    tempo: tempo(120),
    seed: 1,
    repetitions: [[], [], []],
    start: ms(500),
  })
  const firsts = downs(run).filter((_, i) => i % 5 === 0)
  // Five quarters at 120 and a rest: the third bar line of 2 s comes first.
  for (const [i, first] of firsts.entries())
    expect(Math.abs(first.at - (500 + i * 4000))).toBeLessThan(60)
  expect(faultsOf(run.events, true)).toEqual([])
  const lastUp = (events: readonly KeyEvent[]) => Math.max(...events.map((e) => e.at))
  expect(lastUp(run.events.slice(0, 10))).toBeLessThan((firsts[1]?.at ?? 0) - 800)
})

test('the trial shows clean and flawed repetitions and ends with five clean ones', () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const trial = planTrial(scale, seed)
      expect(trial.map((slips) => slips.length)).toEqual([0, 1, 0, 1, 0, 0, 0, 0, 0])
      for (const { onset } of trial.flat()) {
        expect(onset).toBeGreaterThan(0)
        expect(onset).toBeLessThan(scale.onsets.length)
      }
    }),
  )
})
