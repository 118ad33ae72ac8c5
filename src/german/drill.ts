import type { DrillText, NoteValue } from '@/text/drill'
import { counted } from './counted'
import { capital } from './numberWords'

const noteValues: Readonly<Record<NoteValue, string>> = {
  whole: 'Ganze',
  half: 'Halbe',
  quarter: 'Viertel',
  eighth: 'Achtel',
  sixteenth: 'Sechzehntel',
  thirtySecond: 'Zweiunddreißigstel',
}

/** 'Oktaven, Triller und weite Griffe' */
const listed = (words: readonly string[]): string =>
  [...words.slice(0, -2), words.slice(-2).join(' und ')].join(', ')

export const drill: DrillText = {
  commands: {
    hear: 'Anhören',
    again: 'Nochmal',
    next: 'Vor',
    back: 'Zurück',
    goOn: 'Weiter oder Pause',
    metronome: 'Metronom',
  },
  controls: {
    metronome: 'Metronom',
    silentBars: 'zwei Takte mit Klicks, zwei stumm',
    hear: 'Anhören',
    again: 'Nochmal',
    slower: 'Langsamer',
    faster: 'Schneller',
    previous: 'Zurück',
    later: 'Später',
    next: 'Vor',
    goOn: 'Weiter',
    simulated: { shown: 'Simulation', rest: ' eines Spielers' },
    notebook: 'Notizbuch',
    keys: 'Tasten',
    end: 'Ende',
  },
  played: 'gespielt',
  aMinute: (beats) => `${beats} pro Minute`,
  ladder: (rung, number, of, goal) => `Tempo ${rung}, Stufe ${number} von ${of}, Ziel ${goal}`,
  streak: (streak, goal) => `${streak} von ${goal} Durchgängen fehlerfrei hintereinander`,
  figureOf: (figure, of) => [figure, ` von ${of}`],
  verdicts: (clean, flawed, brokenOff) =>
    `${clean} fehlerfrei, ${flawed} fehlerhaft, ${brokenOff} abgebrochen`,
  keyboard: (lowest, highest) => `Tasten ${lowest} bis ${highest}`,
  exercise: (number, of, kind, strong) => [strong(`${number} von ${of}`), `, ${kind}: `],

  simulation: 'Simulation, nichts wird aufgezeichnet.',
  resting: 'Pause: Was Sie jetzt spielen, wird nicht beurteilt.',
  ready: 'Beginnen Sie, wenn Sie so weit sind: Der erste Ton beginnt einen Durchgang.',
  stray: 'Mit dieser Taste beginnt hier nichts.',
  unplugged:
    'Das Instrument wurde getrennt: Dieser Durchgang zählt nicht. Wieder anschließen und weiterspielen.',
  taken:
    'Ein anderes Programm hat das Instrument belegt: Dieser Durchgang zählt nicht. Dort schließen, dann ist das Instrument hier wieder zu hören.',
  soundLost:
    'Der Klang ist ausgefallen und mit ihm das Metronom. Die Übung geht ohne weiter; die Leertaste startet es wieder.',
  secure: 'Für heute sicher: Die Serie ist im Zieltempo gelungen.',
  done: (streak) => `Geschafft: ${streak} fehlerfrei hintereinander.`,
  trial: 'Kurze Tempoprobe: drei fehlerfrei hintereinander, dann schneller.',
  leaveTrial: 'Die Rücktaste beendet die Tempoprobe.',
  remedy: 'Drei fehlerfrei hintereinander, dann zurück zur Übung.',
  solved: (streak) => `Gelöst: ${streak} fehlerfrei hintereinander.`,
  remedies: 'Übungen dagegen',
  buildUp: 'Aus kleineren Gruppen aufbauen.',
  problemAt: (place, likely) => `${capital(place)}. ${likely}`,
  breathe: 'Durchatmen.',
  next: (what) => `Als Nächstes: ${what}`,
  last: 'Das war die letzte Übung.',
  lastToday: 'Das war für heute alles.',
  backToDrill: 'Zurück zur Übung.',
  toWorkOn: (bars, others) =>
    `Daran weiterarbeiten: ${bars.length === 1 ? 'Takt' : 'Takte'} ${bars.join(', ')}${others ? ' und andere' : ''}.`,

  strains: {
    octaves: 'Oktaven',
    stretches: 'weite Griffe',
    trills: 'Triller',
    fastRepetitions: 'schnelle Tonwiederholungen',
  },
  cautionAgainst: (strains) =>
    `${capital(listed(strains))} ermüden die Hand: zwei Minuten am Stück. Bei Schmerzen aufhören; halten sie an, zum Arzt. Allgemeiner Rat, kein ärztlicher.`,
  caution:
    'Weite Griffe, Oktaven, Triller und schnelle Tonwiederholungen ermüden die Hand: zwei Minuten am Stück, dann etwas anderes; was anstrengt, arpeggieren oder weglassen, und bei Schmerz, Taubheit oder Kribbeln aufhören. Hält es an, zum Arzt. Allgemeiner Rat, kein ärztlicher.',

  notation: {
    drawing: 'Die Noten werden gezeichnet …',
    fragment: (notes, bars) =>
      `Das Fragment, ${counted(notes, 'Note', 'Noten')} in ${counted(bars, 'Takt', 'Takten')}`,
  },
  notes: {
    length: (value) => noteValues[value],
    dotted: (value) => `Punktierte ${noteValues[value]}`,
    triplet: (value) => `Triolen${noteValues[value].toLowerCase()}`,
    quarters: (figure, several) => (several ? `Je ${figure} Viertel` : `${figure} Viertel`),
    together: (keys) => keys.join(' mit '),
    inHand: (hand, keys) => `${hand === 'right' ? 'rechts' : 'links'} ${keys}`,
  },
}
