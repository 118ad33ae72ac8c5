import type { Finger } from '@/music/music'
import type { NoteId, Tick } from '@/music/units'
import type { FingeringText } from '@/text/fingering'
import type { Told } from '@/text/told'
import { differenceOf, type Difference } from './differences'
import { fingerHand, type Fingering, type FingeringSettings } from './fingering'
import { gripsOf, type GripKey, type HandNote } from './grips'
import { isImpractical, type Touch } from './rules'
import { spansOf, type Spans } from './spans'
import { isForbidden } from './weights'

/** Digits as somebody wrote them: not of every note, and not only such as a hand can do. */
export type WrittenDigits = ReadonlyMap<NoteId, Finger>

/** A digit that cannot be: to be pointed out, never forbidden. `tellImpossible` (text/fingering.ts) says why. */
export interface Impossible {
  readonly start: Tick
  readonly ids: readonly NoteId[]
  readonly why: Why
}

type Why = Told<FingeringText['impossible']>

export interface Compared {
  /** From the first one; `undefined` where the hand has no notes. */
  readonly difference: Difference | undefined
  readonly impossible: readonly Impossible[]
}

/**
 * Versions of a fingering beside the first of them. Where a version has no digit, the best that go with
 * its own are taken for it, so that it costs what it has decided.
 */
export const compareFingerings = (
  notes: readonly HandNote[],
  settings: Pick<FingeringSettings, 'hand' | 'ticksPerQuarter' | 'span'>,
  versions: readonly WrittenDigits[],
): readonly Compared[] => {
  // The digits of the file are a version like another.
  const bare = notes.map((note) => ({ ...note, fingers: [] }))
  const weighed = versions.map(
    (fixed): Fingering | undefined =>
      fingerHand(bare, { ...settings, fixed, alike: false, count: 1 }).best,
  )
  const [first] = weighed
  return versions.map((digits, i) => {
    const own = weighed[i]
    return {
      difference: own && first && differenceOf(own, first),
      impossible: findImpossible(bare, settings, digits),
    }
  })
}

/** What digits ask for that a hand cannot do: one finger twice in a chord, or a stretch beyond its span. */
export const findImpossible = (
  notes: readonly HandNote[],
  { hand, ticksPerQuarter, span = 'medium' }: Omit<FingeringSettings, 'fixed'>,
  fixed: WrittenDigits,
): readonly Impossible[] => {
  const spans = spansOf(span)
  const { widestChord } = spans
  const grips = gripsOf(notes, { hand, ticksPerQuarter, widestChord, fixed })
  return grips.flatMap(({ start, keys, isAfterRest }, i): readonly Impossible[] => {
    const within = inChord(keys, spans)
    if (within) return [{ start, ...within }]
    const [from, to] = [grips[i - 1]?.keys, keys]
    const step = isAfterRest || !from ? undefined : inStep(from, to, spans)
    return step ? [{ start, ...step }] : []
  })
}

type Found = Omit<Impossible, 'start'>
type Fingered = Touch & Pick<GripKey, 'ids'>

const fingered = (keys: readonly GripKey[]): readonly Fingered[] =>
  keys.flatMap(({ fixed, ...key }) => (fixed === undefined ? [] : [{ ...key, finger: fixed }]))

const inChord = (keys: readonly GripKey[], spans: Spans): Found | undefined => {
  const touches = fingered(keys)
  for (const [i, one] of touches.entries())
    for (const other of touches.slice(i + 1)) {
      const ids = [...one.ids, ...other.ids]
      if (one.finger === other.finger) return { ids, why: { kind: 'twice', finger: one.finger } }
      const beyond = beyondSpan(one, other, spans)
      if (beyond) return { ids, why: beyond }
    }
  return undefined
}

/** From one note to the next; a hand that is lifted for a leap reaches everything. */
const inStep = (
  before: readonly GripKey[],
  after: readonly GripKey[],
  spans: Spans,
): Found | undefined => {
  const [from, to] = [fingered(before)[0], fingered(after)[0]]
  if (!from || !to || before.length !== 1 || after.length !== 1) return undefined
  if (from.finger === to.finger || !isForbidden(from, to, spans)) return undefined
  const isCrossed = Math.sign(to.place - from.place) !== Math.sign(to.finger - from.finger)
  const why: Why | undefined = isCrossed
    ? { kind: 'jump', from: from.finger, to: to.finger }
    : beyondSpan(from, to, spans)
  return why && { ids: to.ids, why }
}

const beyondSpan = (one: Touch, other: Touch, spans: Spans): Why | undefined => {
  const semitones = Math.abs(other.place - one.place)
  if (!isImpractical(one, other, spans)) return undefined
  const { maxPractical: most } = spans.between(one.finger, other.finger)
  const [lower, higher] = one.place <= other.place ? [one, other] : [other, one]
  const both = { low: lower.finger, high: higher.finger }
  if (semitones > most) return { kind: 'tooWide', ...both, semitones, most }
  return both.low > both.high ? { kind: 'crossed', ...both } : { kind: 'tooClose', ...both }
}
