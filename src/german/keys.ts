import type { KeysText } from '@/text/keys'

export const keys: KeysText = {
  title: 'Tasten',
  close: 'Schließen',
  thisList: 'diese Liste',
  options: 'die Einstellungen',
  anotherPage: 'eine andere Seite',
  goTo: {
    title: 'Eine andere Seite',
    pages: {
      pieces: 'Stücke',
      today: 'Heute',
      summary: 'Diese Sitzung',
      review: 'Rückblick',
      notebook: 'Notizbuch',
      students: 'Schülerinnen und Schüler',
      journal: 'Die Aufzeichnung',
    },
  },
  names: {
    space: 'Leer',
    enter: 'Enter',
    escape: 'Esc',
    backspace: 'Rücktaste',
    ctrlEnter: 'Strg Enter',
  },
  drill: {
    metronome: 'Metronom; in einer Pause: weiter',
    hear: 'anhören',
    again: 'noch einmal von vorn',
    goOn: 'Pause, und weiter',
    next: 'weiter zum nächsten',
    back: 'zurück zum vorigen',
    tempo: 'schneller, langsamer',
    remedies: 'bei einem Problem: eine der Übungen dagegen',
    perBeat: 'Klicks auf einen Schlag: einer, zwei, drei, vier',
    silentBars: 'abwechselnd zwei Takte Klicks und zwei Takte Stille',
    simulated: 'die Simulation eines Spielers beginnen und beenden; nichts wird aufgezeichnet',
    notebook: 'das Notizbuch; das Üben wartet so lange',
    undo: 'zurücknehmen, was das Programm zuletzt entschieden hat',
    end: 'die Sitzung beenden',
  },
  buildUp: { next: 'die nächste Übung', notebook: 'das Notizbuch', piece: 'das Stück' },
  tapTest: {
    toggle: 'die Klicks beginnen und anhalten',
    use: 'das Gemessene herausrechnen',
    back: 'zurück',
  },
  record: 'aufnehmen und anhalten',
  keepPiece: 'als Stück behalten',
  pieces: {
    search: 'suchen',
    bring: 'eine Datei einlesen',
    write: 'ein Fragment schreiben',
    record: 'ein Fragment einspielen',
    today: 'der Plan für heute',
  },
  today: {
    next: 'zum Nächsten von heute; was nicht gespielt wurde, bleibt für einen anderen Tag',
    back: 'erst das Nächste spielen, dies danach',
  },
  bound: (key, isFree) =>
    isFree ? ` · ${key}` : ` · ${key}, die hier zur Passage gehört und spielt`,
  letters:
    'Buchstaben spielen: Die Tastatur ist ein kleines Klavier. Auch Tasten und Pedale des Instruments können ein Befehl sein: siehe Einstellungen.',
}
