import type { SessionText } from '@/text/session'
import { counted } from './counted'

export const session: SessionText = {
  title: 'Diese Sitzung',
  nothing: (pieces) => [
    'Noch nichts geübt. Wählen Sie eines der ',
    pieces('Stücke'),
    ' und darin einen kleinen Ausschnitt.',
  ],
  repetitions: 'Durchgänge',
  toRepetitions: 'Durchgänge',
  noneEnded: 'Kein Durchgang kam bis zum Ende.',
  moreThanHalf: 'Mehr als die Hälfte war richtig gespielt: Das behalten die Finger.',
  half: 'Nur die Hälfte war richtig gespielt. Morgen: ein langsameres Tempo oder kleinere Ausschnitte.',
  lessThanHalf:
    'Weniger als die Hälfte war richtig gespielt. Morgen: ein langsameres Tempo oder kleinere Ausschnitte.',
  drilled: 'Was geübt wurde',
  columns: {
    chunk: 'Ausschnitt',
    clean: 'Fehlerfrei',
    longestStreak: 'Längste Serie',
    tempo: 'Tempo',
    again: 'Noch einmal',
  },
  aPiece: 'Ein Stück',
  cleanOf: (clean, of) => `${clean} von ${of}`,
  goal: (goal, secure) => `${goal === undefined ? '' : ` von ${goal}`}${secure ? ', sicher' : ''}`,
  again: 'noch einmal',
  flaws: 'Was nicht gelang',
  flawsMost: 'Was am häufigsten nicht gelang',
  flaw: (flaw, key, onset) =>
    `${flaw}${key === undefined ? '' : ` bei ${key}`}, Anschlag ${onset}:`,
  save: 'Die ganze Aufzeichnung als Datei sichern',
  amount: (repetitions, minutes) =>
    `${counted(repetitions, 'Durchgang', 'Durchgänge')} in ${minutes < 1 ? 'weniger als einer Minute' : counted(Math.round(minutes), 'Minute', 'Minuten')}.`,
}
