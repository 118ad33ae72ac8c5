import { key, type Key, type NoteId, type Tick } from '@/music/units'
import type { Beyond } from '@/text/fingering'
import type { Hold } from './candidates'
import { mostKeys, type Grip } from './grips'
import { isLifted, type Touch } from './rules'
import type { Path } from './search'
import { spansOf, type HandReach, type Spans } from './spans'
import { isForbidden } from './weights'

/** What the hand does not reach, whatever the fingers; `tellUnreachable` (text/fingering.ts) says it, with what can be done. */
export interface Unreachable {
  readonly start: Tick
  readonly ids: readonly NoteId[]
  readonly why: Beyond<Key>
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
    const places = struck.map(({ place }) => place)
    const why =
      inChord(places, spans) ??
      (grip.isAfterRest ? undefined : inStep(holds[i - 1], holds[i], spans))
    return why ? [{ start: grip.start, ids: struck.flatMap(({ ids }) => ids), why }] : []
  })
}

const inChord = (places: readonly number[], { widestChord }: Spans): Beyond<Key> | undefined => {
  const semitones = Math.max(...places) - Math.min(...places)
  if (semitones > widestChord) return { kind: 'wide', semitones, reach: widestChord }
  return places.length > mostKeys ? { kind: 'many', keys: places.length } : undefined
}

const inStep = (
  before: Hold | undefined,
  after: Hold | undefined,
  spans: Spans,
): Beyond<Key> | undefined => {
  const [from, to] = [before?.[0], after?.[0]]
  if (!from || !to || before?.length !== 1 || after?.length !== 1) return undefined
  return isLifted(from, to, spans) || isForbidden(from, to, spans)
    ? { kind: 'lift', from: keyOf(from), to: keyOf(to) }
    : undefined
}

const keyOf = ({ place }: Touch): Key => key(Math.abs(place))
