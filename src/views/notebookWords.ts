import type { RecordedPlace } from '@/journal/journal'
import type { NotebookSubject, PieceDecision } from '@/journal/words'
import type { Tried, TriedProblem } from '@/review/problems'
import { describeProblem, remedyWords } from './Decisions'
import { handWords } from './words'

/** The words of the notebook. */
export const subjectWords: Readonly<Record<NotebookSubject, string>> = {
  idea: 'Idea',
  fingering: 'Fingering',
  teacher: 'From the teacher',
  edition: 'Edition',
  recording: 'Recording',
  tried: 'Tried',
}

export const helpedWords = { true: 'it helped', false: 'it did not help' } as const

/** 'bars 3–4, right hand' */
export const whereWords = (place: RecordedPlace | undefined): string => {
  if (!place) return 'the whole piece'
  const { fromBar, toBar, hand } = place
  const bars = fromBar === toBar ? `bar ${fromBar}` : `bars ${fromBar}–${toBar}`
  return `${bars}, ${handWords[hand]}`
}

/** 'Another key at D4, onset 2, twice: a loop around it, solved; it did not come again' */
export const describeTried = ({ problem, tried }: TriedProblem): string =>
  `${describeProblem(problem)}: ${tried.map(describeRemedy).join(', then ')}`

const describeRemedy = ({ remedy, outcome, helped }: Tried): string =>
  [
    remedyWords[remedy],
    ...(outcome === undefined ? [] : [outcome === 'solved' ? ', solved' : ', left off']),
    ...(helped === undefined ? [] : [helped ? '; it did not come again' : '; it came again']),
  ].join('')

/** What a decision means from now on. */
export const decisionWords: Readonly<Record<PieceDecision, string>> = {
  finished: 'Finished: a passage now and then, cold, so that it stays in the hands.',
  laidAside: 'Laid aside: nothing of it is planned until you take it up again.',
  takenUp: 'At work.',
}
