/**
 * Guards streak and tempo: what a teacher on the next chair would count and say.
 *
 * streak: clean repetitions in a row; anything but clean sets it to zero. rung: one tempo of the
 * ladder; it goes up only after a streak. secure: the streak goal met at the goal tempo. A step
 * never acts: it returns commands, which the app carries out and writes into the journal.
 * The numbers are in limits.ts, the sentences in reasons.ts.
 *
 * Example: streak goal 5, rung 72. Five clean -> commands streakMet, tempo 76. Two flawed -> pause.
 * A third flawed of the last five -> tempo 69, "Three of the last five were flawed: down from 72 to 69."
 */
import type { Flaw } from '@/judge/flaw'
import type { Repetition, Verdict } from '@/judge/repetition'
import { ms, type Ms, type Tempo } from '@/music/units'
import { beginEndurance, minutes, practiseUntil, restDue, type Endurance } from './endurance'
import { buildLadder, startRung, type Ladder } from './ladder'
import { limits } from './limits'
import type { Command, CoachEvent, Overruled } from './messages'
import { noteFlaws, type CoachFlaw, type Sighting } from './problems'
import type { Evidence, Problem, Reason } from './reasons'

export type { Command, CoachEvent } from './messages'

export interface CoachSettings {
  /** 3 to 10; 5 where the person chose nothing. */
  readonly streakGoal?: number
  readonly goalTempo: Tempo
  /** Without it the drill starts at 50 to 60 % of the goal tempo. */
  readonly startTempo?: Tempo
  readonly ladder: Ladder
}

/** Where a drill stands; all that the page shows of it. */
export interface Coach {
  /** From slow to the goal tempo, which is the last. */
  readonly rungs: readonly [Tempo, ...Tempo[]]
  /** The present tempo, one of `rungs`. */
  readonly rung: Tempo
  readonly streak: number
  readonly streakGoal: number
  /** The last forty verdicts, for the strokes. */
  readonly recent: readonly Verdict[]
  /** Why a pause is asked for, and since when. */
  readonly paused: { readonly reason: Reason; readonly since: Ms } | undefined
  /** The streak goal was met at the goal tempo. */
  readonly secure: boolean
  /** Verdicts since the tempo last changed, eight at most. */
  readonly window: readonly Verdict[]
  /** Repetitions of this drill. */
  readonly repetitions: number
  readonly sightings: readonly Sighting[]
  /** Time and repetitions at this place since another was last offered. */
  readonly place: { readonly time: Ms; readonly repetitions: number }
  /** `undefined` until the first event. */
  readonly endurance?: Endurance
}

export type CoachStep = readonly [Coach, readonly Command[]]

/** `endurance` of the drill before, so that a rest is asked for across drills. */
export const beginCoach = (settings: CoachSettings, endurance?: Endurance): Coach => {
  const rungs = buildLadder(settings.ladder, settings.goalTempo, settings.startTempo)
  return {
    rungs,
    rung: startRung(rungs, settings.startTempo),
    streak: 0,
    streakGoal: boundStreakGoal(settings.streakGoal ?? limits.streakGoal.usual),
    recent: [],
    paused: undefined,
    secure: false,
    window: [],
    repetitions: 0,
    sightings: [],
    place: { time: ms(0), repetitions: 0 },
    ...(endurance ? { endurance } : {}),
  }
}

export const stepCoach = (coach: Coach, event: CoachEvent): CoachStep => {
  const timed = passTime(coach, event)
  switch (event.kind) {
    case 'repetition':
      return follow(endPauseByPlaying(timed, event), [
        (c) => takeVerdict(c, event),
        (c) => offerElsewhere(c),
        (c) => askForRest(c),
      ])
    case 'raise':
    case 'lower':
      return overruleTempo(timed, event)
    case 'skip':
    case 'end':
      return [timed, timed.secure ? [] : [{ kind: 'overruled', what: event.kind, at: event.at }]]
    case 'goOn':
      return goOn(timed, event.at)
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

/** Applies the steps one after another and joins their commands. */
const follow = (begin: CoachStep, steps: readonly ((coach: Coach) => CoachStep)[]): CoachStep =>
  steps.reduce<CoachStep>(([coach, commands], step) => {
    const [next, more] = step(coach)
    return [next, [...commands, ...more]]
  }, begin)

/** Time at this place counts from the first repetition on. */
const passTime = (coach: Coach, event: CoachEvent): Coach => {
  const begin = event.kind === 'repetition' ? event.start : event.at
  const before = coach.endurance ?? beginEndurance(begin)
  const endurance = practiseUntil(before, event.at)
  const first = coach.repetitions === 0
  const passed = Math.max(0, first ? event.at - begin : endurance.practised - before.practised)
  return { ...coach, endurance, place: { ...coach.place, time: ms(coach.place.time + passed) } }
}

const withoutPause = (coach: Coach): Coach => ({ ...coach, paused: undefined })

/** Playing ends a pause; playing on at once overrules it. */
const endPauseByPlaying = (coach: Coach, event: { readonly start: Ms }): CoachStep => {
  if (!coach.paused) return [coach, []]
  const { since, reason } = coach.paused
  const ignored = event.start < since + limits.pauseMs
  return [
    withoutPause(coach),
    ignored ? [{ kind: 'overruled', what: overruledBy(reason), at: event.start }] : [],
  ]
}

/** A pause may end at any time; going on in spite of a problem or a group too big is recorded. */
const goOn = (coach: Coach, at: Ms): CoachStep => {
  if (!coach.paused) return [coach, []]
  const what = overruledBy(coach.paused.reason)
  return [withoutPause(coach), what === 'pause' ? [] : [{ kind: 'overruled', what, at }]]
}

const overruledBy = (reason: Reason): Overruled =>
  reason.kind === 'sameFlaw' ? 'problem' : reason.kind === 'tooBig' ? 'smallerGroup' : 'pause'

type RepetitionEvent = Extract<CoachEvent, { kind: 'repetition' }>

const takeVerdict = (before: Coach, event: RepetitionEvent): CoachStep => {
  const repetitions = before.repetitions + 1
  const [sightings, problem] = noteFlaws(before.sightings, event.flaws, repetitions)
  const clean = event.verdict === 'clean'
  const coach: Coach = {
    ...before,
    repetitions,
    sightings,
    streak: clean ? Math.min(before.streak + 1, before.streakGoal) : 0,
    recent: [...before.recent, event.verdict].slice(-limits.recent),
    window: [...before.window, event.verdict].slice(-limits.lowShare.of),
    place: { ...before.place, repetitions: before.place.repetitions + 1 },
  }
  if (!clean) return answerSlip(coach, event.at, problem)
  return before.streak < coach.streakGoal && coach.streak === coach.streakGoal
    ? meetStreak(coach)
    : [coach, []]
}

const meetStreak = (coach: Coach): CoachStep => {
  const from = coach.rung
  const met: Command = { kind: 'streakMet', rung: from }
  const to = neighbour(coach, 1)
  if (to !== undefined)
    return changeTempo(coach, { kind: 'streak', streak: coach.streak, from, to }, [met])
  return coach.secure
    ? [coach, [met]]
    : [{ ...coach, secure: true }, [met, { kind: 'secure', rung: from }]]
}

/** Too hard comes before a pause; a problem is named in any case. */
const answerSlip = (coach: Coach, at: Ms, problem: Problem | undefined): CoachStep =>
  follow(easeOff(coach, at), [
    (c) => (problem ? nameProblem(c, at, problem) : [c, []]),
    (c) => (c === coach ? askForPause(c, at) : [c, []]),
  ])

const easeOff = (coach: Coach, at: Ms): CoachStep => {
  const evidence = tooHard(coach.window)
  if (!evidence) return [coach, []]
  const from = coach.rung
  const to = neighbour(coach, -1)
  if (to !== undefined) return changeTempo(coach, { kind: 'tooFast', evidence, from, to })
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

const overruleTempo = (
  coach: Coach,
  event: { readonly kind: 'raise' | 'lower'; readonly at: Ms },
): CoachStep => {
  const to = neighbour(coach, event.kind === 'raise' ? 1 : -1)
  if (to === undefined) return [coach, []]
  const reason: Reason = { kind: 'person', from: coach.rung, to }
  return changeTempo(withoutPause(coach), reason, [
    { kind: 'overruled', what: event.kind, at: event.at },
  ])
}

const neighbour = (coach: Coach, step: 1 | -1): Tempo | undefined =>
  coach.rungs[coach.rungs.indexOf(coach.rung) + step]

/** After a change streak and window start anew. */
const changeTempo = (
  coach: Coach,
  reason: Extract<Reason, { to: Tempo }>,
  before: readonly Command[] = [],
): CoachStep => [
  { ...coach, rung: reason.to, streak: 0, window: [] },
  [...before, { kind: 'tempo', tempo: reason.to, reason }],
]

const offerElsewhere = (coach: Coach): CoachStep => {
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

const askForRest = (coach: Coach): CoachStep => {
  const due = coach.endurance && restDue(coach.endurance)
  if (!coach.endurance || !due) return [coach, []]
  const endurance: Endurance = { ...coach.endurance, asked: due }
  const spent = Math.floor(endurance.practised / minutes(1))
  const strong = due === 'strongRest'
  const reason: Reason = { kind: 'longAtWork', minutes: spent, strong }
  return [{ ...coach, endurance }, [{ kind: 'rest', strong, reason }]]
}
