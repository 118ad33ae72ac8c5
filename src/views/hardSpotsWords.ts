import type { ToldSpots } from '@/app/hardSpots'
import type { ListedSpot } from '@/app/spotList'
import type { Difficulty } from '@/difficulty/difficulty'
import type { Score } from '@/music/music'
import { decimal } from '@/text/numbers'
import { spotsText } from '@/text/spots'
import { barAndBeat, handWords } from './words'

/** 'bar 7, beat 1 to bar 8, beat 2, right hand'; within one bar 'bar 7, beat 1 to beat 4, right hand'. */
export const describeSpot = (score: Score, spot: ListedSpot): string => {
  const [fromBar, from] = barAndBeat(score, spot.from)
  const [toBar, to] = barAndBeat(score, spot.to - 1)
  const hand = handWords[spot.place.hand]
  if (fromBar !== toBar) return spotsText.overBars(fromBar, from, toBar, to, hand)
  return from === to
    ? spotsText.inBeat(fromBar, from, hand)
    : spotsText.inBar(fromBar, from, to, hand)
}

export const describeCarriedSpots = ({ carried, dropped, problem }: ToldSpots): string => {
  const sentence = spotsText.carried(carried, dropped)
  return problem === undefined ? sentence : `${sentence} ${problem}`
}

/** 'As a whole about 3.1, somewhere between 1.9 and 4.3 (…)'; nothing of a piece without notes. */
export const describeWhole = ({
  difficulty,
  uncertainty,
}: Pick<Difficulty, 'difficulty' | 'uncertainty'>): string => {
  if (difficulty === 0) return ''
  const low = Math.max(0, difficulty - uncertainty)
  const [about, from, to] = [difficulty, low, difficulty + uncertainty] as const
  return spotsText.whole(decimal(about, 1), decimal(from, 1), decimal(to, 1))
}
