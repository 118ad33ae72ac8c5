import { ms, type ChunkId, type Key, type Ms } from '@/music/units'
import type { DrillId } from './ids'
import type { DrillBegun, JournalEvent, RecordedFlaw } from './journal'
import { compareEvents } from './merge'
import type { RecordedFlawKind, RecordedOverrule, RecordedVerdict } from './words'

/** What the coach heard in a drill; the same shapes as its own events. */
export type ReplayedEvent =
  | {
      readonly kind: 'repetition'
      readonly verdict: RecordedVerdict
      readonly flaws: readonly ReplayedFlaw[]
      readonly start: Ms
      readonly at: Ms
    }
  | { readonly kind: 'raise' | 'lower' | 'skip' | 'end'; readonly at: Ms }

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
): readonly ReplayedEvent[] =>
  events
    .filter((event) => 'drill' in event && event.drill === drill)
    .toSorted(compareEvents)
    .flatMap((event) => replayed(event, clockStart))

const replayed = (event: JournalEvent, clockStart: number): readonly ReplayedEvent[] => {
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
    case 'remedyEnded':
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
    // Playing on ends a pause by itself, in replay as it did live.
    case 'pause':
    case 'problem':
    case 'smallerGroup':
    case 'trial':
    case 'tempoUp':
    case 'tempoDown':
    case 'exercise':
    case 'remedy':
      return []
  }
}

const replayedFlaw = ({ kind, onset, written, played }: RecordedFlaw): ReplayedFlaw => ({
  kind,
  onset,
  ...(written === undefined ? {} : { written }),
  ...(played === undefined ? {} : { played }),
})
