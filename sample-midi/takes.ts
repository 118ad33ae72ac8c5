/**
 * Takes for the command line: a passage of a sample played as a person plays it, with the noise of
 * a hand and with chosen slips. All chance comes from the seed, so the same file is made each time.
 */
import type { Chunk, Onset } from '@/music/chunk'
import type { Hand } from '@/music/music'
import type { KeyEvent, Take } from '@/music/keyEvent'
import { key, ms } from '@/music/units'

/** `onset` counts from 0. */
export type Slip =
  | { readonly kind: 'wrong'; readonly onset: number; readonly semitones: number }
  | { readonly kind: 'hesitation'; readonly onset: number; readonly ms: number }
  | { readonly kind: 'stop'; readonly onset: number }

export interface TakePlan {
  readonly file: string
  readonly title: string
  readonly piece: string
  readonly fromBar: number
  readonly toBar: number
  readonly hand: Hand | 'both'
  /** Quarter notes a minute. */
  readonly tempo: number
  readonly seed: number
  /** One list of slips for each repetition. */
  readonly repetitions: readonly (readonly Slip[])[]
}

const run = {
  piece: 'morning-at-the-mill.mid',
  fromBar: 9,
  toBar: 9,
  hand: 'right',
  tempo: 80,
} as const

export const takePlans: readonly TakePlan[] = [
  { ...run, file: 'run-clean.mid', title: 'The run, clean', seed: 11, repetitions: [[]] },
  {
    ...run,
    file: 'run-flawed.mid',
    title: 'The run with a wrong key and a stop',
    seed: 12,
    repetitions: [
      [
        { kind: 'wrong', onset: 4, semitones: 1 },
        { kind: 'hesitation', onset: 6, ms: 1200 },
      ],
    ],
  },
  {
    ...run,
    file: 'run-repetitions.mid',
    title: 'The run seven times: the third flawed, the fifth broken off',
    seed: 13,
    repetitions: [
      [],
      [],
      [{ kind: 'wrong', onset: 2, semitones: -1 }],
      [],
      [{ kind: 'stop', onset: 4 }],
      [],
      [],
    ],
  },
]

/** Standard deviations of an amateur's even playing (common practice, no source). */
const noise = { onset: 9, chord: 5, release: 12, velocity: 5 }
const meanVelocity = 70
/** Between two repetitions the hand goes back; after a stop it thinks. */
const pause = { between: 1600, afterStop: 6000 }
const leadIn = 500

export const playTake = (chunk: Chunk, plan: TakePlan): Take => {
  const random = seeded(plan.seed)
  const tickMs = 60_000 / plan.tempo / chunk.ticksPerQuarter
  const events: KeyEvent[] = []
  let start = leadIn
  for (const slips of plan.repetitions) {
    const stop = slips.find((slip) => slip.kind === 'stop')?.onset ?? chunk.onsets.length
    let held = 0
    for (const [i, onset] of chunk.onsets.slice(0, stop).entries()) {
      for (const slip of slips) if (slip.kind === 'hesitation' && slip.onset === i) held += slip.ms
      const wrong = slips.find((slip) => slip.kind === 'wrong' && slip.onset === i)
      const at = start + held + onset.start * tickMs + normal(random) * noise.onset
      events.push(
        ...strike(onset, at, tickMs, wrong?.kind === 'wrong' ? wrong.semitones : 0, random),
      )
    }
    const end = chunk.end - chunk.start
    const wait = stop < chunk.onsets.length ? pause.afterStop : pause.between
    start += held + end * tickMs + wait
  }
  return { events: events.toSorted((a, b) => a.at - b.at) }
}

/** The lowest key of the onset is the one that goes wrong. */
const strike = (
  onset: Onset,
  at: number,
  tickMs: number,
  semitones: number,
  random: () => number,
): KeyEvent[] =>
  onset.notes.flatMap((note, i): KeyEvent[] => {
    const down = at + (i === 0 ? 0 : Math.abs(normal(random)) * noise.chord)
    const held = Math.max(60, note.length * tickMs + normal(random) * noise.release)
    const velocity = Math.round(meanVelocity + normal(random) * noise.velocity)
    const struck = key(note.key + (i === 0 ? semitones : 0))
    return [
      { kind: 'down', key: struck, velocity: Math.min(127, Math.max(1, velocity)), at: ms(down) },
      { kind: 'up', key: struck, at: ms(down + held) },
    ]
  })

/** Uniform in [0, 1): mulberry32, a public-domain generator by Tommy Ettinger. */
const seeded = (seed: number): (() => number) => {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

/** Near to a standard normal: the sum of twelve uniforms less six, exact on every machine, unlike logarithms. */
const normal = (random: () => number): number => {
  let sum = -6
  for (let i = 0; i < 12; i++) sum += random()
  return sum
}
