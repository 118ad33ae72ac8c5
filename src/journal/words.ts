/**
 * The closed word lists that stored events use. They are written down here and not taken from the
 * judge, since a stored event never changes its meaning: a word added there needs a version here.
 */
export const recordedVerdicts = ['clean', 'flawed', 'brokenOff'] as const
export const recordedStandards = ['notes', 'flow', 'time'] as const
export const recordedFlawKinds = [
  'wrong',
  'missing',
  'extra',
  'repeated',
  'order',
  'restart',
  'hesitation',
  'early',
  'late',
  'uneven',
  'spread',
  'drift',
] as const
export const recordedOverrules = [
  'raise',
  'lower',
  'skip',
  'end',
  'pause',
  'problem',
  'smallerGroup',
] as const
/** Why the rung changed: after a streak, too many flaws, the person's choice. */
export const recordedTempoReasons = ['streak', 'tooFast', 'person'] as const

export type RecordedVerdict = (typeof recordedVerdicts)[number]
export type RecordedStandard = (typeof recordedStandards)[number]
export type RecordedFlawKind = (typeof recordedFlawKinds)[number]
export type RecordedOverrule = (typeof recordedOverrules)[number]
export type RecordedTempoReason = (typeof recordedTempoReasons)[number]
