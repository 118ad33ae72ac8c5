import { coachRepetition, type CoachEvent } from '@/coach/coach'
import type { CoachFlaw } from '@/coach/problems'
import { planTake, type Slip } from '@/devices/simulatedTake'
import { replayTake } from '@/judge/replay'
import { cutChunk, type Chunk } from '@/music/chunk'
import type { Score } from '@/music/music'
import { key, ms, quarterMs, tempo, tick, type Ms, type Tempo } from '@/music/units'
import { writeScore } from '../music/writeScore'
import type { Learner } from './learner'

/** Seventeen onsets in eighths with two leaps, our own; the goal is 96 quarters a minute. */
export const passage: Score = writeScore({
  right:
    'C5:1/2 E5:1/2 G5:1/2 F5:1/2 E5:1/2 D5:1/2 C6:1/2 B5:1/2 ' +
    'A5:1/2 G5:1/2 F5:1/2 D5:1/2 E5:1/2 G4:1/2 A4:1/2 B4:1/2 C5',
})
export const goal = tempo(96)
const starts = passage.notes.map((note) => note.start)
export const lastOnset = starts.length - 1
export const keys = passage.notes.map((note) => note.key)

/** Some neighbouring onsets of the passage. */
export interface Stretch {
  readonly first: number
  readonly last: number
  readonly chunk: Chunk
}

export const stretchOf = (first: number, last: number): Stretch => {
  const [from, to] = [starts[first], starts[last]]
  const chunk =
    from === undefined || to === undefined
      ? undefined
      : cutChunk(passage, from, tick(to + 1), 'right')
  if (!chunk) throw new Error(`no onsets ${first} to ${last}`)
  return { first, last, chunk }
}

export const onsetAt = (at: number): number => starts.findIndex((start) => start === at)

export type Played = Extract<CoachEvent, { kind: 'repetition' }>

/** What becomes of slips: the verdict and the flaws. */
export type Ear = (chunk: Chunk, slips: readonly Slip[], rung: Tempo, seed: number) => Heard
type Heard = Pick<Played, 'verdict' | 'flaws'>

/** Every slip is the flaw that it was. */
export const plainEar: Ear = (chunk, slips) => ({
  verdict: slips.length > 0 ? 'flawed' : 'clean',
  flaws: slips.map(({ kind, onset }): CoachFlaw => {
    const written = chunk.onsets[onset]?.notes[0].key ?? key(60)
    if (kind === 'octave') return { kind: 'wrong', onset, written, played: key(written + 12) }
    if (kind === 'wrong') return { kind, onset, written, played: key(written + 1) }
    return kind === 'extra' ? { kind, onset, played: key(written + 1) } : { kind, onset, written }
  }),
})

/** The slips are played on the keys by the simulated player and heard by the judge. */
export const judgesEar: Ear = (chunk, slips, rung, seed) => {
  const take = planTake(chunk, { tempo: rung, seed, slips, start: ms(1_000) })
  const settings = { standard: 'flow', forgiveBrushed: false, quarter: quarterMs(rung) } as const
  const [repetition] = replayTake(chunk, settings, take).repetitions
  if (!repetition) throw new Error('nothing was heard')
  const event = coachRepetition(repetition, ms(0))
  if (event.kind !== 'repetition') throw new Error('a repetition is one')
  return event
}

/** One repetition, for the checks afterwards. */
export interface Entry {
  /** Counts the drills. */
  readonly drill: number
  readonly rung: Tempo
  readonly streakGoal: number
  readonly size: number
  readonly clean: boolean
  /** In a trial, or after the person's own choice, no streak is asked for. */
  readonly trial: boolean
}

/** A clock, a learner, and a list of all that was played. */
export interface Desk {
  readonly learner: Learner
  readonly log: Entry[]
  readonly play: (
    stretch: Stretch,
    rung: Tempo,
    entry: Pick<Entry, 'drill' | 'streakGoal' | 'trial'>,
  ) => Played
  readonly wait: (seconds: number) => void
  /** Time passes that is not practice. */
  readonly rest: (seconds: number) => void
  readonly now: () => Ms
  readonly minutes: () => number
  readonly hasTime: () => boolean
  readonly nextDrill: () => number
}

/** From the end of a repetition to the beginning of the next (common practice, no source). */
const breathSeconds = 2

export const createDesk = (learner: Learner, minutes: number, ear: Ear = plainEar): Desk => {
  let clock = 0
  let rested = 0
  let drills = 0
  const log: Entry[] = []
  return {
    learner,
    log,
    play: (stretch, rung, entry) => {
      const { chunk, first, last } = stretch
      const slips = learner.play(first, last, rung / goal)
      const start = ms(clock)
      clock += ((chunk.end - chunk.start) / chunk.ticksPerQuarter) * quarterMs(rung)
      const heard = ear(chunk, slips, rung, log.length)
      const at = ms(clock)
      clock += 1000 * breathSeconds
      const clean = heard.verdict === 'clean'
      log.push({ ...entry, rung, size: last - first + 1, clean })
      return { kind: 'repetition', ...heard, start, at }
    },
    wait: (seconds) => {
      clock += 1000 * seconds
    },
    rest: (seconds) => {
      clock += 1000 * seconds
      rested += 1000 * seconds
    },
    now: () => ms(clock),
    minutes: () => (clock - rested) / 60_000,
    hasTime: () => clock < minutes * 60_000,
    nextDrill: () => ++drills,
  }
}
