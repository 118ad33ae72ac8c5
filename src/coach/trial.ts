import type { Verdict } from '@/judge/repetition'
import type { Tempo } from '@/music/units'
import { limits } from './limits'
import type { Reason, TempoReason } from './reasons'

/**
 * A short trial for the start tempo. It begins near 55 % of the goal; three of three clean, and it
 * tries a rung farther up, each time twice as far; a flaw, and it goes half-way back down. It ends
 * at the highest rung at which three of three were clean, or says that the group is too big.
 */
export interface Trial {
  readonly rungs: readonly [Tempo, ...Tempo[]]
  /** The rung that is tried now: index into `rungs`. */
  readonly at: number
  /** Clean, and broken off, since this rung is tried. */
  readonly clean: number
  readonly brokenOff: number
  /** The highest rung with three of three clean, -1 without one; the lowest that failed. */
  readonly proved: number
  readonly failed: number
  /** How many rungs up the next step goes while nothing has failed. */
  readonly stride: number
  /** The slowest rung has failed once: it gets a second chance. */
  readonly lastChance: boolean
  readonly repetitions: number
}

export type TrialStep =
  | { readonly kind: 'goesOn'; readonly trial: Trial; readonly reason?: TempoReason }
  /** It found the rung to start at. */
  | { readonly kind: 'found'; readonly tempo: Tempo; readonly reason: TempoReason }
  /** Not even the slowest rung went. */
  | { readonly kind: 'tooBig'; readonly reason: Reason }

const {
  cleanOf,
  firstStride,
  repetitions: mostRepetitions,
  brokenOff: mostBrokenOff,
} = limits.trial

/** `start` is the rung to begin at, one of `rungs`. */
export const beginTrial = (rungs: readonly [Tempo, ...Tempo[]], start: Tempo): Trial => ({
  rungs,
  at: Math.max(0, rungs.indexOf(start)),
  clean: 0,
  brokenOff: 0,
  proved: -1,
  failed: rungs.length,
  stride: firstStride,
  lastChance: false,
  repetitions: 0,
})

/** The rung that is tried now. */
export const trialRung = (trial: Trial): Tempo => trial.rungs[trial.at] ?? trial.rungs[0]

export const stepTrial = (before: Trial, verdict: Verdict): TrialStep => {
  const trial: Trial = {
    ...before,
    repetitions: before.repetitions + 1,
    clean: before.clean + (verdict === 'clean' ? 1 : 0),
    brokenOff: before.brokenOff + (verdict === 'brokenOff' ? 1 : 0),
  }
  if (trial.clean === cleanOf) return afterSuccess(trial)
  if (verdict === 'flawed' || trial.brokenOff > mostBrokenOff) return afterFailure(trial)
  return trial.repetitions >= mostRepetitions ? conclude(trial) : { kind: 'goesOn', trial }
}

const afterSuccess = (trial: Trial): TrialStep => {
  const proved = { ...trial, proved: trial.at }
  if (trial.failed < trial.rungs.length) return between(proved)
  const at = Math.min(trial.at + trial.stride, trial.rungs.length - 1)
  return at === trial.at ? conclude(proved) : tryAt({ ...proved, stride: 2 * trial.stride }, at)
}

const afterFailure = (trial: Trial): TrialStep => {
  if (trial.at > 0) return between({ ...trial, failed: trial.at })
  return trial.lastChance ? conclude(trial) : tryAt({ ...trial, lastChance: true }, 0)
}

/** Half-way between what went and what did not; to the slowest where nothing has gone yet. */
const between = (trial: Trial): TrialStep => {
  if (trial.proved < 0) return tryAt(trial, 0)
  const at = Math.floor((trial.proved + trial.failed) / 2)
  return at === trial.proved ? conclude(trial) : tryAt(trial, at)
}

const tryAt = (trial: Trial, at: number): TrialStep => {
  if (trial.repetitions >= mostRepetitions) return conclude(trial)
  const next: Trial = { ...trial, at, clean: 0, brokenOff: 0 }
  const [from, to] = [trialRung(trial), trialRung(next)]
  if (from === to) return { kind: 'goesOn', trial: next }
  const reason: TempoReason =
    to > from ? { kind: 'trialUp', clean: cleanOf, from, to } : { kind: 'trialDown', from, to }
  return { kind: 'goesOn', trial: next, reason }
}

const conclude = (trial: Trial): TrialStep => {
  const { rungs, proved } = trial
  const tempo = rungs[proved]
  if (tempo === undefined)
    return { kind: 'tooBig', reason: { kind: 'trialTooBig', at: rungs[0], clean: cleanOf } }
  const reason: TempoReason = {
    kind: 'trialEnded',
    clean: cleanOf,
    from: trialRung(trial),
    to: tempo,
  }
  return { kind: 'found', tempo, reason }
}
