import type { PieceText } from '@/text/piece'
import { counted } from './counted'

export const piece: PieceText = {
  choice: {
    fromBar: 'Von Takt',
    toBar: 'bis Takt',
    hand: 'Hand',
    goalTempo: 'Zieltempo',
  },
  chosen: (where, hand) => `${where}, ${hand}`,
  noNote: (where) => `${where}: Hier steht keine Note. Andere Takte wählen.`,
  noNoteOfHand: (where, hand) =>
    `${where}, ${hand}: Hier steht keine Note. Andere Takte oder die andere Hand wählen.`,
  played: (bar) => `Sie haben Takt ${bar} gespielt`,
  playedOneOf: (bar, place, places) =>
    `Sie haben Takt ${bar} gespielt, Stelle ${place} von ${places}: noch einmal spielen führt zur nächsten`,
  first: {
    label: 'Erste Schritte',
    begin:
      'So geht es los: „Üben beginnen“ drücken und diese Noten spielen. Jeder Durchgang wird beurteilt, und nach einer Serie von fehlerfreien steigt das Tempo von selbst.',
    watch: 'Oder erst einem simulierten Spieler zusehen.',
    own: 'Ein eigenes Stück hinzufügen …',
  },
  start: 'Üben beginnen',
  build: 'Aufbauen',
  watch: 'Simuliertem Spieler zusehen',
  chunks: {
    title: 'Ausschnitte zum Üben',
    what: 'Jeder ist klein genug, um richtig gespielt zu werden, und teilt seine letzten Noten mit dem nächsten.',
    states: {
      kept: ' · behalten',
      slipped: ' · wieder unsicher',
      secure: ' · sicher',
      practised: ' · geübt',
      untouched: '',
    },
  },
  whole: {
    title: 'Das ganze Stück',
    smaller: 'Kleinere Noten',
    larger: 'Größere Noten',
    chosenBars: 'Gewählte Takte',
    progress: (drawn, of) => `Die Zeilen werden gezeichnet: ${drawn} von ${of}`,
    how: (mark) => [
      'Takte wählen: darüberziehen, ihre ersten Noten spielen, oder Pfeiltasten und Umschalttaste. Unter den Systemen: ',
      mark.untouched,
      ' ein Ausschnitt zum Üben, ',
      mark.practised,
      ' geübt, ',
      mark.secure,
      ' sicher, ',
      mark.kept,
      ' an einem späteren Tag behalten, ',
      mark.slipped,
      ' wieder unsicher. Darüber: ',
      mark.hard,
      ' eine schwere Stelle, schwerer ',
      mark.harder,
      ', eine Passage ',
      mark.passage,
      '.',
    ],
    lineWithSpot: (bars) => `${bars}, eine schwere Stelle`,
  },
  keys: {
    start: 'mit dem Üben beginnen',
    build: 'der Aufbau',
    watch: 'zusehen, wie es gespielt wird',
    arrows: 'in den Noten: die gewählten Takte; mit Umschalt ihr Ende',
    picks: 'in den Noten: eine Note auswählen; dann ← → ihre Nachbarn',
    digits: 'der Finger der ausgewählten Note, und weiter',
    away: 'die Ziffer wegnehmen; ohne Note das letzte Wort zu den Händen',
    hands: 'linke, rechte Hand, wo die Datei es nicht sagt',
    propose: 'einen Fingersatz vorschlagen',
    spots: 'die schweren Stellen; dort ↑ ↓ von einer zur nächsten',
    spotWord: 'die schwere Stelle annehmen, ablehnen',
    spotRank: 'die schwere Stelle nach oben, nach unten',
    notebook: 'das Notizbuch',
    weeks: 'die Wochen',
    size: 'größere, kleinere Noten',
  },
  hands: {
    label: 'Hände berichtigen',
    inferred: (about) =>
      `Die Datei sagt nicht, welche Hand spielt: es ist erschlossen. Stimmt es für ${about} nicht:`,
    thisNote: 'diese Note',
    undo: 'zurücknehmen',
    undone: 'Die Hände sind wie vorher.',
    ofFile: 'Die Datei sagt, welche Hand dort spielt, und dabei bleibt es.',
    changed: (notes, hand) => `${counted(notes, 'Note', 'Noten')}: ${hand}.`,
    carried: ({ carried, inPart, told, dropped }) => {
      const all = carried + told + dropped
      const ofFile = 'unnötig, da diese Datei die Hände dort selbst nennt'
      const gone = 'weggefallen, da die Noten in dieser Ausgabe fehlen'
      if (all === 1) {
        if (carried === 1)
          return `Ihre Berichtigung der Hände gilt hier${inPart === 1 ? ' für einen Teil der Noten' : ''}.`
        return `Ihre Berichtigung der Hände ist ${told === 1 ? ofFile : gone}.`
      }
      const are = (n: number): string => `${n} ${n === 1 ? 'ist' : 'sind'}`
      const some = inPart === 0 ? '' : ` (${inPart} nur für einen Teil der Noten)`
      const parts = [
        `${carried} ${carried === 1 ? 'gilt' : 'gelten'} hier${some}`,
        ...(told > 0 ? [`${are(told)} ${ofFile}`] : []),
        ...(dropped > 0 ? [`${are(dropped)} ${gone}`] : []),
      ]
      return `Von Ihren ${all} Berichtigungen der Hände: ${parts.join('; ')}.`
    },
  },
  note: {
    from: { file: '', inferred: ', erschlossen', person: ', wie Sie es sagten' },
    fingers: (fingers) => `, Finger ${fingers.join(', dann ')}`,
  },
}
