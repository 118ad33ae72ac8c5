import type { Take } from '@/music/keyEvent'
import type { TimeSignature } from '@/music/music'
import { tick, type Key, type Ms, type Tick } from '@/music/units'
import { fullBar } from './bars'
import type { NoteToWrite } from './writeMidiFile'

/** The smallest note value that is written: what the person counts in. */
export const grids = ['eighths', 'triplets', 'sixteenths'] as const
export type RecordingGrid = (typeof grids)[number]

/** A take played against the metronome. */
export interface Recording {
  readonly take: Take
  /** When the first beat after the count-in falls, on the clock of the take. */
  readonly firstBeat: Ms
  /** When the recording was stopped: keys still held end there. */
  readonly end: Ms
  /** How long a quarter lasts. */
  readonly quarter: Ms
  readonly time: TimeSignature
  readonly grid: RecordingGrid
}

/** What was played, as it is written. */
export interface RecordedNotes {
  /** By start, then key. */
  readonly notes: readonly NoteToWrite[]
  /** How long the bar before the first full one is; 0 where the music begins on a bar line. */
  readonly pickup: Tick
}

/** Ticks to a quarter of what is recorded: eighths, triplets and sixteenths are whole. */
export const recordedTicks = 480
const steps: Readonly<Record<RecordingGrid, number>> = {
  eighths: recordedTicks / 2,
  triplets: recordedTicks / 3,
  sixteenths: recordedTicks / 4,
}

/**
 * Puts recorded playing on the grid. Keys struck together, within some milliseconds, fall on one place.
 * A note ends where the next one begins if it was held about so long, else at the nearest place, of a
 * long note at the nearest beat. Bars of waiting before the first note are left out; notes struck in
 * the count-in are a pickup.
 */
export const quantiseTake = (recording: Recording): RecordedNotes => {
  const step = steps[recording.grid]
  const strikes = placeStrikes(recording, step)
  const starts = [...new Set(strikes.map(({ start }) => start))].toSorted((a, b) => a - b)
  const notes = strikes.map((strike) => ({
    ...strike,
    length: endOf(strike, starts, strikes, recording.time, step) - strike.start,
  }))
  const { shift, pickup } = firstBarLine(starts[0] ?? 0, recording.time)
  return {
    pickup: tick(pickup),
    notes: notes
      .map(({ start, length, key, velocity }) => ({
        start: tick(start + shift),
        length: tick(length),
        key,
        velocity,
      }))
      .toSorted((a, b) => a.start - b.start || a.key - b.key),
  }
}

/** A key on its place, and how long it was held, in ticks from the first beat. */
interface Strike {
  readonly key: Key
  readonly velocity: number
  readonly start: number
  /** Not yet on the grid. */
  readonly held: number
}

/** Two hands that mean one chord are rarely farther apart (chord spread, 95th percentile 68 ms from first to last). */
const togetherMs = 40

const placeStrikes = (recording: Recording, step: number): readonly Strike[] => {
  const { firstBeat, quarter } = recording
  const toTicks = (ms: number): number => (ms / quarter) * recordedTicks
  const window = Math.min(togetherMs, (step / recordedTicks) * quarter * 0.3)
  const places = new Map<string, Strike>()
  let group: PlayedKey[] = []
  const closeGroup = (): void => {
    const mean = group.reduce((sum, { at }) => sum + at, 0) / group.length
    const start = Math.round(toTicks(mean - firstBeat) / step) * step
    for (const { key, velocity, at, end } of group) {
      const strike = { key, velocity, start, held: toTicks(end - at) }
      const twin = places.get(`${start} ${key}`)
      // Struck twice within one place: one note, as long as the longer.
      if (!twin || twin.held < strike.held) places.set(`${start} ${key}`, strike)
    }
    group = []
  }
  for (const played of playedKeys(recording)) {
    if (group[0] && played.at - group[0].at > window) closeGroup()
    group.push(played)
  }
  if (group.length > 0) closeGroup()
  return [...places.values()]
}

interface PlayedKey {
  readonly key: Key
  readonly velocity: number
  readonly at: number
  readonly end: number
}

/** Each key from its strike to its release, or to its next strike, in the order of the strikes. */
const playedKeys = ({ take, end }: Recording): readonly PlayedKey[] => {
  /** What happens next to each key, seen from the end. */
  const next = new Map<Key, number>()
  const played: PlayedKey[] = []
  for (const event of take.events.toReversed()) {
    if (event.kind === 'pedal') continue
    const { key, at } = event
    if (event.kind === 'down')
      played.push({ key, velocity: event.velocity, at, end: Math.max(at, next.get(key) ?? end) })
    next.set(key, at)
  }
  return played.toReversed()
}

/** Keys are let go a little before the written end, even in legato (common practice, no source). */
const heldShare = 0.97
/** Of a long note the end is this much of its length uncertain. */
const endSlack = 0.1

const endOf = (
  { key, start, held }: Strike,
  starts: readonly number[],
  all: readonly Strike[],
  time: TimeSignature,
  step: number,
): number => {
  const end = start + held / heldShare
  const slack = Math.max(step / 2, endSlack * held)
  const near = (places: readonly number[]): readonly number[] =>
    places
      .filter((place) => place > start && Math.abs(place - end) <= slack)
      .toSorted((a, b) => Math.abs(a - end) - Math.abs(b - end))
  const [next] = near(starts)
  const first = Math.ceil((end - slack) / step) * step
  const grid = Array.from(
    { length: Math.floor((end + slack - first) / step) + 1 },
    (_, i) => first + i * step,
  )
  const [written] = near(grid).toSorted((a, b) => weight(b, time) - weight(a, time))
  const again = all
    .filter((other) => other.key === key && other.start > start)
    .reduce((soonest, other) => Math.min(soonest, other.start), Infinity)
  return Math.min(next ?? written ?? start + step, again)
}

/** How likely a note ends there: at a bar line, at a beat, between. */
const weight = (place: number, time: TimeSignature): number => {
  if (place % fullBar(time, recordedTicks) === 0) return 2
  return place % ((4 * recordedTicks) / time.beatType) === 0 ? 1 : 0
}

/** By how much all must move so that the music begins in its first bar, and how long a pickup is. */
const firstBarLine = (
  first: number,
  time: TimeSignature,
): { readonly shift: number; readonly pickup: number } => {
  const bar = fullBar(time, recordedTicks)
  const beat = (4 * recordedTicks) / time.beatType
  if (first >= 0) return { shift: -Math.floor(first / bar) * bar, pickup: 0 }
  const before = Math.ceil(-first / beat) * beat
  return before < bar
    ? { shift: before, pickup: before }
    : { shift: Math.ceil(before / bar) * bar, pickup: 0 }
}
