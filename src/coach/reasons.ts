import { describeFlaw } from '@/judge/describeFlaw'
import type { FlawKind } from '@/judge/flaw'
import { formatKey as formatPlainKey } from '@/music/pitch'
import type { Key, Tempo } from '@/music/units'

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
      return `${capital(count(reason.streak))} clean in a row: up from ${format(reason.from)} to ${format(reason.to)}.`
    case 'tooFast':
      return `${explainEvidence(reason.evidence)}: down from ${format(reason.from)} to ${format(reason.to)}.`
    case 'tooBig':
      return `${explainEvidence(reason.evidence)} at ${format(reason.at)}, the slowest tempo here: a smaller group will go better.`
    case 'flawedInARow':
      return `${capital(count(reason.flawed))} flawed in a row: hands off, look at the place, then go on.`
    case 'sameFlaw':
      return explainProblem(reason.problem, formatKey)
    case 'person':
      return `Your choice: ${reason.to > reason.from ? 'up' : 'down'} from ${format(reason.from)} to ${format(reason.to)}.`
    case 'longAtWork':
      return reason.strong
        ? `${capital(count(reason.minutes))} minutes of practice without a rest: stop for ten minutes. If anything hurts or tingles, stop for today.`
        : `${capital(count(reason.minutes))} minutes of practice: five minutes of rest now.`
    case 'longAtPlace':
      return `${capital(times(reason.repetitions, 'repetition'))} in ${times(reason.minutes, 'minute')} at this place: another place now, this one again later.`
    case 'longStreak':
      return `At ${count(reason.clean)} of ${count(reason.of)} clean, ${count(reason.streakGoal)} in a row take about ${roundTries(reason.tries)} tries: a smaller group will be quicker.`
    case 'remedied':
      return `Back to the drill, one rung lower: from ${format(reason.from)} to ${format(reason.to)}.`
    case 'trialUp':
      return `${capital(count(reason.clean))} of ${count(reason.clean)} clean at ${format(reason.from)}: now ${format(reason.to)}.`
    case 'trialDown':
      return `Not yet at ${format(reason.from)}: now ${format(reason.to)}.`
    case 'trialEnded':
      return `${capital(count(reason.clean))} of ${count(reason.clean)} clean at ${format(reason.to)}: the drill starts here.`
    case 'trialTooBig':
      return `No ${count(reason.clean)} of ${count(reason.clean)} clean at ${format(reason.at)}, the slowest tempo here: a smaller group will go better.`
    case 'trialLeft':
      return `Your choice: the drill starts at ${format(reason.to)}.`
  }
}

/** A figure that is only an estimate: to the nearest ten from fifty on. */
const roundTries = (tries: number): string =>
  tries < 50 ? `${Math.round(tries)}` : `${Math.round(tries / 10) * 10}`

const explainEvidence = (evidence: Evidence): string => {
  switch (evidence.kind) {
    case 'flawedOfLast':
      return evidence.flawed === evidence.of
        ? `${capital(count(evidence.flawed))} flawed in a row`
        : `${capital(count(evidence.flawed))} of the last ${count(evidence.of)} were flawed`
    case 'lowShare':
      return `${capital(count(evidence.clean))} clean of the last ${count(evidence.of)}, under one half`
  }
}

const explainProblem = (
  { flaw, place, written, played, times: n }: Problem,
  formatKey: FormatKey,
): string => {
  const where = `at onset ${place + 1}`
  const often = n === 2 ? 'twice' : `${count(n)} times`
  const writtenKey = written === undefined ? undefined : formatKey(written)
  const playedKey = played === undefined ? undefined : formatKey(played)
  const what = describeFlaw(flaw, writtenKey, playedKey)
  return `${capital(what)} ${where}, ${often}: solve it before repeating it.`
}

const words =
  'no one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty'.split(
    ' ',
  )
const tens: Readonly<Record<number, string>> = {
  30: 'thirty',
  40: 'forty',
  50: 'fifty',
  60: 'sixty',
}

const count = (n: number): string => words[n] ?? tens[n] ?? `${n}`
const times = (n: number, what: string): string => `${count(n)} ${what}${n === 1 ? '' : 's'}`
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
