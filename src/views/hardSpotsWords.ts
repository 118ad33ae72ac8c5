import type { PlayedFigures } from '@/app/fromPlaying'
import type { ToldSpots } from '@/app/hardSpots'
import type { ListedSpot } from '@/app/spotList'
import type { Difficulty } from '@/difficulty/difficulty'
import type { Score } from '@/music/music'
import { describePlace, handWords } from './words'
import { plural } from '@/text/plural'

/** 'bar 7, beat 1 to bar 8, beat 2, right hand'; within one bar 'bar 7, beat 1 to beat 4, right hand'. */
export const describeSpot = (score: Score, spot: ListedSpot): string => {
  const [from, to] = [describePlace(score, spot.from), describePlace(score, spot.to - 1)]
  const [bar = ''] = from.split(', ')
  const end = to.startsWith(`${bar}, `) ? to.slice(bar.length + 2) : to
  return `${from}${from === to ? '' : ` to ${end}`}, ${handWords[spot.place.hand]}`
}

/** At least, since two flaws of one beat may be of one repetition or of two. */
export const describePlayed = ({ flawed, of }: PlayedFigures): string =>
  `From your playing: flawed here in at least ${flawed} of ${of} repetitions`

export const describeCarriedSpots = ({ carried, dropped, problem }: ToldSpots): string => {
  const lost =
    dropped > 0
      ? `; ${dropped} ${dropped === 1 ? 'is' : 'are'} dropped, since most of the notes are not in this edition`
      : ''
  const sentence = `Of your words on ${plural(carried + dropped, 'hard spot')} ${carried} ${carried === 1 ? 'holds' : 'hold'} here${lost}.`
  return problem === undefined ? sentence : `${sentence} ${problem}`
}

export const toldOf = (score: Score, spot: ListedSpot, word: 'accepted' | 'rejected'): string =>
  word === 'accepted'
    ? `${capital(describeSpot(score, spot))}: a passage`
    : `${capital(describeSpot(score, spot))}: rejected, folded away under the list`

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

/** 'As a whole about 3.1, somewhere between 1.9 and 4.3 (…)'; nothing of a piece without notes. */
export const describeWhole = ({
  difficulty,
  uncertainty,
}: Pick<Difficulty, 'difficulty' | 'uncertainty'>): string => {
  if (difficulty === 0) return ''
  const low = Math.max(0, difficulty - uncertainty)
  const [about, from, to] = [difficulty, low, difficulty + uncertainty].map((n) => n.toFixed(1))
  return `As a whole about ${about}, somewhere between ${from} and ${to} (by its hard places at this tempo, its number of notes, its compass and its sharps or flats): rough, to compare pieces with each other, and not a grade.`
}
