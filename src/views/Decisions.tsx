import type { JournalEvent, ProblemNamed } from '@/journal/journal'
import type { RecordedOverrule, RecordedRemedy } from '@/journal/words'
import { nameKey } from '@/music/spelling'
import { decisionsText } from '@/text/decisions'
import { useReviewedRoutes } from './reviewed'
import { flawWords } from './words'

/** What stopped the drill and whether what was done about it helped; and what the person decided otherwise than the coach. */
export const Decisions = ({ events }: { readonly events: readonly JournalEvent[] }) => {
  const routes = useReviewedRoutes()
  const problems = events.filter((event) => event.kind === 'problemNamed')
  const overruled = countOverruled(events)
  return (
    <>
      {problems.length > 0 && (
        <section aria-labelledby="problems">
          <h2 id="problems">{decisionsText.problems}</h2>
          <ul className="flaws">
            {problems.map((problem) => (
              <li key={problem.id}>
                {describeProblem(problem)}: {answers(problem, events)}
              </li>
            ))}
          </ul>
        </section>
      )}
      {overruled.length > 0 && (
        <section aria-labelledby="overruled">
          <h2 id="overruled">{decisionsText.overruled}</h2>
          <ul className="flaws">
            {overruled.map(([what, times]) => (
              <li key={what}>
                <a href={routes.repetitions({ session: true, overruled: what })}>
                  {overruleWords[what]}
                </a>
                {times > 1 && decisionsText.times(times)}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  )
}

const countOverruled = (
  events: readonly JournalEvent[],
): readonly (readonly [RecordedOverrule, number])[] => {
  const counts = new Map<RecordedOverrule, number>()
  // That a sitting ends is no news.
  for (const event of events)
    if (event.kind === 'overruled' && event.what !== 'end')
      counts.set(event.what, (counts.get(event.what) ?? 0) + 1)
  return [...counts].toSorted((a, b) => b[1] - a[1])
}

export const describeProblem = ({ flaw, onset, written, times }: ProblemNamed): string =>
  decisionsText.problem(
    flawWords[flaw],
    written === undefined ? undefined : nameKey(written),
    onset + 1,
    times,
  )

/** 'group of three, solved; it did not come again' */
const answers = ({ id }: ProblemNamed, events: readonly JournalEvent[]): string => {
  const { outcomes } = decisionsText
  const words = events.flatMap((event) => {
    if (!('problem' in event) || event.problem !== id) return []
    switch (event.kind) {
      case 'remedyBegun':
        return [remedyWords[event.remedy]]
      case 'remedyEnded':
        return [event.outcome === 'solved' ? outcomes.solved : outcomes.left]
      case 'problemOutcome':
        return [event.helped ? outcomes.helped : outcomes.cameAgain]
    }
  })
  return words.length === 0 ? outcomes.none : words.join(', ')
}

export const remedyWords: Readonly<Record<RecordedRemedy, string>> = decisionsText.remedies
export const overruleWords: Readonly<Record<RecordedOverrule, string>> = decisionsText.overrules
