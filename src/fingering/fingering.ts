/**
 * A fingering for one hand: a proposal, never the only one.
 *
 * touch: one finger on one key (rules.ts). grip: what a hand holds at an onset, struck or held on
 * (grips.ts). digits: the fingers of a grip, 1 the thumb to 5. What a fingering costs is the model of
 * Parncutt, Sloboda, Clarke, Raekallio & Desain 1997 for single notes, extended to chords and two
 * voices after Al Kasimi, Nichols & Raphael 2007 and Balliauw et al. 2017 (weights.ts); the cheapest
 * digits are found by dynamic programming (search.ts). Scales and broken chords take their usual
 * digits (runs.ts, scaleTable.ts), repeated groups the same ones (alike.ts), and digits that the file
 * or the person gives are kept.
 *
 * Example: C5 D5 E5 F5 G5, right hand -> 1 2 3 4 5, cost 4; the scale C5 to C6 -> 1 2 3 1 2 3 4 5, cost 15.
 */
import type { Finger, Hand } from '@/music/music'
import type { NoteId } from '@/music/units'
import { preferAlike } from './alike'
import { costTable, type CostTable } from './costTable'
import { differenceOf, type Difference } from './differences'
import { gripsOf, type Grip, type HandNote } from './grips'
import { fixRuns } from './runs'
import { searchPaths, type Path } from './search'
import { spansOf, type HandReach, type Spans } from './spans'
import { findUnreachable, type Unreachable } from './unreachable'
import { weighOnsets, weighPath, type OnsetCost, type Weighed } from './weighing'

export interface FingeringSettings {
  readonly hand: Hand
  readonly ticksPerQuarter: number
  /** Medium where it is left out: the spans of the published model. */
  readonly span?: HandReach
  /** The person's digits, which are kept; they stand above those of the file. */
  readonly fixed?: ReadonlyMap<NoteId, Finger>
  /** Whether repeated groups take the same fingers; they do where it is left out. Without it the work is a fifth. */
  readonly alike?: boolean
  /** How many fingerings, the best one included; four where it is left out. */
  readonly count?: number
}

export interface FingeredNote {
  readonly id: NoteId
  readonly finger: Finger
}

/** One way to finger all notes of the hand. */
export interface Fingering extends Weighed {
  readonly notes: readonly FingeredNote[]
}

export interface Alternative extends Fingering {
  /** From the best. */
  readonly difference: Difference
}

export interface HandFingering {
  /** The first to propose; `undefined` when the hand has no notes. */
  readonly best: Fingering | undefined
  readonly alternatives: readonly Alternative[]
  /** Where even the best is more than the hand reaches. */
  readonly unreachable: readonly Unreachable[]
}

/** Fingers the notes of one hand; the other hand's are passed over. */
export const fingerHand = (
  notes: readonly HandNote[],
  settings: FingeringSettings,
): HandFingering => {
  const { hand, ticksPerQuarter, span = 'medium', fixed = new Map() } = settings
  const spans = spansOf(span)
  const { widestChord } = spans
  const given = gripsOf(notes, { hand, ticksPerQuarter, widestChord, fixed })
  const [path, ...otherPaths] = choosePaths(given, settings, costTable(spans))
  if (!path) return { best: undefined, alternatives: [], unreachable: [] }
  const best = fingeringOf(given, path, spans)
  return {
    best,
    alternatives: otherPaths.map((other) => {
      const fingering = fingeringOf(given, other, spans)
      return { ...fingering, difference: differenceOf(fingering, best) }
    }),
    unreachable: findUnreachable(given, path, span),
  }
}

/** What the first fingering to propose asks for at each onset of a hand, without its digits: a fifth of the work. */
export const fingerWork = (
  notes: readonly HandNote[],
  { hand, ticksPerQuarter, span = 'medium' }: Omit<FingeringSettings, 'fixed' | 'alike' | 'count'>,
): readonly OnsetCost[] => {
  const spans = spansOf(span)
  const { widestChord } = spans
  const given = gripsOf(notes, { hand, ticksPerQuarter, widestChord, fixed: new Map() })
  const [path] = searchPaths(fixRuns(given, hand), costTable(spans), 1)
  return path ? weighOnsets(given, path, spans) : []
}

/**
 * The way with the usual digits of runs first, then the cheapest others; and, where runs and repeated
 * groups leave too few, some in which these go otherwise.
 */
const choosePaths = (
  given: readonly Grip[],
  { hand, alike = true, count = 4 }: FingeringSettings,
  table: CostTable,
): readonly Path[] => {
  const withRuns = fixRuns(given, hand)
  const usual = alike ? preferAlike(withRuns, table) : withRuns
  const paths = searchPaths(usual, table, count)
  if (usual === given || count === 1) return paths
  const [best, ...next] = paths
  if (!best) return []
  const others = [...next, ...searchPaths(given, table, count)]
  return withoutTwins([best, ...others.toSorted((a, b) => a.cost - b.cost)]).slice(0, count)
}

/** Each way once, in the given order. */
const withoutTwins = (paths: readonly Path[]): readonly Path[] => {
  const seen = new Set<string>()
  return paths.filter((path) => {
    const word = path.holds.map((hold) => hold.map(({ finger }) => finger).join('')).join(' ')
    return !seen.has(word) && Boolean(seen.add(word))
  })
}

const fingeringOf = (grips: readonly Grip[], path: Path, spans: Spans): Fingering => ({
  notes: grips.flatMap(({ keys }, i) =>
    keys.flatMap(({ ids, heldFrom }, k) => {
      const finger = path.holds[i]?.[k]?.finger
      return heldFrom !== undefined || finger === undefined ? [] : ids.map((id) => ({ id, finger }))
    }),
  ),
  ...weighPath(grips, path, spans),
})
