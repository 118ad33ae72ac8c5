import type { ExerciseKind } from './steps'

/** What an exercise asks before the next one. Tempos are shares of the goal tempo. */
export interface Demand {
  /** Where it may begin, unless a trial finds better. */
  readonly begin: number
  /** At this tempo the streak goal is to be met. */
  readonly reach: number
  /** Clean repetitions in a row at each rung. */
  readonly streakGoal: number
}

/**
 * The tempo grows with the groups (common practice, no source). Each transition is met again in the
 * next larger exercise, so that a small group need not climb the whole ladder: at eight of ten
 * clean, a streak of 5 at each of the fifteen rungs from half tempo up takes 150 tries, and there
 * may be a hundred groups. One streak at the 50 to 60 % that a ladder begins with is enough for groups
 * of three to five, and three in a row, since the whole asks for five: three of three prove little,
 * but they are not the last word. What is larger begins where its parts arrived, or a little above.
 */
export const demands: Readonly<Record<ExerciseKind | 'variant' | 'wholeOfOneHand', Demand>> = {
  group: { begin: 0.55, reach: 0.55, streakGoal: 3 },
  bridge: { begin: 0.55, reach: 0.55, streakGoal: 3 },
  pair: { begin: 0.6, reach: 0.6, streakGoal: 3 },
  section: { begin: 0.65, reach: 0.7, streakGoal: 3 },
  /** Its quick notes are up to twice as quick as written. */
  variant: { begin: 0.6, reach: 0.6, streakGoal: 3 },
  /** A stepping stone: the hands come together as soon as each can (Duke, Simmons & Cash 2009). */
  wholeOfOneHand: { begin: 0.7, reach: 0.8, streakGoal: 3 },
  whole: { begin: 0.7, reach: 1, streakGoal: 5 },
}
