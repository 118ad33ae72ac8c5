import { ms, type ChunkId, type Key, type Ms } from '@/music/units'
import type { DrillId } from './ids'
import type { DrillBegun, JournalEvent, RecordedFlaw, RemedyEnded } from './journal'
import { compareEvents } from './merge'
import type { RecordedFlawKind, RecordedOverrule, RecordedRemedy, RecordedVerdict } from './words'

/** What the coach heard in a drill; the same shapes as its own events. */
export type ReplayedEvent =
  | {
      readonly kind: 'repetition'
      readonly verdict: RecordedVerdict
      readonly flaws: readonly ReplayedFlaw[]
      readonly start: Ms
      readonly at: Ms
    }
  | { readonly kind: 'raise' | 'lower' | 'skip' | 'end' | 'undo'; readonly at: Ms }
  | {
      readonly kind: 'remedied'
      readonly remedy: RecordedRemedy
      readonly problem: ReplayedProblem
      readonly solved: boolean
      readonly at: Ms
    }

interface ReplayedProblem {
  readonly flaw: RecordedFlawKind
  readonly place: number
  readonly written?: Key
  readonly played?: Key
  readonly times: number
}

interface ReplayedFlaw {
  readonly kind: RecordedFlawKind
  readonly onset: number
  readonly written?: Key
  readonly played?: Key
}

/** The drill of a chunk that was begun last, to be taken up again. */
export const latestDrill = (
  events: readonly JournalEvent[],
  chunk?: ChunkId,
): DrillBegun | undefined =>
  events
    .filter((e) => e.kind === 'drillBegun')
    .filter((e) => chunk === undefined || e.chunk === chunk)
    .toSorted(compareEvents)
    .at(-1)

/**
 * What the coach heard in a drill, in order: stepping a new coach through it rebuilds the state.
 * `clockStart` is the wall-clock time at which the clock of the key events stands at zero, so that
 * replayed and new events lie on one clock (earlier ones have negative times).
 */
export const coachEventsOf = (
  events: readonly JournalEvent[],
  drill: DrillId,
  clockStart: number,
): readonly ReplayedEvent[] => {
  const ofDrill = events
    .filter((event) => 'drill' in event && event.drill === drill)
    .toSorted(compareEvents)
  return ofDrill.flatMap((event, i) => replayed(event, ofDrill.slice(0, i), clockStart))
}

const replayed = (
  event: JournalEvent,
  before: readonly JournalEvent[],
  clockStart: number,
): readonly ReplayedEvent[] => {
  const at = ms(event.atEpochMs - clockStart)
  switch (event.kind) {
    case 'repetition': {
      const flaws = event.flaws.filter((flaw) => !flaw.forgiven).map(replayedFlaw)
      return [
        { kind: 'repetition', verdict: event.verdict, flaws, start: ms(at - event.tookMs), at },
      ]
    }
    case 'overruled':
      return replayedOverrule(event.what, at)
    case 'remedyEnded':
      return replayedRemedy(event, before, at)
    case 'sessionBegun':
    case 'pieceAdded':
    case 'drillBegun':
    // The coach itself comes to these again.
    case 'rungChanged':
    case 'secure':
    case 'exerciseDone':
    case 'problemNamed':
    case 'problemOutcome':
    case 'trialEnded':
    case 'remedyBegun':
    // Not of the drill.
    case 'notebookWritten':
    case 'notebookErased':
    case 'pieceDecided':
    case 'fingeringWritten':
    case 'fingeringErased':
    case 'fingeringChosen':
      return []
  }
}

const replayedOverrule = (what: RecordedOverrule, at: Ms): readonly ReplayedEvent[] => {
  switch (what) {
    case 'raise':
    case 'lower':
    case 'skip':
    case 'end':
      return [{ kind: what, at }]
    // A change of the tempo taken back is one the other way.
    case 'tempoUp':
      return [{ kind: 'lower', at }]
    case 'tempoDown':
      return [{ kind: 'raise', at }]
    case 'trial':
      return [{ kind: 'undo', at }]
    // Playing on ends a pause by itself, in replay as it did live.
    case 'pause':
    case 'problem':
    case 'smallerGroup':
    case 'exercise':
    case 'remedy':
      return []
  }
}

const replayedRemedy = (
  { problem, outcome }: RemedyEnded,
  before: readonly JournalEvent[],
  at: Ms,
): readonly ReplayedEvent[] => {
  const named = before.findLast((e) => e.kind === 'problemNamed' && e.id === problem)
  const begun = before.findLast((e) => e.kind === 'remedyBegun' && e.problem === problem)
  if (named?.kind !== 'problemNamed' || begun?.kind !== 'remedyBegun') return []
  const { flaw, onset, written, played, times } = named
  return [
    {
      kind: 'remedied',
      remedy: begun.remedy,
      problem: {
        flaw,
        place: onset,
        ...(written === undefined ? {} : { written }),
        ...(played === undefined ? {} : { played }),
        times,
      },
      solved: outcome === 'solved',
      at,
    },
  ]
}

const replayedFlaw = ({ kind, onset, written, played }: RecordedFlaw): ReplayedFlaw => ({
  kind,
  onset,
  ...(written === undefined ? {} : { written }),
  ...(played === undefined ? {} : { played }),
})
