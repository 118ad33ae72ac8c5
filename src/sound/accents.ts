import { beatQuarters, isCompound } from '@/music/beat'
import type { TimeSignature } from '@/music/music'
import type { Accent } from './sound'

/** One click of a bar. */
export interface Pulse {
  /** From the bar line, in `pulsesPerQuarter`ths of a quarter: whole numbers, so that nothing drifts. */
  readonly offset: number
  readonly accent: Accent
  /** Counts the beats of the bar from 0; the clicks between two beats have the former's. */
  readonly beat: number
}

/** The bar as the metronome clicks it. */
export interface Bar {
  readonly length: number
  readonly pulses: readonly Pulse[]
}

/** 1/64 notes cut in three and in four are still whole. */
export const pulsesPerQuarter = 192

/**
 * The clicks of one bar, `perBeat` to a beat. A beat is the lower figure of the time signature,
 * or three of them where it is compound (6/8, 9/8, 12/8, 6/4, ...).
 * `clickBar({ beats: 6, beatType: 8 }, 1)` is two dotted quarters: strong, medium.
 */
export const clickBar = (time: TimeSignature, perBeat: number): Bar => {
  const beat = beatLength(time)
  const written = (4 * pulsesPerQuarter) / time.beatType
  const accents = beatAccents(time)
  return {
    length: time.beats * written,
    pulses: accents.flatMap((accent, i) =>
      Array.from({ length: perBeat }, (_, j): Pulse => ({
        offset: i * beat + (j * beat) / perBeat,
        accent: j === 0 ? accent : 'soft',
        beat: i,
      })),
    ),
  }
}

/** The beat in `pulsesPerQuarter`ths of a quarter. */
export const beatLength = (time: TimeSignature): number => pulsesPerQuarter * beatQuarters(time)

/** How the beats of a bar fall into groups; each group begins with an accent (common practice, no source). */
const groups: ReadonlyMap<number, readonly number[]> = new Map([
  [4, [2, 2]],
  [5, [3, 2]],
  [7, [2, 2, 3]],
  [8, [3, 3, 2]],
  [10, [3, 3, 2, 2]],
  [11, [3, 3, 3, 2]],
])

const beatAccents = (time: TimeSignature): Accent[] => {
  if (isCompound(time)) return accentGroups(groupsOf(time.beats / 3))
  return accentGroups(groupsOf(time.beats))
}

/** Two or three beats are one group; other numbers that the table lacks, groups of two and a last three. */
const groupsOf = (beats: number): readonly number[] => {
  if (beats <= 3) return [beats]
  const pairs = Math.floor(beats / 2)
  const even = Array.from({ length: pairs }, (_, i) => (i === pairs - 1 ? 2 + (beats % 2) : 2))
  return groups.get(beats) ?? even
}

const accentGroups = (sizes: readonly number[]): Accent[] =>
  sizes.flatMap((size, group) =>
    Array.from({ length: size }, (_, i): Accent => {
      if (i > 0) return 'weak'
      return group === 0 ? 'strong' : 'medium'
    }),
  )
