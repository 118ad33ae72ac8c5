import { plural } from './plural'
import { catalogue } from './text'

/** The session: what was practised in this sitting. */
export const sessionText = catalogue('session', {
  title: 'This session',
  nothing: <N>(pieces: (word: string) => N) => [
    'Nothing practised yet. Choose one of the ',
    pieces('pieces'),
    ', and one small chunk of it.',
  ],
  repetitions: 'Repetitions',
  /** Of a key, in the list of keys. */
  toRepetitions: 'repetitions',
  noneEnded: 'No repetition came to its end.',
  moreThanHalf: 'More than half was correct repetition: that is what the fingers keep.',
  half: 'Only half was correct repetition. Tomorrow: a slower tempo, or smaller chunks.',
  lessThanHalf:
    'Less than half was correct repetition. Tomorrow: a slower tempo, or smaller chunks.',
  drilled: 'What was drilled',
  columns: {
    chunk: 'Chunk',
    clean: 'Clean',
    longestStreak: 'Longest streak',
    tempo: 'Tempo',
    again: 'Again',
  },
  aPiece: 'A piece',
  cleanOf: (clean: number, of: number) => `${clean} of ${of}`,
  /** After the tempi: which one is to be reached, and whether it is. */
  goal: (goal: string | undefined, secure: boolean) =>
    `${goal === undefined ? '' : ` of ${goal}`}${secure ? ', secure' : ''}`,
  again: 'again',
  flaws: 'What went wrong',
  flawsMost: 'What went wrong most',
  flaw: (flaw: string, key: string | undefined, onset: number) =>
    `${flaw}${key === undefined ? '' : ` at ${key}`}, onset ${onset}:`,
  save: 'Save the whole record as a file',
  amount: (repetitions: number, minutes: number) =>
    `${plural(repetitions, 'repetition')} in ${minutes < 1 ? 'less than a minute' : plural(Math.round(minutes), 'minute')}.`,
})

export type SessionText = typeof sessionText
