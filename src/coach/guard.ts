import { expectedTries } from '@/exercises/expectedTries'
import type { Verdict } from '@/judge/repetition'
import { ms, type Ms } from '@/music/units'
import { minutes, restDue, type Endurance } from './endurance'
import { limits } from './limits'
import type { Evidence, Problem, Reason } from './reasons'
import { decideTempo, follow, neighbour, type Coach, type CoachStep } from './standing'

/** After a slip: too hard comes before a pause; a problem is named in any case. */
export const answerSlip = (coach: Coach, at: Ms, problem: Problem | undefined): CoachStep =>
  follow(easeOff(coach, at), [
    (c) => (problem ? nameProblem(c, at, problem) : [c, []]),
    (c) => (c === coach ? askForPause(c, at) : [c, []]),
    (c) => (c === coach ? tellArithmetic(c) : [c, []]),
  ])

const easeOff = (coach: Coach, at: Ms): CoachStep => {
  const evidence = tooHard(coach.window)
  if (!evidence) return [coach, []]
  const from = coach.rung
  const to = neighbour(coach, -1)
  if (to !== undefined) return decideTempo(coach, { kind: 'tooFast', evidence, from, to })
  const reason: Reason = { kind: 'tooBig', evidence, at: from }
  return [
    { ...coach, window: [], paused: { reason, since: at } },
    [{ kind: 'smallerGroup', reason }],
  ]
}

const tooHard = (window: readonly Verdict[]): Evidence | undefined => {
  const last = window.slice(-limits.flawedOfLast.of)
  const flawed = last.filter((v) => v === 'flawed').length
  if (flawed >= limits.flawedOfLast.flawed) return { kind: 'flawedOfLast', flawed, of: last.length }
  const decided = window.filter((v) => v !== 'brokenOff')
  const clean = decided.filter((v) => v === 'clean').length
  const full = window.length === limits.lowShare.of && decided.length > 0
  return full && clean / decided.length < limits.lowShare.under
    ? { kind: 'lowShare', clean, of: decided.length }
    : undefined
}

const nameProblem = (coach: Coach, at: Ms, problem: Problem): CoachStep => {
  const reason: Reason = { kind: 'sameFlaw', problem }
  return [{ ...coach, paused: { reason, since: at } }, [{ kind: 'problem', reason, ...problem }]]
}

const askForPause = (coach: Coach, at: Ms): CoachStep => {
  const last = coach.window.slice(-limits.pauseAfterFlawed)
  const asks = last.length === limits.pauseAfterFlawed && last.every((v) => v === 'flawed')
  if (!asks) return [coach, []]
  const reason: Reason = { kind: 'flawedInARow', flawed: last.length }
  return [{ ...coach, paused: { reason, since: at } }, [{ kind: 'pause', reason }]]
}

/** After ten repetitions at a rung without a streak, and after ten more: how many tries one would take. */
const tellArithmetic = (coach: Coach): CoachStep => {
  const { clean, of, told } = coach.share
  const { streakGoal } = coach
  const due = of - told >= limits.advice.every && clean > 0
  if (!due || !isSmallerQuicker(clean / of, streakGoal)) return [coach, []]
  const tries = expectedTries(clean / of, streakGoal)
  return [
    { ...coach, share: { clean, of, told: of } },
    [{ kind: 'advice', reason: { kind: 'longStreak', clean, of, streakGoal, tries } }],
  ]
}

/**
 * Whether three groups of half the size (both halves, and one across the join) and the whole again
 * take less playing than going on. Slips fall on all transitions alike, so that a half is clean with
 * the square root of the share; its tries are half as long. The whole again is at best one streak.
 */
export const isSmallerQuicker = (cleanShare: number, streakGoal: number): boolean => {
  const halves = (3 / 2) * expectedTries(Math.sqrt(cleanShare), streakGoal)
  return halves + streakGoal < expectedTries(cleanShare, streakGoal)
}

export const offerElsewhere = (coach: Coach): CoachStep => {
  const { time, repetitions } = coach.place
  const long = time >= minutes(limits.onePlace.minutes)
  if (!long && repetitions < limits.onePlace.repetitions) return [coach, []]
  const reason: Reason = {
    kind: 'longAtPlace',
    minutes: Math.round(time / minutes(1)),
    repetitions,
  }
  return [{ ...coach, place: { time: ms(0), repetitions: 0 } }, [{ kind: 'elsewhere', reason }]]
}

export const askForRest = (coach: Coach): CoachStep => {
  const due = coach.endurance && restDue(coach.endurance)
  if (!coach.endurance || !due) return [coach, []]
  const endurance: Endurance = { ...coach.endurance, asked: due }
  const spent = Math.floor(endurance.practised / minutes(1))
  const strong = due === 'strongRest'
  const reason: Reason = { kind: 'longAtWork', minutes: spent, strong }
  return [{ ...coach, endurance }, [{ kind: 'rest', strong, reason }]]
}
