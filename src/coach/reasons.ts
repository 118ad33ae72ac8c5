import { describeFlaw } from '@/judge/describeFlaw'
import type { FlawKind } from '@/judge/flaw'
import { formatKey as formatPlainKey } from '@/music/pitch'
import type { Key, Tempo } from '@/music/units'
import { coachText } from '@/text/coach'

/** The same flaw at the same place again and again: to be solved, not repeated. */
export interface Problem {
  readonly flaw: FlawKind
  /** Index of the onset in the chunk. */
  readonly place: number
  readonly written?: Key
  /** What was played there last. */
  readonly played?: Key
  readonly times: number
}

/** Why the group or the tempo is too hard. */
export type Evidence =
  | { readonly kind: 'flawedOfLast'; readonly flawed: number; readonly of: number }
  /** `clean` of `of` clean and flawed repetitions; broken off ones are counted apart. */
  | { readonly kind: 'lowShare'; readonly clean: number; readonly of: number }

/** Why the coach does or asks something, with its figures. */
export type Reason =
  | { readonly kind: 'streak'; readonly streak: number; readonly from: Tempo; readonly to: Tempo }
  | {
      readonly kind: 'tooFast'
      readonly evidence: Evidence
      readonly from: Tempo
      readonly to: Tempo
    }
  | { readonly kind: 'tooBig'; readonly evidence: Evidence; readonly at: Tempo }
  | { readonly kind: 'flawedInARow'; readonly flawed: number }
  | { readonly kind: 'sameFlaw'; readonly problem: Problem }
  | { readonly kind: 'person'; readonly from: Tempo; readonly to: Tempo }
  | { readonly kind: 'longAtWork'; readonly minutes: number; readonly strong: boolean }
  | { readonly kind: 'longAtPlace'; readonly minutes: number; readonly repetitions: number }
  /** So many tries until a streak, at the clean share so far (expectedTries). */
  | {
      readonly kind: 'longStreak'
      readonly clean: number
      readonly of: number
      readonly streakGoal: number
      readonly tries: number
    }
  /** After a remedy the drill goes on a rung lower. */
  | { readonly kind: 'remedied'; readonly from: Tempo; readonly to: Tempo }
  | { readonly kind: 'trialUp'; readonly clean: number; readonly from: Tempo; readonly to: Tempo }
  | { readonly kind: 'trialDown'; readonly from: Tempo; readonly to: Tempo }
  | {
      readonly kind: 'trialEnded'
      readonly clean: number
      readonly from: Tempo
      readonly to: Tempo
    }
  | { readonly kind: 'trialTooBig'; readonly clean: number; readonly at: Tempo }
  /** The person left the trial. */
  | { readonly kind: 'trialLeft'; readonly from: Tempo; readonly to: Tempo }

/** Why the tempo changes. */
export type TempoReason = Extract<Reason, { readonly to: Tempo }>

/** How a tempo is written; a page counts in the beat of the time signature. */
export type FormatTempo = (tempo: Tempo) => string

const inQuarters: FormatTempo = (tempo) => `${Math.round(tempo)}`

/** How a key is named; a page spells it by the key signature. */
export type FormatKey = (key: Key) => string

/** The reason in one sentence: "Three of the last five were flawed: down from 72 to 69." */
export const explain = (
  reason: Reason,
  format: FormatTempo = inQuarters,
  formatKey: FormatKey = formatPlainKey,
): string => {
  switch (reason.kind) {
    case 'streak':
      return coachText.streak(reason.streak, format(reason.from), format(reason.to))
    case 'tooFast':
      return coachText.tooFast(
        explainEvidence(reason.evidence),
        format(reason.from),
        format(reason.to),
      )
    case 'tooBig':
      return coachText.tooBig(explainEvidence(reason.evidence), format(reason.at))
    case 'flawedInARow':
      return coachText.flawedInARow(reason.flawed)
    case 'sameFlaw':
      return explainProblem(reason.problem, formatKey)
    case 'person': {
      const say = reason.to > reason.from ? coachText.raised : coachText.lowered
      return say(format(reason.from), format(reason.to))
    }
    case 'longAtWork':
      return reason.strong ? coachText.strongRest(reason.minutes) : coachText.rest(reason.minutes)
    case 'longAtPlace':
      return coachText.longAtPlace(reason.repetitions, reason.minutes)
    case 'longStreak': {
      const { clean, of, streakGoal, tries } = reason
      return coachText.longStreak(clean, of, streakGoal, roundTries(tries))
    }
    case 'remedied':
      return coachText.remedied(format(reason.from), format(reason.to))
    case 'trialUp':
      return coachText.trialUp(reason.clean, format(reason.from), format(reason.to))
    case 'trialDown':
      return coachText.trialDown(format(reason.from), format(reason.to))
    case 'trialEnded':
      return coachText.trialEnded(reason.clean, format(reason.to))
    case 'trialTooBig':
      return coachText.trialTooBig(reason.clean, format(reason.at))
    case 'trialLeft':
      return coachText.trialLeft(format(reason.to))
  }
}

/** A figure that is only an estimate: to the nearest ten from fifty on. */
const roundTries = (tries: number): number =>
  tries < 50 ? Math.round(tries) : Math.round(tries / 10) * 10

const explainEvidence = (evidence: Evidence): string => {
  switch (evidence.kind) {
    case 'flawedOfLast':
      return coachText.flawedOfLast(evidence.flawed, evidence.of)
    case 'lowShare':
      return coachText.lowShare(evidence.clean, evidence.of)
  }
}

const explainProblem = (
  { flaw, place, written, played, times }: Problem,
  formatKey: FormatKey,
): string => {
  const writtenKey = written === undefined ? undefined : formatKey(written)
  const playedKey = played === undefined ? undefined : formatKey(played)
  return coachText.sameFlaw(describeFlaw(flaw, writtenKey, playedKey), place + 1, times)
}
