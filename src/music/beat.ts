import type { TimeSignature } from './music'
import { tempo, type Tempo } from './units'

/** 6/8, 9/8 and 12/8 are counted in dotted quarters, and so with other note values (common practice, no source). */
export const isCompound = ({ beats, beatType }: TimeSignature): boolean =>
  beatType >= 4 && beats > 3 && beats % 3 === 0

/** The note value that is counted, in quarters: 1 in 3/4, 0.5 in 3/8, 1.5 in 6/8, 2 in 2/2. */
export const beatQuarters = (time: TimeSignature): number =>
  (isCompound(time) ? 3 : 1) * (4 / time.beatType)

/** A tempo in the beat of the time signature: 90 quarters a minute in 6/8 -> '60'. */
export const formatBeats = (t: Tempo, time: TimeSignature): string =>
  `${Math.round(t / beatQuarters(time))}`

/** The slowest and fastest beat that can be asked for, a minute. */
export const beatBounds = { slowest: 10, fastest: 400 } as const

/** The inverse of `formatBeats`; `undefined` when it is no number or out of bounds. */
export const parseBeats = (text: string, time: TimeSignature): Tempo | undefined => {
  const beats = Number(text)
  return beats >= beatBounds.slowest && beats <= beatBounds.fastest
    ? tempo(beats * beatQuarters(time))
    : undefined
}
