import type { RecordedPlace } from '@/journal/journal'
import type { Tried, TriedProblem } from '@/review/problems'
import { notebookText } from '@/text/notebook'
import { describeProblem, remedyWords } from './Decisions'
import { whereWords as placeWords } from './planWords'

/** 'bars 3–4, right hand' */
export const whereWords = (place: RecordedPlace | undefined): string =>
  place ? placeWords(place) : notebookText.wholePiece

/** 'Bars 3–4, right hand. Another key at D4 …' */
export const describeTriedAt = (each: TriedProblem): string =>
  each.place
    ? notebookText.tried.at(whereWords(each.place), describeTried(each))
    : describeTried(each)

/** 'Another key at D4, onset 2, twice: a loop around it, solved; it did not come again' */
const describeTried = ({ problem, tried }: TriedProblem): string =>
  notebookText.tried.remedies(describeProblem(problem), tried.map(describeRemedy))

const describeRemedy = ({ remedy, outcome, helped }: Tried): string => {
  const words = notebookText.tried
  return [
    remedyWords[remedy],
    ...(outcome === undefined ? [] : [outcome === 'solved' ? words.solved : words.leftOff]),
    ...(helped === undefined ? [] : [helped ? words.stayedAway : words.cameAgain]),
  ].join('')
}
