import type { Verdict } from '@/judge/repetition'
import type { Ms, Tempo } from '@/music/units'
import type { Endurance } from './endurance'
import type { Ladder } from './ladder'
import type { Command } from './messages'
import type { Sighting } from './problems'
import type { Reason, TempoReason } from './reasons'
import type { RemedyWatch } from './remedied'
import type { Trial } from './trial'

export interface CoachSettings {
  /** 3 to 10; 5 where the person chose nothing. */
  readonly streakGoal?: number
  readonly goalTempo: Tempo
  /** Without it the drill starts at 50 to 60 % of the goal tempo. */
  readonly startTempo?: Tempo
  readonly ladder: Ladder
  /** A short trial finds the start tempo first (trial.ts). */
  readonly trial?: boolean
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
  /** The trial for the start tempo, while it lasts. */
  readonly trial: Trial | undefined
  /** Verdicts since the tempo last changed, eight at most. */
  readonly window: readonly Verdict[]
  /** Clean ones among the clean and flawed repetitions since the tempo last changed; after how many the arithmetic was told. */
  readonly share: { readonly clean: number; readonly of: number; readonly told: number }
  /** Repetitions of this drill. */
  readonly repetitions: number
  readonly sightings: readonly Sighting[]
  /** Remedies that were solved, until it is known whether they helped. */
  readonly watches: readonly RemedyWatch[]
  /** What the coach did to the tempo and can be undone, the last one last. */
  readonly decisions: readonly Decision[]
  /** Time and repetitions at this place since another was last offered. */
  readonly place: { readonly time: Ms; readonly repetitions: number }
  /** `undefined` until the first event. */
  readonly endurance?: Endurance
}

/** A change of the tempo that the coach made by itself. */
export type Decision = 'tempoUp' | 'tempoDown'

export type CoachStep = readonly [Coach, readonly Command[]]

/** Applies the steps one after another and joins their commands. */
export const follow = (
  begin: CoachStep,
  steps: readonly ((coach: Coach) => CoachStep)[],
): CoachStep =>
  steps.reduce<CoachStep>(([coach, commands], step) => {
    const [next, more] = step(coach)
    return [next, [...commands, ...more]]
  }, begin)

/** The rung so many steps up or down; `undefined` beyond the ends of the ladder. */
export const neighbour = (coach: Coach, step: 1 | -1): Tempo | undefined =>
  coach.rungs[coach.rungs.indexOf(coach.rung) + step]

/** Goes to another rung; streak and evidence start anew there. */
export const changeTempo = (
  coach: Coach,
  reason: TempoReason,
  before: readonly Command[] = [],
): CoachStep => [atRung(coach, reason.to), [...before, { kind: 'tempo', tempo: reason.to, reason }]]

/** The same, of the coach's own accord: it can be undone. */
export const decideTempo = (
  coach: Coach,
  reason: TempoReason,
  before: readonly Command[] = [],
): CoachStep => {
  const decision: Decision = reason.to > reason.from ? 'tempoUp' : 'tempoDown'
  return changeTempo({ ...coach, decisions: [...coach.decisions, decision] }, reason, before)
}

/** The drill starts; the trial is not a decision to be undone any more. */
export const endTrial = (coach: Coach, rung: Tempo, reason: TempoReason): CoachStep => {
  const { repetitions } = coach
  const ended: Command = { kind: 'trialEnded', rung, repetitions, reason }
  const moved: readonly Command[] =
    rung === coach.rung ? [] : [{ kind: 'tempo', tempo: rung, reason }]
  return [{ ...atRung(coach, rung), trial: undefined }, [ended, ...moved]]
}

/** The same coach at a rung, without streak and evidence. */
export const atRung = (coach: Coach, rung: Tempo): Coach => ({
  ...coach,
  rung,
  streak: 0,
  window: [],
  share: { clean: 0, of: 0, told: 0 },
})

export const withoutPause = (coach: Coach): Coach => ({ ...coach, paused: undefined })
