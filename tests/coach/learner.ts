/**
 * A simulated learner of one passage.
 *
 * Assumptions, none of them measured; they are chosen so that a new passage takes the order of an
 * hour, and the bench shows what follows when they are changed:
 * - A transition leads from one onset to the next. Each has its own skill: the tempo at which it goes,
 *   as the logarithm of its share of the goal tempo. At first it is about half the goal, for some more,
 *   and a leap lags behind the rest.
 * - A transition is clean with a probability that falls with the tempo above that skill, with the size
 *   of the group, and with the error learned there (a logistic curve). Transitions are independent.
 * - A clean transition raises its skill toward a little above the tempo at which it was played, by a
 *   share of what is lacking: who plays slowly for ever does not become fast.
 * - A flawed one adds to the error learned there; a clean one lets some of it fade. A learned error
 *   comes again as the same slip, a slip by chance as any.
 * - No fatigue, no forgetting, no night between. Nothing is learned from listening and looking.
 */
import { leastLeap } from '@/coach/handLine'
import { createRandom } from '@/devices/random'
import type { Slip } from '@/devices/simulatedTake'

export interface Nature {
  /** What a clean transition adds to its skill, of what is lacking. */
  readonly growth: number
  /** What a flawed one adds to the learned error, in units of the logistic curve. */
  readonly errorLearning: number
  /** The skill at first, on the average: the logarithm of the share of the goal tempo. */
  readonly firstSkill: number
  /** How much less it is at a leap. */
  readonly leapLack: number
}

export const usualNature: Nature = {
  growth: 0.06,
  errorLearning: 0.15,
  firstSkill: -0.7,
  leapLack: 0.2,
}

/** How much transitions and learners differ: the standard deviation of the skill at first, for each. */
const skillSd = 0.2
const learnerSd = 0.1
/** At its skill a transition in a group of three is clean 98 times in 100 (logit 3.9). */
const logitAtSkill = 3.9
/** So much more of the logarithm of the tempo takes one unit of the logistic curve: 12 per cent. */
const tempoUnit = 0.12
/** What a group 2.7 times as large takes, in units of the logistic curve. */
const sizeUnit = 0.7
/** Skill grows to so much above the tempo that is played, and by no more than so much is counted as lacking. */
const margin = 0.25
const mostLacking = 0.3
/** Learned error never exceeds this; a clean transition lets so much of it fade. */
const mostError = 3
const fading = 0.08

const kinds = ['wrong', 'missing', 'extra', 'hesitation'] as const

interface Transition {
  skill: number
  error: number
  /** How this transition goes wrong when it has been learned so. */
  readonly habit: Slip['kind']
}

export interface Learner {
  /**
   * Plays onsets `first` to `last` at a share of the goal tempo, and learns from it. The slips, by the
   * onset of the stretch at which they come.
   */
  readonly play: (first: number, last: number, tempoShare: number) => readonly Slip[]
}

/** `keys`: of the passage, one an onset. */
export const createLearner = (seed: number, keys: readonly number[], nature: Nature): Learner => {
  const random = createRandom(seed)
  const level = nature.firstSkill + learnerSd * random.normal()
  const isLeap = (i: number): boolean =>
    Math.abs((keys[i] ?? 0) - (keys[i - 1] ?? keys[i] ?? 0)) >= leastLeap
  const transitions = keys.map((_, i): Transition => ({
    skill: level + skillSd * random.normal() - (isLeap(i) ? nature.leapLack : 0),
    error: 0,
    habit: random.pick(kinds),
  }))
  return {
    play: (first, last, tempoShare) => {
      const tempo = Math.log(tempoShare)
      const size = sizeUnit * Math.log((last - first + 1) / 3)
      return transitions.slice(first + 1, last + 1).flatMap((transition, i): Slip[] => {
        const { skill, error, habit } = transition
        const logit = logitAtSkill + (skill - tempo) / tempoUnit - size - error
        if (random.uniform() < 1 / (1 + Math.exp(-logit))) {
          const lacking = Math.min(mostLacking, Math.max(0, tempo + margin - skill))
          transition.skill += nature.growth * lacking
          transition.error *= 1 - fading
          return []
        }
        transition.error = Math.min(mostError, error + nature.errorLearning)
        const isHabit = random.uniform() < error / (error + 1)
        return [{ kind: isHabit ? habit : random.pick(kinds), onset: i + 1 }]
      })
    },
  }
}
