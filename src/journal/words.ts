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
/**
 * What the person decided otherwise: `tempoUp` and `tempoDown` are changes of the tempo that were taken
 * back, `exercise` is another one than the next, `remedy` one left before it was solved.
 */
export const recordedOverrules = [
  'raise',
  'lower',
  'skip',
  'end',
  'pause',
  'problem',
  'smallerGroup',
  'trial',
  'tempoUp',
  'tempoDown',
  'exercise',
  'remedy',
] as const
/** Why the rung changed: after a streak, too many flaws, the person's choice, what a trial found, back from a remedy. */
export const recordedTempoReasons = ['streak', 'tooFast', 'person', 'trial', 'remedy'] as const
/** In what form the notes of a chunk were played. */
export const recordedForms = [
  'asWritten',
  'longShort',
  'shortLong',
  'stopAfter3',
  'stopAfter4',
  'accentEvery3',
  'accentEvery4',
  'blocked',
] as const
/** What a problem most likely is. */
export const recordedCauses = [
  'shortLeap',
  'longLeap',
  'weakFinger',
  'neighbours',
  'handsApart',
  'positionChange',
  'rhythm',
  'accidental',
  'unknown',
] as const
/** What was done about a problem. */
export const recordedRemedies = [
  'smallGroup',
  'oneHand',
  'blocked',
  'loop',
  'leapAlone',
  'tapFirst',
  'handsSlowly',
  'fingering',
  'nameKeys',
] as const
/** How a remedy ended. */
export const remedyOutcomes = ['solved', 'leftOff'] as const
/** What an entry of the notebook is about. */
export const notebookSubjects = [
  'idea',
  'fingering',
  'teacher',
  'edition',
  'recording',
  'tried',
] as const
/** A finished piece is only checked now and then, one laid aside rests; taken up, it is worked on again. */
export const pieceDecisions = ['finished', 'laidAside', 'takenUp'] as const

/** Where a fingering comes from. */
export const fingeringOrigins = ['mine', 'teacher', 'edition', 'proposal', 'file'] as const

export type RecordedVerdict = (typeof recordedVerdicts)[number]
export type RecordedStandard = (typeof recordedStandards)[number]
export type RecordedFlawKind = (typeof recordedFlawKinds)[number]
export type RecordedOverrule = (typeof recordedOverrules)[number]
export type RecordedTempoReason = (typeof recordedTempoReasons)[number]
export type RecordedForm = (typeof recordedForms)[number]
export type RecordedCause = (typeof recordedCauses)[number]
export type RecordedRemedy = (typeof recordedRemedies)[number]
export type RemedyOutcome = (typeof remedyOutcomes)[number]
export type NotebookSubject = (typeof notebookSubjects)[number]
export type PieceDecision = (typeof pieceDecisions)[number]
export type FingeringOrigin = (typeof fingeringOrigins)[number]
