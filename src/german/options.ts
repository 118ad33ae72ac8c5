import type { OptionsText } from '@/text/options'

export const options: OptionsText = {
  groups: {
    drill: 'Beim Üben',
    instrument: 'Instrument und Hand',
    hearing: 'Was zu hören ist',
    page: 'Seite und Wörter',
    commands: 'Vom Instrument aus',
  },
  judge: 'Beurteilt werden',
  streakGoal: 'Serienziel',
  trial: 'Das Anfangstempo mit einer kurzen Tempoprobe finden',
  forgiveBrushed: 'Gestreifte Tasten nachsehen',
  keyboard: 'Instrument',
  allKeyboards: 'alle angeschlossenen',
  transpose: 'Transponieren, Halbtöne',
  sound: 'Ton',
  volumes: {
    metronome: 'Metronom, Lautstärke',
    piano: 'Klavier von „Anhören“, Lautstärke',
    signals: 'Zeichen des Programms, Lautstärke',
  },
  hearOn: '„Anhören“ erklingt auf',
  ownPiano: 'dem Klavier des Programms',
  aboutCable:
    'Über ein Kabel klingen die Töne einige Millisekunden nach dem Senden, je Ton eines Akkords eine Millisekunde später; über Funk können es Dutzende sein. Das zählt nie gegen Sie, und was das Instrument davon zurücksendet, gilt nicht als Ihr Spiel.',
  clicks: 'Klicks je Schlag',
  clicksAre: (n, what) => `${n}: ${what}`,
  silentBars: 'Zwei Takte Klicks, zwei Takte Stille: Hält Ihr Puls?',
  lag: (lag) => `Verzögerung gegen den Klick: ${lag}.`,
  measureLag: 'Verzögerung messen …',
  page: 'Seite',
  themes: { auto: 'wie das Gerät', light: 'Tag', dark: 'Abend' },
  language: 'Sprache',
  languages: { auto: 'wie das Gerät', en: 'English', de: 'Deutsch' },
  languageLacks: (language) =>
    `${language} ist gerade nicht zu laden. Beim nächsten Öffnen der Seite wird es wieder versucht.`,
  noteNames: 'Notennamen',
  namesOfLanguage: 'wie in der Sprache',
  showFingers: 'Fingersatz über den Noten beim Üben',
  health:
    'Sofort aufhören, wenn etwas schmerzt, kribbelt oder taub wird, und zum Arzt, wenn es anhält. Dies ist ein allgemeiner Rat, kein ärztlicher; eine Lehrkraft neben Ihnen weiß mehr als jedes Programm.',
  licences: 'Alle Lizenzen',
  beside: {
    unplugged: (name) => `${name} (nicht eingesteckt)`,
    taken: (name) => `${name} (von einem anderen Programm belegt)`,
    absent: (name) => `${name} (nicht da)`,
  },
  fromInstrument: {
    how: 'Eine Taste weit weg von der Passage, oder ein Pedal, kann einen Befehl bedeuten. Bis zu einer Quarte neben den Tasten der Passage spielt eine Taste nur.',
    pressNow: 'jetzt drücken …',
    pressOne: 'Taste festlegen',
    noKey: (command) => `${command}: keine Taste`,
    damper: 'Auch das rechte Pedal',
  },
}
