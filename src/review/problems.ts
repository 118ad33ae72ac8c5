import { groupBy } from '@/journal/groupBy'
import type { JournalEvent, ProblemNamed, RecordedPlace } from '@/journal/journal'
import type { RecordedRemedy, RemedyOutcome } from '@/journal/words'

/** A problem at which a drill stopped, what was tried against it, and whether that helped. */
export interface TriedProblem {
  readonly problem: ProblemNamed
  /** Of its drill, where the events tell. */
  readonly place?: RecordedPlace
  readonly tried: readonly Tried[]
}

export interface Tried {
  readonly remedy: RecordedRemedy
  readonly outcome?: RemedyOutcome
  /** Whether the flaw stayed away afterwards, back in the drill, where that is known. */
  readonly helped?: boolean
}

/** What was tried last stopped it, as far as anybody knows. */
export const isSolved = ({ tried }: TriedProblem): boolean => {
  const last = tried.at(-1)
  return last?.helped ?? last?.outcome === 'solved'
}

/** From events in the order of time; problems against which nothing was tried are left out. */
export const triedProblems = (events: readonly JournalEvent[]): readonly TriedProblem[] => {
  const places = new Map(
    events.flatMap((e) => (e.kind === 'drillBegun' ? [[e.drill, e.place] as const] : [])),
  )
  const answers = groupBy(
    events.filter((event) => 'problem' in event),
    ({ problem }) => problem,
  )
  return events.flatMap((event) => {
    if (event.kind !== 'problemNamed') return []
    const tried = (answers.get(event.id) ?? []).reduce(enter, [])
    const place = places.get(event.drill)
    return tried.length === 0 ? [] : [{ problem: event, tried, ...(place ? { place } : {}) }]
  })
}

type Answer = Extract<JournalEvent, { readonly problem: unknown }>

/** What ends a remedy, and what comes of it, is said of the one that was begun last. */
const enter = (tried: readonly Tried[], event: Answer): readonly Tried[] => {
  const last = tried.at(-1)
  const before = tried.slice(0, -1)
  switch (event.kind) {
    case 'remedyBegun':
      return [...tried, { remedy: event.remedy }]
    case 'remedyEnded':
      return last ? [...before, { ...last, outcome: event.outcome }] : tried
    case 'problemOutcome':
      return last ? [...before, { ...last, helped: event.helped }] : tried
  }
}
