/**
 * A simulated pianist who learns a piece over weeks.
 *
 * Assumptions, none of them measured; chosen so that eight to sixteen bars take weeks, and varied from
 * one pianist to the next:
 * - A transition leads from one onset of a hand, or of both together, to the next. Each has a skill: the
 *   logarithm of the share of the goal tempo at which it goes; less at a leap, still less for both.
 * - It is clean with a probability that falls with the tempo above that skill and, slowly, with the size
 *   of the group (a logistic curve). Transitions are independent.
 * - A clean transition raises its skill toward a little above the tempo played, by a share of what lacks.
 * - Overnight and over days off some skill is lost, as the logarithm of the days, less for what has been
 *   met on more days; it never falls below what it was at first.
 * - No fatigue, no learned errors, nothing learned from listening.
 */
import { createRandom } from '@/devices/random'
import type { Exercise } from '@/exercises/buildUp'
import type { HandChoice, Score } from '@/music/music'

export interface Nature {
  /** What a clean transition adds, of what lacks. */
  readonly growth: number
  /** The logarithm of the share of the goal tempo at which it goes at first. */
  readonly firstSkill: number
  readonly leapLack: number
  readonly bothLack: number
  /** What a first night takes. */
  readonly loss: number
  readonly pauseSeconds: number
}

const usual: Nature = {
  growth: 0.05,
  firstSkill: -0.8,
  leapLack: 0.15,
  bothLack: 0.15,
  loss: 0.08,
  pauseSeconds: 2.5,
}

/** Pianists differ: one in three by more than a factor of 1.6 in growth and loss, of 1.2 in the tempo at first. */
export const natureOf = (seed: number): Nature => {
  const random = createRandom(seed * 7919 + 13)
  return {
    growth: usual.growth * Math.exp(0.5 * random.normal()),
    firstSkill: usual.firstSkill + 0.18 * random.normal(),
    leapLack: usual.leapLack * Math.exp(0.3 * random.normal()),
    bothLack: usual.bothLack * Math.exp(0.3 * random.normal()),
    loss: usual.loss * Math.exp(0.5 * random.normal()),
    pauseSeconds: usual.pauseSeconds * Math.exp(0.3 * random.normal()),
  }
}

/** Leaps of a fifth and more are missed more often. */
const leastLeap = 7
const skillSd = 0.15
/** At its skill a transition is clean 99 times in 100. */
const logitAtSkill = 4.6
/** So much more of the logarithm of the tempo takes one unit of the logistic curve: ten per cent. */
const tempoUnit = 0.1
const sizeUnit = 0.3
const margin = 0.3

interface Transition {
  skill: number
  readonly first: number
  days: number
  last: number
}

export interface Pianist {
  readonly pauseSeconds: number
  /** One repetition on a day at a share of the goal tempo; whether it was clean. */
  readonly play: (
    exercise: Pick<Exercise, 'from' | 'to' | 'hand'>,
    share: number,
    day: number,
  ) => boolean
}

export const createPianist = (seed: number, score: Score, nature: Nature): Pianist => {
  const random = createRandom(seed)
  const lanes = {
    right: laneOf(score, 'right'),
    left: laneOf(score, 'left'),
    both: laneOf(score, 'both'),
  }
  const learn = (lane: Lane, lack: number): Transition[] =>
    lane.map(({ leap }) => {
      const skill =
        nature.firstSkill + skillSd * random.normal() - lack - (leap ? nature.leapLack : 0)
      return { skill, first: skill, days: 0, last: 0 }
    })
  const transitions = {
    right: learn(lanes.right, 0),
    left: learn(lanes.left, 0),
    both: learn(lanes.both, nature.bothLack),
  }
  const cross = (t: Transition, tempo: number, size: number, day: number): boolean => {
    if (day > t.last) {
      if (t.days > 0)
        t.skill = Math.max(t.first, t.skill - (nature.loss * Math.log1p(day - t.last)) / t.days)
      t.days++
      t.last = day
    }
    const logit = logitAtSkill + (t.skill - tempo) / tempoUnit - size
    const clean = random.uniform() < 1 / (1 + Math.exp(-logit))
    if (clean) t.skill += nature.growth * Math.min(0.3, Math.max(0, tempo + margin - t.skill))
    return clean
  }
  return {
    pauseSeconds: nature.pauseSeconds,
    play: ({ from, to, hand }, share, day) => {
      const used = hand === 'both' ? (['right', 'left', 'both'] as const) : ([hand] as const)
      let clean = true
      for (const each of used) {
        const lane = lanes[each]
        const inside = lane.flatMap(({ start }, i) => (start > from && start <= to ? [i] : []))
        const size = sizeUnit * Math.log(Math.max(1, inside.length / 2))
        for (const i of inside) {
          const t = transitions[each][i]
          if (t && !cross(t, Math.log(share), size, day)) clean = false
        }
      }
      return clean
    },
  }
}

type Lane = readonly { readonly start: number; readonly leap: boolean }[]

const laneOf = ({ notes }: Score, hand: HandChoice): Lane => {
  const onsets = new Map<number, number>()
  for (const note of notes)
    if (hand === 'both' || note.hand === hand)
      onsets.set(note.start, Math.max(note.key, onsets.get(note.start) ?? 0))
  const keys = [...onsets]
  return keys.map(([start, key], i) => ({
    start,
    leap: hand !== 'both' && Math.abs(key - (keys[i - 1]?.[1] ?? key)) >= leastLeap,
  }))
}
