import type { Chunk, Onset } from '@/music/chunk'
import type { KeyEvent, Take } from '@/music/keyEvent'
import { key, ms, quarterMs, type Key, type Ms, type Tempo } from '@/music/units'
import { createRandom, type Random } from './random'

export const slipKinds = ['wrong', 'missing', 'extra', 'repeated', 'hesitation', 'octave'] as const
/**
 * What goes wrong at one onset: the neighbouring key instead, a key left out, the neighbouring key
 * besides, the same key twice, a stop before it, the right name in another octave.
 */
export interface Slip {
  readonly kind: (typeof slipKinds)[number]
  /** Index into `chunk.onsets`. */
  readonly onset: number
}

export interface TakePlan {
  readonly tempo: Tempo
  readonly seed: number
  /** None when left out: a clean repetition. */
  readonly slips?: readonly Slip[]
  /** When the first onset is due; 0 when left out. */
  readonly start?: Ms
}

export interface RunPlan extends Omit<TakePlan, 'slips'> {
  /** The slips of each repetition. */
  readonly repetitions: readonly (readonly Slip[])[]
}

/**
 * How unevenly a good player plays. Gaps of even playing vary by 3 to 8 % (SD; no single source,
 * bands from memory); an onset SD of 2.5 % of the gap gives a gap SD of 3.5 %.
 */
const onsetSd = 0.025
/** The keys of a chord within one hand spread by an SD of 10 to 20 ms (from memory, after Repp 1996, JASA 100:3917), */
const chordSdMs = 12
/** but by no more than this share of the gap, so that quick chords stay apart. */
const chordSdShare = 0.02
const meanVelocity = 64
const velocitySd = 5
/** The top note of a chord is played louder (Goebl 2001, JASA 110:563). */
const topVelocity = 8
/** A key is held for nearly all of its written length (common practice, no source). */
const heldShare = 0.95
const heldSd = 0.04
/** A key must come up before it can be struck again. */
const releaseMs = 30
/** A stop is at once seen as one: the pause adds half as much again as the gap, at least 0.7 s. */
const pauseShare = 1.5
const pauseMs = 700
/** Semitones from a key to where a finger lands beside it. */
const nearKeys = [1, -1, 2, -2] as const
/** A brushed neighbour and a stuttered key follow the right one closely (common practice, no source). */
const brushMs = 50
const stutterMs = 130
/** Hands off between two repetitions. */
const restMs = 900

interface Strike {
  readonly key: Key
  readonly at: number
  readonly length: number
  readonly velocity: number
}

/** One repetition of the chunk at a tempo, played by a hand that is human and makes the chosen slips. */
export const planTake = (chunk: Chunk, plan: TakePlan): Take => ({
  events: toEvents(strikesOf(chunk, plan)),
})

/** Several repetitions one after another, each beginning at the same place of a bar, hands off between. */
export const planRun = (chunk: Chunk, plan: RunPlan): Take => {
  const { tempo, seed, repetitions, start = ms(0) } = plan
  const bar = ticksToMs(chunk, tempo, Math.max(1, chunk.barLength))
  const strikes: Strike[] = []
  let at = start
  for (const [i, slips] of repetitions.entries()) {
    const played = strikesOf(chunk, { tempo, seed: seed + i * 7919, slips, start: at })
    strikes.push(...played)
    const end = Math.max(...played.map((strike) => strike.at + strike.length), at) + restMs
    at = ms(start + Math.ceil((end - start) / bar) * bar)
  }
  return { events: toEvents(strikes) }
}

/**
 * A first look at a drill, as the slips of its repetitions: a clean one, a wrong key, clean, a stop,
 * then five clean ones in a row. The places are chosen by the seed, never the first onset.
 */
export const planTrial = (chunk: Chunk, seed: number): readonly (readonly Slip[])[] => {
  const random = createRandom(seed)
  const inside = (): number =>
    Math.min(chunk.onsets.length - 1, 1 + Math.floor(random.uniform() * (chunk.onsets.length - 1)))
  const wrong: Slip = { kind: 'wrong', onset: inside() }
  const stop: Slip = { kind: 'hesitation', onset: inside() }
  return [[], [wrong], [], [stop], [], [], [], [], []]
}

const ticksToMs = (chunk: Chunk, tempo: Tempo, ticks: number): number =>
  (ticks / chunk.ticksPerQuarter) * quarterMs(tempo)

const strikesOf = (
  chunk: Chunk,
  { tempo, seed, slips = [], start = ms(0) }: TakePlan,
): Strike[] => {
  const random = createRandom(seed)
  const strikes: Strike[] = []
  let paused = 0
  for (const [i, onset] of chunk.onsets.entries()) {
    const gap = ticksToMs(chunk, tempo, smallestGap(chunk, i))
    const here = slips.filter((slip) => slip.onset === i).map((slip) => slip.kind)
    if (here.includes('hesitation')) paused += Math.max(pauseShare * gap, pauseMs)
    const due = start + paused + ticksToMs(chunk, tempo, onset.start)
    const at = due + random.normal() * onsetSd * gap
    const around = chunk.onsets.slice(Math.max(0, i - 1), i + 2)
    let struck = strikeOnset(chunk, onset, { tempo, at, gap, random })
    for (const kind of here) struck = slipIn(kind, struck, { around, gap, random })
    strikes.push(...struck)
  }
  return strikes
}

/** The shorter of the gaps before and after an onset; a lone onset has its own length. */
const smallestGap = (chunk: Chunk, i: number): number => {
  const [before, here, after] = [chunk.onsets[i - 1], chunk.onsets[i], chunk.onsets[i + 1]]
  const start = here?.start ?? 0
  const gaps = [before && start - before.start, after && after.start - start]
  return Math.min(...gaps.flatMap((gap) => gap ?? []), here?.notes[0].length ?? Infinity)
}

const strikeOnset = (
  chunk: Chunk,
  onset: Onset,
  { tempo, at, gap, random }: { tempo: Tempo; at: number; gap: number; random: Random },
): Strike[] => {
  const chordSd = onset.notes.length > 1 ? Math.min(chordSdMs, chordSdShare * gap) : 0
  return onset.notes.map((note, i) => ({
    key: note.key,
    at: at + random.normal() * chordSd,
    length: ticksToMs(chunk, tempo, note.length) * (heldShare + random.normal() * heldSd),
    velocity: Math.round(
      meanVelocity +
        random.normal() * velocitySd +
        (onset.notes.length > 1 && i === onset.notes.length - 1 ? topVelocity : 0),
    ),
  }))
}

const slipIn = (
  kind: Slip['kind'],
  struck: readonly Strike[],
  { around, gap, random }: { around: readonly Onset[]; gap: number; random: Random },
): Strike[] => {
  const [first, ...rest] = struck
  if (!first) return []
  const one = random.pick([first, ...rest])
  const others = struck.filter((strike) => strike !== one)
  switch (kind) {
    case 'wrong':
      return [...others, { ...one, key: freeKey(one.key, nearKeys, around, random) }]
    case 'octave':
      return [...others, { ...one, key: freeKey(one.key, [12, -12], around, random) }]
    case 'missing':
      return others
    case 'extra': {
      const beside = freeKey(one.key, nearKeys, around, random)
      const later = Math.min(0.4 * gap, brushMs)
      return [...struck, { ...one, key: beside, at: one.at + later, length: 0.3 * gap }]
    }
    case 'repeated': {
      const later = Math.min(0.5 * gap, stutterMs)
      return [...struck, { ...one, at: one.at + later, length: Math.min(one.length, 0.45 * gap) }]
    }
    case 'hesitation':
      return [...struck]
  }
}

/**
 * A key at one of the distances that no onset around here demands or allows, so that the slip is
 * nothing else; on the piano, A0 to C8. Hemmed in on all sides, the nearest free key.
 */
const freeKey = (
  from: Key,
  distances: readonly number[],
  around: readonly Onset[],
  random: Random,
): Key => {
  const taken = new Set(
    around.flatMap((o) => [...o.notes.map((note) => note.key), ...o.auxiliaries]),
  )
  const nearer = (a: number, b: number): number => Math.abs(a - from) - Math.abs(b - from)
  const free = Array.from({ length: 88 }, (_, i) => key(21 + i)).filter((k) => !taken.has(k))
  const [first, ...rest] = free.filter((k) => distances.includes(k - from))
  if (first !== undefined) return random.pick([first, ...rest])
  return free.toSorted(nearer)[0] ?? from
}

const toEvents = (strikes: readonly Strike[]): KeyEvent[] => {
  const sorted = strikes.toSorted((a, b) => a.at - b.at)
  const events = sorted.flatMap((strike, i): KeyEvent[] => {
    const again = sorted.slice(i + 1).find((later) => later.key === strike.key)
    const limit = again ? again.at - Math.min(releaseMs, (again.at - strike.at) / 2) : Infinity
    const up = Math.min(strike.at + Math.max(strike.length, 1), limit)
    return [
      { kind: 'down', key: strike.key, velocity: strike.velocity, at: ms(strike.at) },
      { kind: 'up', key: strike.key, at: ms(up) },
    ]
  })
  return events.toSorted((a, b) => a.at - b.at)
}
