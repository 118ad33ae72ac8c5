import type { Verdict } from '@/judge/repetition'
import type { Ms, Tempo } from '@/music/units'
import type { CoachFlaw } from './problems'
import type { Problem, Reason } from './reasons'

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

/** What the person overruled. */
export type Overruled = 'raise' | 'lower' | 'skip' | 'end' | 'pause' | 'problem' | 'smallerGroup'

/** What the coach asks of the app; it never acts itself. */
export type Command =
  | { readonly kind: 'streakMet'; readonly rung: Tempo }
  | { readonly kind: 'secure'; readonly rung: Tempo }
  | { readonly kind: 'tempo'; readonly tempo: Tempo; readonly reason: Reason }
  | { readonly kind: 'pause'; readonly reason: Reason }
  | { readonly kind: 'smallerGroup'; readonly reason: Reason }
  | ({ readonly kind: 'problem'; readonly reason: Reason } & Problem)
  | { readonly kind: 'rest'; readonly strong: boolean; readonly reason: Reason }
  | { readonly kind: 'elsewhere'; readonly reason: Reason }
  | { readonly kind: 'overruled'; readonly what: Overruled; readonly at: Ms }
