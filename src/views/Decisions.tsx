import type { JournalEvent, ProblemNamed } from '@/journal/journal'
import type { RecordedOverrule, RecordedRemedy } from '@/journal/words'
import { formatKey } from '@/music/pitch'
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
          <h2 id="problems">Problems, and what was done about them</h2>
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
          <h2 id="overruled">What you decided otherwise</h2>
          <ul className="flaws">
            {overruled.map(([what, times]) => (
              <li key={what}>
                <a href={routes.repetitions({ session: true, overruled: what })}>
                  {overruleWords[what]}
                </a>
                {times > 1 && `, ${times} times`}
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

export const describeProblem = ({ flaw, onset, written, times }: ProblemNamed): string => {
  const at = written === undefined ? '' : ` at ${formatKey(written)}`
  return `${flawWords[flaw]}${at}, onset ${onset + 1}, ${times === 2 ? 'twice' : `${times} times`}`
}

/** 'group of three, solved; it did not come again' */
const answers = ({ id }: ProblemNamed, events: readonly JournalEvent[]): string => {
  const words = events.flatMap((event) => {
    if (!('problem' in event) || event.problem !== id) return []
    switch (event.kind) {
      case 'remedyBegun':
        return [remedyWords[event.remedy]]
      case 'remedyEnded':
        return [event.outcome === 'solved' ? 'solved' : 'left off']
      case 'problemOutcome':
        return [event.helped ? 'it did not come again' : 'it came again']
    }
  })
  return words.length === 0 ? 'played on' : words.join(', ')
}

export const remedyWords: Readonly<Record<RecordedRemedy, string>> = {
  smallGroup: 'a group of three',
  oneHand: 'one hand alone',
  blocked: 'as chords',
  loop: 'a loop around it',
  leapAlone: 'the leap alone',
  tapFirst: 'counted and tapped',
  handsSlowly: 'both hands slowly',
  fingering: 'another fingering',
  nameKeys: 'the keys named aloud',
}

export const overruleWords: Readonly<Record<RecordedOverrule, string>> = {
  raise: 'a faster tempo',
  lower: 'a slower tempo',
  skip: 'left before it was done',
  end: 'ended before it was done',
  pause: 'a pause not taken',
  problem: 'a problem left unsolved',
  smallerGroup: 'a group kept that was too big',
  trial: 'a trial left',
  tempoUp: 'a rise of the tempo taken back',
  tempoDown: 'a fall of the tempo taken back',
  exercise: 'another exercise than the next',
  remedy: 'a remedy left before it was solved',
}
