import { diagnose, type Diagnosis } from '@/coach/diagnose'
import type { Coach } from '@/coach/coach'
import type { Problem } from '@/coach/reasons'
import { beginRemedy, offerRemedies, remedyExercise, type Remedy } from '@/coach/remedies'
import { widestOf, type HandReach } from '@/fingering/spans'
import type { DrillId } from '@/journal/ids'
import { formatFraction } from '@/music/fraction'
import { chunkAt, type Place } from '@/music/place'
import { barsOf, type Practising } from './practising'
import type { TakenUp } from './takeUp'

/** A problem, what it most likely is, and what can be done about it at once. */
export interface Finding {
  readonly diagnosis: Diagnosis
  readonly remedies: readonly Remedy[]
}

export const findOut = (
  { piece, written, chunk }: Practising,
  problem: Problem,
  { sightings }: Coach,
  reach: HandReach,
): Finding => {
  const diagnosis = diagnose(problem, chunk, sightings)
  return {
    diagnosis,
    remedies: offerRemedies(piece, written, diagnosis, widestOf(reach)),
  }
}

/** The small drill of a remedy; `undefined` where its notes cannot be found. */
export const remedyDrill = (
  of: Practising,
  remedy: Remedy,
  { rung, endurance }: Coach,
  drill: DrillId,
): TakenUp | undefined => {
  const variant = remedyExercise(of.piece, of.written, remedy)
  const written = variant && chunkAt(of.piece, placeOfRemedy(of, remedy))
  const bars = written && barsOf(of.piece, written)
  if (!variant || !written || !bars) return undefined
  const { score, chunk, form } = variant
  const coach = beginRemedy(remedy, rung, endurance)
  const practising: Practising = {
    ...of,
    drill,
    score,
    chunk,
    written,
    form,
    bars,
    reach: coach.rungs.at(-1) ?? coach.rung,
    remedy,
    next: undefined,
  }
  return { practising, coach }
}

const placeOfRemedy = ({ written }: Practising, { from, to, hand }: Remedy): Place => {
  const at = (onset: number): string =>
    formatFraction(written.start + (written.onsets[onset]?.start ?? 0), written.ticksPerQuarter)
  return { from: at(from), to: at(to), hand }
}
