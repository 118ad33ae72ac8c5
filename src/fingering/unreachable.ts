import { formatKey } from '@/music/pitch'
import { key, type NoteId, type Tick } from '@/music/units'
import type { Hold } from './candidates'
import { mostKeys, type Grip } from './grips'
import { isLifted, type Touch } from './rules'
import type { Path } from './search'
import { spansOf, type HandReach, type Spans } from './spans'
import { isForbidden } from './weights'

/** What the hand does not reach, whatever the fingers. */
export interface Unreachable {
  readonly start: Tick
  readonly ids: readonly NoteId[]
  /** What is asked, and what can be done. */
  readonly advice: string
}

/** The chords that are wider than the hand or have more keys than fingers, and the steps to which the hand must be lifted. */
export const findUnreachable = (
  grips: readonly Grip[],
  { holds }: Path,
  reach: HandReach,
): readonly Unreachable[] => {
  const spans = spansOf(reach)
  return grips.flatMap((grip, i) => {
    const struck = grip.keys.filter(({ heldFrom }) => heldFrom === undefined)
    const advice =
      adviceForChord(
        struck.map(({ place }) => place),
        spans,
      ) ?? (grip.isAfterRest ? undefined : adviceForStep(holds[i - 1], holds[i], spans))
    return advice === undefined
      ? []
      : [{ start: grip.start, ids: struck.flatMap(({ ids }) => ids), advice }]
  })
}

const adviceForChord = (places: readonly number[], { widestChord }: Spans): string | undefined => {
  const wide = Math.max(...places) - Math.min(...places)
  if (wide > widestChord)
    return `the chord spans ${wide} semitones, more than ${intervalOf(widestChord)}: roll it, or give a note to the other hand`
  return places.length > mostKeys
    ? `the chord has ${places.length} keys for five fingers: roll it, or give a note to the other hand`
    : undefined
}

const adviceForStep = (
  before: Hold | undefined,
  after: Hold | undefined,
  spans: Spans,
): string | undefined => {
  const [from, to] = [before?.[0], after?.[0]]
  if (!from || !to || before?.length !== 1 || after?.length !== 1) return undefined
  return isLifted(from, to, spans) || isForbidden(from, to, spans)
    ? `${nameOf(from)} to ${nameOf(to)} is no step for one place of the hand: lift it`
    : undefined
}

const nameOf = ({ place }: Touch): string => formatKey(key(Math.abs(place)))

/** 'a ninth': major, as from C. */
const intervalOf = (semitones: number): string => intervals[semitones] ?? `${semitones} semitones`

const intervals: Readonly<Record<number, string>> = {
  12: 'an octave',
  14: 'a ninth',
  16: 'a tenth',
}
