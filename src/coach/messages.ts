import type { Verdict } from '@/judge/repetition'
import type { Ms, Tempo } from '@/music/units'
import type { CoachFlaw } from './problems'
import type { Problem, Reason, TempoReason } from './reasons'
import type { RemedyKind } from './remedyKinds'

/** What the coach hears. */
export type CoachEvent =
  | {
      readonly kind: 'repetition'
      readonly verdict: Verdict
      readonly flaws: readonly CoachFlaw[]
      /** When its first key was struck, and when the verdict came. */
      readonly start: Ms
      readonly at: Ms
    }
  /** The person overrules: one rung up, one rung down, this chunk left. */
  | { readonly kind: 'raise'; readonly at: Ms }
  | { readonly kind: 'lower'; readonly at: Ms }
  | { readonly kind: 'skip'; readonly at: Ms }
  | { readonly kind: 'end'; readonly at: Ms }
  /** The person goes on after a pause. */
  | { readonly kind: 'goOn'; readonly at: Ms }
  /** The person takes back the coach's last decision: a pause, a trial, a change of the tempo. */
  | { readonly kind: 'undo'; readonly at: Ms }
  /** A remedy was played to its end, or left before: back to this drill. */
  | {
      readonly kind: 'remedied'
      readonly remedy: RemedyKind
      readonly problem: Problem
      readonly solved: boolean
      readonly at: Ms
    }

/** What the person overruled: `tempoUp` and `tempoDown` are changes of the tempo that were taken back, `remedy` is one left before it was solved. */
export type Overruled =
  | 'raise'
  | 'lower'
  | 'skip'
  | 'end'
  | 'pause'
  | 'problem'
  | 'smallerGroup'
  | 'trial'
  | 'tempoUp'
  | 'tempoDown'
  | 'remedy'

/** What the coach asks of the app; it never acts itself. */
export type Command =
  | { readonly kind: 'streakMet'; readonly rung: Tempo }
  | { readonly kind: 'secure'; readonly rung: Tempo }
  | { readonly kind: 'tempo'; readonly tempo: Tempo; readonly reason: TempoReason }
  /** The trial is over: the rung that it found, or none. */
  | {
      readonly kind: 'trialEnded'
      readonly rung?: Tempo
      readonly repetitions: number
      readonly reason: Reason
    }
  | { readonly kind: 'pause'; readonly reason: Reason }
  | { readonly kind: 'smallerGroup'; readonly reason: Reason }
  /** Something to know; nothing stops for it. */
  | { readonly kind: 'advice'; readonly reason: Reason }
  | ({ readonly kind: 'problem'; readonly reason: Reason } & Problem)
  /** Whether a solved remedy helped: the flaw came again, or did not in so many repetitions. */
  | {
      readonly kind: 'problemOutcome'
      readonly remedy: RemedyKind
      readonly problem: Problem
      readonly helped: boolean
      readonly repetitions: number
    }
  | { readonly kind: 'rest'; readonly strong: boolean; readonly reason: Reason }
  | { readonly kind: 'elsewhere'; readonly reason: Reason }
  | { readonly kind: 'overruled'; readonly what: Overruled; readonly at: Ms }
