/**
 * Guards streak and tempo: what a teacher on the next chair would count and say.
 *
 * streak: clean repetitions in a row; anything but clean sets it to zero. rung: one tempo of the
 * ladder; it goes up only after a streak. secure: the streak goal met at the goal tempo. A step
 * never acts: it returns commands, which the app carries out and writes into the journal.
 * trial: a short search for the start tempo (trial.ts). problem: the same flaw at the same place twice
 * (problems.ts), its likely kind (diagnose.ts), exercises against it (remedies.ts). The state is in
 * standing.ts, what guards it in guard.ts, what the person overrules in overrule.ts, the numbers in
 * limits.ts, the sentences in reasons.ts.
 *
 * Example: streak goal 5, rung 72. Five clean -> commands streakMet, tempo 76. Two flawed -> pause.
 * A third flawed of the last five -> tempo 69, "Three of the last five were flawed: down from 72 to 69."
 */
import type { Flaw } from '@/judge/flaw'
import type { Repetition } from '@/judge/repetition'
import { ms, type Ms } from '@/music/units'
import { beginEndurance, practiseUntil, type Endurance } from './endurance'
import { answerSlip, askForRest, offerElsewhere } from './guard'
import { buildLadder, startRung } from './ladder'
import { limits } from './limits'
import type { Command, CoachEvent } from './messages'
import { endPauseByPlaying, goOn, overruleTempo, undo } from './overrule'
import { noteFlaws, type CoachFlaw } from './problems'
import { watchRemedies } from './remedied'
import {
  atRung,
  decideTempo,
  endTrial,
  follow,
  neighbour,
  withoutPause,
  type Coach,
  type CoachSettings,
  type CoachStep,
} from './standing'
import { beginTrial, stepTrial, trialRung, type Trial } from './trial'

export type { Command, CoachEvent } from './messages'
export type { Coach, CoachSettings, CoachStep } from './standing'

/** `endurance` of the drill before, so that a rest is asked for across drills. */
export const beginCoach = (settings: CoachSettings, endurance?: Endurance): Coach => {
  const rungs = buildLadder(settings.ladder, settings.goalTempo, settings.startTempo)
  const start = startRung(rungs, settings.startTempo)
  const trial = settings.trial ? beginTrial(rungs, start) : undefined
  return {
    rungs,
    rung: trial ? trialRung(trial) : start,
    streak: 0,
    streakGoal: boundStreakGoal(settings.streakGoal ?? limits.streakGoal.usual),
    recent: [],
    paused: undefined,
    secure: false,
    trial,
    window: [],
    share: { clean: 0, of: 0, told: 0 },
    repetitions: 0,
    sightings: [],
    watches: [],
    decisions: [],
    place: { time: ms(0), repetitions: 0 },
    ...(endurance ? { endurance } : {}),
  }
}

export const stepCoach = (coach: Coach, event: CoachEvent): CoachStep => {
  const timed = passTime(coach, event)
  switch (event.kind) {
    case 'repetition':
      return follow(endPauseByPlaying(timed, event.start), [
        (c) => (c.trial ? tryOnce(c, c.trial, event) : takeVerdict(c, event)),
        (c) => offerElsewhere(c),
        (c) => askForRest(c),
      ])
    case 'raise':
    case 'lower':
      return overruleTempo(timed, event.kind, event.at)
    case 'skip':
    case 'end':
      return [timed, timed.secure ? [] : [{ kind: 'overruled', what: event.kind, at: event.at }]]
    case 'goOn':
      return goOn(timed, event.at)
    case 'undo':
      return undo(timed, event.at)
    case 'remedied':
      return comeBack(timed, event)
  }
}

/** What the coach needs of a judged repetition; `at` is when its verdict came. Forgiven flaws are left out. */
export const coachRepetition = (repetition: Repetition, at: Ms): CoachEvent => ({
  kind: 'repetition',
  verdict: repetition.verdict,
  flaws: repetition.flaws.filter((flaw) => !flaw.forgiven).map(coachFlaw),
  start: repetition.start,
  at,
})

const coachFlaw = ({ kind, onset, expected, played }: Flaw): CoachFlaw => ({
  kind,
  onset,
  ...(expected ? { written: expected.key } : {}),
  ...(played ? { played: played.key } : {}),
})

const boundStreakGoal = (goal: number): number =>
  Math.min(limits.streakGoal.most, Math.max(limits.streakGoal.least, Math.round(goal)))

/** Time at this place counts from the first repetition on. */
const passTime = (coach: Coach, event: CoachEvent): Coach => {
  const begin = event.kind === 'repetition' ? event.start : event.at
  const before = coach.endurance ?? beginEndurance(begin)
  const endurance = practiseUntil(before, event.at)
  const first = coach.repetitions === 0
  const passed = Math.max(0, first ? event.at - begin : endurance.practised - before.practised)
  return { ...coach, endurance, place: { ...coach.place, time: ms(coach.place.time + passed) } }
}

type Played = Extract<CoachEvent, { kind: 'repetition' }>

const countRepetition = (coach: Coach, { verdict }: Played): Coach => ({
  ...coach,
  repetitions: coach.repetitions + 1,
  recent: [...coach.recent, verdict].slice(-limits.recent),
  place: { ...coach.place, repetitions: coach.place.repetitions + 1 },
})

/** A repetition of the trial: it counts toward no streak, and no problem is named yet. */
const tryOnce = (before: Coach, trial: Trial, event: Played): CoachStep => {
  const coach = countRepetition(before, event)
  const step = stepTrial(trial, event.verdict)
  switch (step.kind) {
    case 'goesOn': {
      const rung = trialRung(step.trial)
      const tempo: readonly Command[] = step.reason
        ? [{ kind: 'tempo', tempo: rung, reason: step.reason }]
        : []
      return [{ ...coach, rung, trial: step.trial }, tempo]
    }
    case 'found':
      return endTrial(coach, step.tempo, step.reason)
    case 'tooBig': {
      const { reason } = step
      const { repetitions } = coach
      return [
        { ...coach, trial: undefined, paused: { reason, since: event.at } },
        [
          { kind: 'trialEnded', repetitions, reason },
          { kind: 'smallerGroup', reason },
        ],
      ]
    }
  }
}

const takeVerdict = (before: Coach, event: Played): CoachStep => {
  const counted = countRepetition(before, event)
  const [sightings, problem] = noteFlaws(before.sightings, event.flaws, counted.repetitions)
  const clean = event.verdict === 'clean'
  const [watches, told] = watchRemedies(before.watches, event.flaws, event.verdict !== 'brokenOff')
  const coach: Coach = {
    ...counted,
    sightings,
    watches,
    streak: clean ? Math.min(before.streak + 1, before.streakGoal) : 0,
    window: [...before.window, event.verdict].slice(-limits.lowShare.of),
    share: {
      ...before.share,
      clean: before.share.clean + (clean ? 1 : 0),
      of: before.share.of + (event.verdict === 'brokenOff' ? 0 : 1),
    },
  }
  return follow(
    [coach, told],
    [
      (c) => {
        if (!clean) return answerSlip(c, event.at, problem)
        return before.streak < c.streakGoal && c.streak === c.streakGoal ? meetStreak(c) : [c, []]
      },
    ],
  )
}

const meetStreak = (coach: Coach): CoachStep => {
  const from = coach.rung
  const met: Command = { kind: 'streakMet', rung: from }
  const to = neighbour(coach, 1)
  if (to !== undefined)
    return decideTempo(coach, { kind: 'streak', streak: coach.streak, from, to }, [met])
  return coach.secure
    ? [coach, [met]]
    : [{ ...coach, secure: true }, [met, { kind: 'secure', rung: from }]]
}

/**
 * Back from a remedy. Solved, the drill goes on one rung lower, where the new movement has room, and
 * it is watched whether the flaw comes again; left unsolved, the drill still stands at its problem.
 */
const comeBack = (
  coach: Coach,
  { remedy, problem, solved, at }: Extract<CoachEvent, { kind: 'remedied' }>,
): CoachStep => {
  if (!solved) return [coach, [{ kind: 'overruled', what: 'remedy', at }]]
  const watches = [...coach.watches, { remedy, problem, without: 0 }]
  const ready = { ...withoutPause(coach), watches }
  const to = neighbour(coach, -1)
  return to === undefined
    ? [atRung(ready, coach.rung), []]
    : decideTempo(ready, { kind: 'remedied', from: coach.rung, to })
}
