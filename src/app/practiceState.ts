import type { Coach, Command } from '@/coach/coach'
import type { Reason } from '@/coach/reasons'
import type { Repetition } from '@/judge/repetition'
import type { Effect } from './drill'

/** The sentence on the page, when it is not the last verdict. */
export type Said =
  | { readonly kind: 'reason'; readonly sentence: string }
  | { readonly kind: 'secure' }
  | { readonly kind: 'stray' }

export interface PracticeState {
  readonly coach: Coach
  readonly last?: Repetition | undefined
  readonly said?: Said | undefined
  readonly metronome: 'off' | 'starting' | 'on'
  readonly hearing: boolean
  /** The simulated player is at the keys: what is shown is not the person's own drill. */
  readonly simulated: boolean
}

/** What an effect changes on the page, marks apart. */
export const showEffect =
  (explained: (reason: Reason) => string) =>
  (state: PracticeState, effect: Effect): PracticeState => {
    switch (effect.kind) {
      case 'judged':
        return { ...state, last: effect.repetition, said: undefined }
      case 'stray':
        return { ...state, said: { kind: 'stray' } }
      case 'began':
        return state.said?.kind === 'stray' ? { ...state, said: undefined } : state
      case 'coach': {
        const said = saidOf(effect.command, explained)
        return said ? { ...state, said } : state
      }
      case 'mark':
      case 'unmark':
        return state
    }
  }

const saidOf = (command: Command, explained: (reason: Reason) => string): Said | undefined => {
  switch (command.kind) {
    case 'secure':
      return { kind: 'secure' }
    case 'tempo':
    case 'pause':
    case 'smallerGroup':
    case 'problem':
    case 'rest':
    case 'elsewhere':
      return { kind: 'reason', sentence: explained(command.reason) }
    case 'streakMet':
    case 'overruled':
      return undefined
  }
}
