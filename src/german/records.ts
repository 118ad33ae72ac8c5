import { grouped } from '@/text/numbers'
import type { RecordsText } from '@/text/records'
import { counted } from './counted'

const many = (n: number, one: string, several: string): string =>
  `${grouped(n)} ${n === 1 ? one : several}`
const repetitions = (n: number): string => many(n, 'Durchgang', 'Durchgänge')

export const records: RecordsText = {
  title: 'Die Aufzeichnung',
  intro:
    'Alles, was Sie üben, wird auf diesem Gerät aufgezeichnet und nirgends sonst. Sichern Sie es hin und wieder als Datei, und verwahren Sie die Datei an einem anderen Ort: Auf einem neuen Gerät bringt sie alles zurück.',
  keys: {
    save: 'die ganze Aufzeichnung sichern',
    table: 'eine Tabelle der Durchgänge sichern',
    choose: 'eine Aufzeichnung zum Übernehmen wählen',
  },
  review: (link) => [link('Rückblick'), ' auf das, was aufgezeichnet ist.'],
  moment: (day, time) => `${day} um ${time} Uhr`,
  save: {
    title: 'Sichern',
    what: (slanted) => [
      'Die ganze Aufzeichnung mit jeder gespielten Taste, Ihren Stücken und Ihren Angaben zu Händen und schweren Stellen, als JSON Lines (',
      slanted('.jsonl'),
      '): die Datei zum Aufheben. Die Durchgänge als Tabelle (',
      slanted('.csv'),
      '): für die Tabellenkalkulation; sie lässt sich nicht wieder übernehmen.',
    ],
    whole: 'Die ganze Aufzeichnung sichern',
    table: 'Eine Tabelle der Durchgänge sichern',
    tableFailed: (why) => `Die Tabelle ließ sich nicht sichern. ${why}`,
    never: 'Bisher nicht als Datei gesichert.',
    last: (moment) => `Zuletzt gesichert am ${moment}.`,
    since: (moment, n) =>
      n === 0
        ? `Zuletzt gesichert am ${moment}, seither nichts Neues.`
        : `Zuletzt gesichert am ${moment}, seither ${repetitions(n)}.`,
    unsavedAlone: (why) =>
      `${why} Die gesicherte Datei enthält, was nicht in der Datenbank steht: Übernehmen Sie sie, sobald diese wieder zu lesen ist.`,
  },
  reminder: {
    again: (moment, n) =>
      `Die Aufzeichnung wurde zuletzt am ${moment} gesichert; ${repetitions(n)} seither ${n === 1 ? 'steht' : 'stehen'} nur auf diesem Gerät.`,
    first: (n) =>
      `${repetitions(n)} ${n === 1 ? 'steht' : 'stehen'} nur auf diesem Gerät. Sichern Sie die Aufzeichnung hin und wieder als Datei, und verwahren Sie sie an einem anderen Ort.`,
  },
  browser: {
    title: 'In diesem Browser',
    ask: 'Den Browser bitten, sie zu behalten',
    room: (used, free) => `Passagework belegt hier insgesamt ${used}; Platz ist noch für ${free}.`,
    underOne: 'weniger als 1 MB',
  },
  folder: {
    title: 'Eine zweite Kopie in einem Ordner',
    choose: 'Ordner wählen …',
    chooseOther: 'Anderen Ordner wählen …',
    allow: 'Schreiben erlauben',
    write: 'Jetzt schreiben',
    stop: 'Beenden, die Dateien bleiben dort',
    unsupported:
      'Dieser Browser lässt keine Seite in einen Ordner schreiben. Sichern Sie stattdessen die Aufzeichnung hin und wieder als Datei.',
    none: 'Wählen Sie einen Ordner, vielleicht einen, der von selbst auf einen anderen Datenträger oder ein anderes Gerät kopiert wird. Nach jeder Sitzung wird dorthin geschrieben, was neu ist: eine Datei für jeden Monat und eine für die Stücke, von der Art der gesicherten Aufzeichnung.',
    asks: (name) =>
      `Der Browser will noch einmal gefragt werden, ehe diese Seite in „${name}“ schreiben darf.`,
    kept: (name) => `Die Kopie steht in „${name}“.`,
    writing: (name, month, of) => `Es wird in „${name}“ geschrieben: Monat ${month} von ${of}.`,
    notWritten: 'Dort steht noch nichts.',
    written: (moment) => `Zuletzt geschrieben am ${moment}.`,
    elsewhere: (n) =>
      `Die Dateien dort enthalten ${counted(n, 'Ereignis, das', 'Ereignisse, die')} in der Aufzeichnung hier ${n === 1 ? 'fehlt' : 'fehlen'}; dort ${n === 1 ? 'bleibt es' : 'bleiben sie'} stehen. Übernehmen Sie die Dateien unten, um auch das hier zu haben.`,
    problems: {
      absent:
        'Der Ordner ist nicht da: Er wurde verschoben, umbenannt oder entfernt, oder sein Datenträger ist nicht angeschlossen. Holen Sie ihn zurück und schreiben Sie noch einmal, oder wählen Sie einen anderen Ordner. Die Aufzeichnung im Browser ist unberührt.',
      refused:
        'Der Browser lässt diese Seite nicht in den Ordner schreiben. Wählen Sie ihn noch einmal und erlauben Sie es. Die Aufzeichnung im Browser ist unberührt.',
      full: 'Auf dem Datenträger des Ordners ist kein Platz mehr. Schaffen Sie Platz und schreiben Sie noch einmal. Die Datei dort ist wie zuvor.',
      held: 'Ein anderes Programm oder Fenster hält die Datei im Ordner fest. Schließen Sie sie dort und schreiben Sie noch einmal. Die Datei ist wie zuvor.',
      other: (message) =>
        `In den Ordner ließ sich nicht schreiben: ${message} Schreiben Sie noch einmal; wenn das nicht hilft, wählen Sie den Ordner neu. Die Aufzeichnung im Browser ist unberührt.`,
      wrongSize: (file, has, wanted) =>
        `${file} hat nach dem Schreiben ${has} Byte, nicht ${wanted}.`,
    },
  },
  takeIn: {
    title: 'Eine gesicherte Aufzeichnung übernehmen',
    what: 'Von einem anderen Gerät oder eine, die hier gesichert wurde; aus einem Ordner alle Dateien auf einmal. Was schon hier ist, bleibt, wie es ist; dieselbe Datei darf also zweimal kommen. Stücke kommen mit ihren Dateien; beim Titel und bei Ihren Angaben zu Händen und schweren Stellen gilt das Neueste.',
    choose: 'Aufzeichnung wählen …',
    file: 'Datei einer Aufzeichnung',
  },
  incoming: {
    several: (n) => `${n} Dateien`,
    reading: (file, done) => `${file} wird gelesen: ${done}`,
    taking: (file, done) => `${file} wird übernommen: ${done}`,
    cancel: 'Abbrechen',
    leave: 'Nicht übernehmen',
    close: 'Schließen',
    unread: (n) =>
      n === 1
        ? 'Eine Zeile ist nicht lesbar und wird ausgelassen:'
        : `${n} Zeilen sind nicht lesbar und werden ausgelassen:`,
    line: (line, file, why) => `Zeile ${line}${file === undefined ? '' : ` von ${file}`}: ${why}`,
    more: (n) => `und ${n} weitere.`,
    problems: {
      tooLarge: 'Diese Datei ist größer als 400 MB und hier nicht am Stück zu lesen.',
      noText:
        'Das ist keine Aufzeichnung von Passagework: Es ist kein Text. Wählen Sie die .jsonl-Datei, die hier gesichert wurde.',
      noRecord: (line, why) =>
        `Das ist keine Aufzeichnung von Passagework: Keine Zeile gehört zu einer. Zeile ${line}: ${why} Wählen Sie die .jsonl-Datei, die hier gesichert wurde.`,
      empty: 'Diese Datei ist leer. Wählen Sie die .jsonl-Datei, die hier gesichert wurde.',
      nothingChanged: (why) => `${why} Nichts wurde geändert.`,
      half: (why) => `${why} Was schon übernommen war, bleibt; dieselbe Datei bringt den Rest.`,
    },
  },
  preview: {
    events: 'Ereignisse in der Datei',
    known: 'Schon hier',
    fresh: 'Neu',
    newOnes: ({ events, repetitions: n, entries }) =>
      [
        grouped(events),
        ...(events > 0 ? [`, darunter ${repetitions(n)}`] : []),
        ...(entries > 0 ? [` und ${many(entries, 'Eintrag', 'Einträge')} des Notizbuchs`] : []),
      ].join(''),
    days: 'Tage',
    span: (days, first, last) =>
      `${grouped(days)}, ${first === last ? first : `${first} bis ${last}`}`,
    pieces: 'Stücke',
    otherPieces: (n, named) =>
      named > 0 ? counted(n, 'weiteres', 'weitere') : counted(n, 'Stück', 'Stücke'),
    kept: {
      pieceFile: 'Dateien von Stücken',
      pieceHands: 'Geänderte Hände',
      pieceSpots: 'Ihre Angaben zu schweren Stellen',
    },
    ofPieces: ({ fresh, newer, known }) =>
      [
        ...(fresh > 0 ? [`${counted(fresh, 'Stück', 'Stücke')}, neu hier`] : []),
        ...(newer > 0 ? [`${counted(newer, 'Stück', 'Stücke')}, neuer als hier`] : []),
        ...(known > 0 ? [`${counted(known, 'Stück', 'Stücke')}, schon hier`] : []),
      ].join('; '),
    takeEvents: (n) => `${many(n, 'Ereignis', 'Ereignisse')} übernehmen`,
    takePieces: 'Übernehmen',
    allHere: 'Alles davon ist schon hier.',
  },
  done: {
    came: (strong, added, known, file) => [
      strong(grouped(added)),
      ` ${added === 1 ? 'Ereignis' : 'Ereignisse'} aus ${file} übernommen, ${grouped(known)} ${known === 1 ? 'war' : 'waren'} schon hier.`,
    ],
    taken: (n) =>
      `${counted(n, 'Ereignis trug', 'Ereignisse trugen')} den Namen eines anderen, das hier steht; behalten ${n === 1 ? 'wurde jenes' : 'wurden jene'}.`,
    pieces: (n) => `${counted(n, 'Stück kam', 'Stücke kamen')} mit.`,
  },
}
