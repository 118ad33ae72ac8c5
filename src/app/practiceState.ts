import type { Coach, Command } from '@/coach/coach'
import { limits } from '@/coach/limits'
import type { Reason } from '@/coach/reasons'
import { leastOnsets } from '@/exercises/exercises'
import type { Repetition } from '@/judge/repetition'
import type { Problem } from '@/coach/reasons'
import type { Remedy } from '@/coach/remedies'
import type { EventId } from '@/journal/ids'
import type { Breath } from './breath'
import type { Finding } from './diagnosing'
import type { Effect } from './drill'
import type { Loss } from './instrument'
import type { Practising } from './practising'

/** What stands large beside the sentence, to be known from the keys: an arrow, a fermata, a stop. */
export type Sign = 'up' | 'down' | 'done' | 'problem' | 'pause'

/** What the page says, when it is not the last verdict. */
export type Said =
  | { readonly kind: 'reason'; readonly reason: Reason; readonly sign?: Sign }
  | { readonly kind: 'secure' }
  | { readonly kind: 'stray' }
  /** The keyboard was unplugged in mid-repetition, or another program took it. */
  | { readonly kind: Loss }
  /** The sound stopped, and the metronome with it. */
  | { readonly kind: 'soundLost' }

/** Clean repetitions at a rung that the trial for the start tempo asks for. */
export const trialGoal = limits.trial.cleanOf

/** The problem for which the drill has stopped. */
export interface ProblemAtHand extends Finding {
  readonly problem: Problem
  /** Its name in the record. */
  readonly id: EventId
  /** The remedy that a key of the instrument starts: index into `remedies`. */
  readonly chosen: number
  /** The one that was started last. */
  readonly taken?: Remedy
}

export interface PracticeState {
  /** What is on the desk: the drill that was chosen, or a remedy against a problem of it. */
  readonly desk: Practising
  readonly coach: Coach
  readonly last?: Repetition | undefined
  readonly said?: Said | undefined
  readonly metronome: 'off' | 'starting' | 'on'
  readonly hearing: boolean
  /** The simulated player is at the keys: what is shown is not the person's own drill. */
  readonly simulated: boolean
  /** The person asked for a pause: nothing is judged. */
  readonly resting: boolean
  /** The exercise is done; in a moment the next one is on the desk. */
  readonly breath?: Breath | undefined
  readonly problem?: ProblemAtHand | undefined
}

/** The group is too big for its slowest tempo, and can be cut smaller. */
export const isTooBig = ({ coach, desk }: PracticeState): boolean => {
  const why = coach.paused?.reason.kind
  const isLarge = desk.written.onsets.length > leastOnsets && desk.remedy === undefined
  return (why === 'tooBig' || why === 'trialTooBig') && isLarge
}

/** What is said until somebody plays on. */
const passing: readonly Said['kind'][] = ['stray', 'unplugged', 'taken', 'soundLost']

/** What an effect changes on the page, marks apart. */
export const showEffect = (state: PracticeState, effect: Effect): PracticeState => {
  switch (effect.kind) {
    case 'judged':
      return {
        ...state,
        last: effect.repetition,
        said: undefined,
        problem: undefined,
      }
    case 'stray':
      return { ...state, said: { kind: 'stray' } }
    case 'began': {
      const isPassing = passing.some((kind) => kind === state.said?.kind)
      // Who plays on, leaves the problem.
      return { ...state, problem: undefined, ...(isPassing ? { said: undefined } : {}) }
    }
    case 'coach': {
      const said = saidOf(effect.command)
      return said ? { ...state, said } : state
    }
    case 'mark':
    case 'unmark':
      return state
  }
}

const saidOf = (command: Command): Said | undefined => {
  switch (command.kind) {
    case 'secure':
      return { kind: 'secure' }
    case 'tempo':
    case 'pause':
    case 'smallerGroup':
    case 'problem':
    case 'rest':
    case 'elsewhere':
    case 'advice':
    case 'trialEnded': {
      const sign = signOf(command)
      return { kind: 'reason', reason: command.reason, ...(sign ? { sign } : {}) }
    }
    case 'streakMet':
    case 'problemOutcome':
    case 'overruled':
      return undefined
  }
}

const signOf = (command: Command): Sign | undefined => {
  switch (command.kind) {
    case 'tempo':
      return 'to' in command.reason && command.reason.to < command.reason.from ? 'down' : 'up'
    case 'pause':
    case 'rest':
      return 'pause'
    case 'problem':
    case 'smallerGroup':
      return 'problem'
    case 'secure':
      return 'done'
    case 'streakMet':
    case 'elsewhere':
    case 'advice':
    case 'trialEnded':
    case 'problemOutcome':
    case 'overruled':
      return undefined
  }
}
