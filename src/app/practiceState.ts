import type { Coach, Command } from '@/coach/coach'
import type { Reason } from '@/coach/reasons'
import type { Repetition } from '@/judge/repetition'
import type { Effect } from './drill'

/** The sentence on the page, when it is not the last verdict. */
export type Said =
  | { readonly kind: 'reason'; readonly sentence: string }
  | { readonly kind: 'secure' }
  | { readonly kind: 'stray' }
  /** The keyboard was unplugged in mid-repetition. */
  | { readonly kind: 'unplugged' }

export interface PracticeState {
  readonly coach: Coach
  readonly last?: Repetition | undefined
  /** The last verdict in words. */
  readonly verdict?: string | undefined
  readonly said?: Said | undefined
  readonly metronome: 'off' | 'starting' | 'on'
  readonly hearing: boolean
  /** The simulated player is at the keys: what is shown is not the person's own drill. */
  readonly simulated: boolean
}

/** How the practice speaks: keys as the notation spells them, tempi in the beat. */
export interface Speech {
  readonly explain: (reason: Reason) => string
  readonly describe: (repetition: Repetition) => string
}

/** What an effect changes on the page, marks apart. */
export const showEffect =
  (speech: Speech) =>
  (state: PracticeState, effect: Effect): PracticeState => {
    switch (effect.kind) {
      case 'judged':
        return {
          ...state,
          last: effect.repetition,
          verdict: speech.describe(effect.repetition),
          said: undefined,
        }
      case 'stray':
        return { ...state, said: { kind: 'stray' } }
      case 'began':
        return state.said?.kind === 'stray' || state.said?.kind === 'unplugged'
          ? { ...state, said: undefined }
          : state
      case 'coach': {
        const said = saidOf(effect.command, speech)
        return said ? { ...state, said } : state
      }
      case 'mark':
      case 'unmark':
        return state
    }
  }

const saidOf = (command: Command, speech: Speech): Said | undefined => {
  switch (command.kind) {
    case 'secure':
      return { kind: 'secure' }
    case 'tempo':
    case 'pause':
    case 'smallerGroup':
    case 'problem':
    case 'rest':
    case 'elsewhere':
      return { kind: 'reason', sentence: speech.explain(command.reason) }
    case 'streakMet':
    case 'overruled':
      return undefined
  }
}
