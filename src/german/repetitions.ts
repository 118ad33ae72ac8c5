import type { RepetitionsText } from '@/text/repetitions'
import { counted } from './counted'
import { capital, often } from './numberWords'

const repetitionsOf = (n: number): string => counted(n, 'Durchgang', 'Durchgänge')

export const repetitions: RepetitionsText = {
  title: 'Durchgänge',
  all: 'Alle Durchgänge, der letzte zuerst.',
  keys: {
    above: 'der darüber',
    below: 'der darunter',
    hear: 'noch einmal hören, und anhalten',
    more: 'mehr: frühere Tage',
    back: 'zurück',
  },
  back: (key) => ['Zurück ', key],
  earlier: (key) => ['Frühere Tage ', key],
  unread: (why) => `Frühere Tage waren nicht zu lesen. ${why}`,
  count: (n) => `${repetitionsOf(n)}.`,
  countBackTo: (n, day) => `${repetitionsOf(n)}, zurück bis zum ${day}.`,
  onlyUnplayed:
    'Das wurde entschieden, als noch nichts gespielt war: Es gibt keinen Durchgang zu zeigen.',
  none: 'In der Aufzeichnung gibt es keinen solchen Durchgang. Nehmen Sie oben eine der Bedingungen weg oder gehen Sie zurück.',
  unplayed: (n) => `${capital(often(n))}, als noch nichts gespielt war.`,
  conditions: {
    title: 'Nur diese',
    without: (condition) => `Nicht nur: ${condition}`,
    session: 'diese Sitzung',
    piece: 'ein Stück',
    day: (day) => day,
    days: (from, to) => `${from} bis ${to}`,
    from: (day) => `ab dem ${day}`,
    until: (day) => `bis zum ${day}`,
    ended: 'fehlerfrei oder fehlerhaft',
    rung: (tempo) => `bei Tempo ${tempo}`,
    note: (key, place) => `bei ${key} in ${place}`,
    stretch: (stretch) => `über ${stretch}`,
    someNote: 'bei einem Ton',
    bar: (number) => `mit einem Fehler in Takt ${number}`,
    someBar: 'mit einem Fehler in einem Takt',
    played: (played, written) => `${played} statt ${written}`,
    another: (written) => `andere Taste statt ${written}`,
    cold: 'kalt, an einem späteren Tag',
    streak: 'die längste Serie',
    decided: (what) => `danach: ${what}`,
    made: {
      slipped: 'mit dem ein Ausschnitt wieder unsicher wurde',
      secure: 'machte einen Ausschnitt sicher',
      kept: 'bestätigte einen Ausschnitt kalt',
      practised: 'der letzte eines Ausschnitts, der nur geübt ist',
    },
  },
  verdicts: { clean: 'fehlerfrei', flawed: 'fehlerhaft', brokenOff: 'abgebrochen' },
  standards: { notes: 'Töne', flow: 'Fluss', time: 'Zeit' },
  somePiece: 'ein Stück',
  what: (where, flaws) => `${where}: ${flaws}`,
  forgiven: (flaw) => `${flaw} (verziehen)`,
  more: (n) => `${n} weitere`,
  cold: 'kalt',
  decided: (what) => `danach: ${what}`,
  seen: {
    title: 'Der gewählte Durchgang',
    asked: (where, tempo) => `${where}; verlangt war Tempo ${tempo}.`,
    askedAndPlayed: (where, tempo, played) =>
      `${where}; verlangt war Tempo ${tempo}, gespielt ${played}.`,
    flaws: (flaws) => `${capital(flaws)}.`,
    noPlace:
      'Die Noten sind nicht zu zeichnen: Die Stelle steht nicht in den Noten, die hier sind.',
    noPiece: 'Die Noten sind nicht zu zeichnen: Das Stück ist nicht auf diesem Gerät.',
    stop: (key) => ['Anhalten ', key],
    hear: (key) => ['Noch einmal hören ', key],
    practise: 'Üben',
    ofChunk: 'Alle dieses Ausschnitts',
    noKeys: 'Von diesem Durchgang sind keine Tasten aufgezeichnet: Er ist nicht zu hören.',
  },
  played: {
    lasted: (seconds) => `${seconds} Sekunden von der ersten Taste bis zur letzten`,
    written: (seconds, tempo) => `${seconds} Sekunden wie notiert bei ${tempo}`,
    picture:
      'Oben, wann jeder Anschlag fällig war, unten, wann jede Taste kam: je höher, desto lauter; ein Fehler ist eingekreist.',
    dueRow: 'fällig',
    playedRow: 'gespielt',
    columns: { key: 'Taste', seconds: 'Sekunden', held: 'Gehalten', velocity: 'Stärke' },
    flaw: (key) => `${key}, ein Fehler`,
  },
}
