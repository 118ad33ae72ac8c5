import { grouped } from '@/text/numbers'
import type { StudentsText } from '@/text/students'
import { counted } from './counted'

export const students: StudentsText = {
  title: 'Schülerinnen und Schüler',
  intro:
    'Für alle, die unterrichten. Wer bei Ihnen lernt, sichert die ganze Aufzeichnung (auf der Seite „Die Aufzeichnung“) und schickt Ihnen die Datei. Hier wird sie neben Ihrer geöffnet, nur zum Lesen: Nichts davon kommt je in Ihre eigene Aufzeichnung.',
  open: 'Eine Aufzeichnung öffnen …',
  files: 'Dateien mit Aufzeichnungen von Schülerinnen und Schülern',
  ownReview: 'Ihr eigener Rückblick',
  untitled: 'ein Stück ohne Titel',
  nameless: (place) => `Nr. ${place}`,
  keys: {
    open: 'eine Aufzeichnung öffnen',
    sort: (column) => `nach „${column}“ ordnen; noch einmal: umgekehrt`,
  },
  since: {
    title: 'Seit wann',
    week: 'die letzten 7 Tage',
    fourWeeks: 'die letzten 4 Wochen',
    all: 'die ganze Zeit',
  },
  table: {
    title: 'Stück für Stück',
    how: 'Stücke und Menschen sind nicht gleich: Die Zahlen sind für die nächste Stunde da, nicht für einen Wettbewerb. Nach dem fehlerfreien Anteil steht, wo er in 95 von 100 Fällen liegt; beim Tempo steht das letzte als Teil des Ziels, erst vom mittleren Ausschnitt, dann vom langsamsten und vom schnellsten.',
    piece: 'Stück',
    allPieces: 'alle Stücke',
    nothing: 'In dieser Zeit wurde nichts geübt.',
    columns: {
      student: 'Name',
      piece: 'Stück',
      share: 'Fehlerfrei',
      minutes: 'Zeit',
      repetitions: 'Durchgänge',
      tempo: 'Tempo',
      lastDay: 'Zuletzt',
      slipped: 'Wieder unsicher',
    },
    time: (hours, minutes) => (hours === 0 ? `${minutes} min` : `${hours} h ${minutes} min`),
    tempo: (middle, least, most) => (least === most ? middle : `${middle}, ${least} bis ${most}`),
  },
  roster: {
    summary: (n) => `${counted(n, 'Name', 'Namen')}: umbenennen, entfernen`,
    from: (file, day) => `aus ${file}, übernommen am ${day}`,
    teacherPage: 'Seite für die Lehrkraft',
    rename: 'Umbenennen',
    renameOne: (name) => `${name} umbenennen`,
    remove: 'Entfernen',
    removeOne: (name) => `${name} entfernen`,
    sure: (name) =>
      `${name} samt Aufzeichnung von diesem Gerät entfernen? Die Datei, die Ihnen geschickt wurde, bleibt, wo sie ist, und bringt alles zurück.`,
    keep: 'Behalten',
    name: 'Name',
    leave: 'So lassen',
  },
  notHere: {
    title: 'Nicht hier',
    advice: (link) => [
      'Die Aufzeichnung, die diese Adresse nennt, ist nicht auf diesem Gerät. Gehen Sie zu den ',
      link('Schülerinnen und Schülern'),
      ' und öffnen Sie dort die Datei, die Ihnen geschickt wurde.',
    ],
  },
  incoming: {
    stop: 'Anhalten',
    about: ({ repetitions, days, pieces, span }) =>
      `${counted(repetitions, 'Durchgang', 'Durchgänge')} an ${counted(days, 'Tag', 'Tagen')}${span ? `, ${span.join(' bis ')}` : ''}, aus ${counted(pieces, 'Stück', 'Stücken')}.`,
    older: (name) => `Eine ältere Datei von ${name} enthält Sitzungen aus dieser.`,
    own: (review) => [
      'Diese Datei enthält Sitzungen Ihrer eigenen Aufzeichnung. Hier geöffnet, stünden sie als die eines anderen Menschen da; Ihr eigenes Üben steht auf der Seite ',
      review('Rückblick'),
      '.',
    ],
    unread: (n) =>
      n === 1
        ? 'Eine Zeile ist nicht lesbar und wird ausgelassen; wenn es darauf ankommt, lassen Sie sich die Datei noch einmal schicken.'
        : `${n} Zeilen sind nicht lesbar und werden ausgelassen; wenn es darauf ankommt, lassen Sie sich die Datei noch einmal schicken.`,
    whose: 'Von wem ist die Aufzeichnung?',
    newOne: 'neu hier',
    addTo: (name) => `${name}: hinzufügen, was noch nicht hier ist`,
    name: 'Name der Schülerin oder des Schülers',
    take: 'Neben Ihrer öffnen',
    leave: 'Nicht öffnen',
    waiting: (n) => `dann noch ${counted(n, 'Datei', 'Dateien')}`,
    next: 'Weiter zur nächsten Datei',
    came: (strong, student, added, known) => [
      strong(grouped(added)),
      ` ${added === 1 ? 'Ereignis' : 'Ereignisse'} von `,
      student,
      ` übernommen, ${grouped(known)} ${known === 1 ? 'war' : 'waren'} schon hier. Ihre eigene Aufzeichnung ist, wie sie war.`,
    ],
    taken: (n) =>
      `${counted(n, 'Ereignis trug', 'Ereignisse trugen')} den Namen eines anderen aus derselben Aufzeichnung; behalten ${n === 1 ? 'wurde jenes' : 'wurden jene'}.`,
  },
}
