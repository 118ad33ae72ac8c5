import type { Ms } from '@/music/units'
import { startRung } from './ladder'
import { limits } from './limits'
import type { Command, Overruled } from './messages'
import type { Reason } from './reasons'
import {
  changeTempo,
  endTrial,
  follow,
  neighbour,
  withoutPause,
  type Coach,
  type CoachStep,
} from './standing'

/** Playing ends a pause; playing on at once overrules it. */
export const endPauseByPlaying = (coach: Coach, start: Ms): CoachStep => {
  if (!coach.paused) return [coach, []]
  const { since, reason } = coach.paused
  const ignored = start < since + limits.pauseMs
  return [withoutPause(coach), ignored ? [overruled(overruledBy(reason), start)] : []]
}

/** A pause may end at any time; going on in spite of a problem or a group too big is recorded. */
export const goOn = (coach: Coach, at: Ms): CoachStep => {
  if (!coach.paused) return [coach, []]
  const what = overruledBy(coach.paused.reason)
  return [withoutPause(coach), what === 'pause' ? [] : [overruled(what, at)]]
}

/** One rung up or down by the person's choice; a trial is over then, and older changes cannot be undone. */
export const overruleTempo = (coach: Coach, what: 'raise' | 'lower', at: Ms): CoachStep =>
  moveByChoice(coach, what === 'raise' ? 1 : -1, [], overruled(what, at))

/**
 * Takes back the coach's last decision that still holds: the pause that it asks for, the trial, or the
 * last change of the tempo, then the one before.
 */
export const undo = (coach: Coach, at: Ms): CoachStep => {
  if (coach.paused) return [withoutPause(coach), [overruled(overruledBy(coach.paused.reason), at)]]
  if (coach.trial) return leaveTrial(coach, at)
  const decision = coach.decisions.at(-1)
  if (decision === undefined) return [coach, []]
  const rest = coach.decisions.slice(0, -1)
  return moveByChoice(coach, decision === 'tempoUp' ? -1 : 1, rest, overruled(decision, at))
}

/** `decisions`: what can still be undone afterwards. */
const moveByChoice = (
  coach: Coach,
  step: 1 | -1,
  decisions: Coach['decisions'],
  word: Command,
): CoachStep => {
  const to = neighbour(coach, step)
  if (to === undefined) return [coach, []]
  const reason = { kind: 'person', from: coach.rung, to } as const
  return changeTempo({ ...withoutPause(coach), trial: undefined, decisions }, reason, [word])
}

/** The drill starts at the highest rung that the trial has proved, or where it would without a trial. */
const leaveTrial = (coach: Coach, at: Ms): CoachStep => {
  const to = coach.rungs[coach.trial?.proved ?? -1] ?? startRung(coach.rungs)
  return follow(
    [coach, [overruled('trial', at)]],
    [(c) => endTrial(c, to, { kind: 'trialLeft', from: c.rung, to })],
  )
}

const overruled = (what: Overruled, at: Ms): Command => ({ kind: 'overruled', what, at })

const overruledBy = (reason: Reason): Overruled => {
  switch (reason.kind) {
    case 'sameFlaw':
      return 'problem'
    case 'tooBig':
    case 'trialTooBig':
      return 'smallerGroup'
    case 'flawedInARow':
    case 'streak':
    case 'tooFast':
    case 'person':
    case 'longAtWork':
    case 'longAtPlace':
    case 'longStreak':
    case 'remedied':
    case 'trialUp':
    case 'trialDown':
    case 'trialEnded':
    case 'trialLeft':
      return 'pause'
  }
}
