import type { Command } from '@/coach/coach'
import type { Diagnosis } from '@/coach/diagnose'
import type { Problem, TempoReason } from '@/coach/reasons'
import { journalVersion, type JournalEvent, type ProblemNamed } from '@/journal/journal'
import type { Stamp } from '@/journal/record'
import type { RecordedTempoReason } from '@/journal/words'
import type { Practising } from './practising'

interface Recording {
  readonly practising: Practising
  readonly streakGoal: number
  readonly stamp: () => Stamp
  /** The events of this session so far. */
  readonly known: readonly JournalEvent[]
}

/** What every event of a drill carries. */
export const entryOf = ({ drill, chunk }: Practising, stamp: Stamp) => ({
  v: journalVersion,
  ...stamp,
  drill,
  piece: chunk.piece,
  chunk: chunk.id,
})

/** What of the coach's commands belongs into the journal; the rest follows from the repetitions. */
export const recordCommand = (
  { practising, streakGoal, stamp, known }: Recording,
  command: Command,
): readonly JournalEvent[] => {
  const entry = () => entryOf(practising, stamp())
  switch (command.kind) {
    case 'tempo': {
      const { from, to } = command.reason
      return [{ ...entry(), kind: 'rungChanged', from, to, reason: recordedReason(command.reason) }]
    }
    case 'trialEnded': {
      const { rung, repetitions } = command
      const found = rung === undefined ? {} : { rung }
      return [{ ...entry(), kind: 'trialEnded', ...found, repetitions }]
    }
    case 'secure': {
      const { rung } = command
      const { form, reach, goalTempo, place, remedy } = practising
      // How a remedy ended is told with its problem.
      if (remedy !== undefined) return []
      const isSecure = form === 'asWritten' && reach === goalTempo
      return [
        ...(isSecure ? [{ ...entry(), kind: 'secure', rung } as const] : []),
        ...(isSecure && !place
          ? []
          : [{ ...entry(), kind: 'exerciseDone', rung, streak: streakGoal } as const]),
      ]
    }
    case 'overruled':
      return [{ ...entry(), kind: 'overruled', what: command.what }]
    case 'problemOutcome': {
      const named = findProblem(known, practising, command.problem)
      return named
        ? [{ ...entry(), kind: 'problemOutcome', problem: named.id, helped: command.helped }]
        : []
    }
    case 'streakMet':
    case 'pause':
    case 'smallerGroup':
    case 'problem':
    case 'rest':
    case 'elsewhere':
    case 'advice':
      return []
  }
}

export const recordProblem = (
  practising: Practising,
  { problem, likely }: Diagnosis,
  stamp: Stamp,
): ProblemNamed => ({
  ...entryOf(practising, stamp),
  kind: 'problemNamed',
  flaw: problem.flaw,
  onset: problem.place,
  ...(problem.written === undefined ? {} : { written: problem.written }),
  ...(problem.played === undefined ? {} : { played: problem.played }),
  times: problem.times,
  likely,
})

/** The last time that this problem was named in the drill. */
export const findProblem = (
  events: readonly JournalEvent[],
  { drill }: Practising,
  { flaw, place, written }: Problem,
): ProblemNamed | undefined => {
  const found = events.findLast(
    (event) =>
      event.kind === 'problemNamed' &&
      event.drill === drill &&
      event.flaw === flaw &&
      event.onset === place &&
      event.written === written,
  )
  return found?.kind === 'problemNamed' ? found : undefined
}

const recordedReason = (reason: TempoReason): RecordedTempoReason => {
  switch (reason.kind) {
    case 'streak':
    case 'tooFast':
    case 'person':
      return reason.kind
    case 'remedied':
      return 'remedy'
    case 'trialUp':
    case 'trialDown':
    case 'trialEnded':
    case 'trialLeft':
      return 'trial'
  }
}
