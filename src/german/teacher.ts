import { grouped } from '@/text/numbers'
import type { TeacherText } from '@/text/teacher'
import { counted } from './counted'
import { often } from './numberWords'

const standings: TeacherText['chunks']['standings'] = {
  slipped: 'wieder unsicher',
  practised: 'noch nicht sicher',
  secure: 'sicher',
  kept: 'behalten',
}
const flaws = (n: number): string => counted(n, 'Fehler', 'Fehler')

export const teacher: TeacherText = {
  tools: {
    review: 'Rückblick',
    students: 'Schülerinnen und Schüler',
    about: 'Woche oder Stück',
    aWeek: 'Eine Woche',
    aPiece: 'Ein Stück',
    week: (monday) => `die Woche vom ${monday}`,
    untitled: 'ein Stück ohne Titel',
    name: 'Ihr Name auf der Seite',
    remarks: 'Fragen und Bemerkungen',
    print: 'Drucken',
    save: 'Als Datei zum Verschicken sichern',
  },
  keys: {
    print: 'drucken',
    save: 'als Datei zum Verschicken sichern',
    before: 'die Woche davor',
    after: 'die Woche danach',
  },
  daysOfMonth: (from, to) => `${from}. bis ${to}`,
  days: (from, to) => `${from} bis ${to}`,
  titles: {
    week: (days) => `Die Woche vom ${days}`,
    aWeek: 'Eine Woche',
    aPiece: 'Ein Stück',
    untitled: 'Ein Stück ohne Titel',
  },
  sheet: {
    kind: 'Für die Lehrkraft',
    practisedFrom: (days, isOneDay) => `Geübt ${isOneDay ? 'am' : 'vom'} ${days}.`,
    nothing: 'In dieser Zeit wurde nichts geübt.',
    share: (percent, low, high) => [
      percent,
      ` von allem, was zu Ende gespielt wurde, waren fehlerfrei (in 95 von 100 Fällen zwischen ${low} und ${high}\u00a0%).`,
    ],
    tally: (clean, flawed, brokenOff) =>
      `${grouped(clean)} fehlerfrei, ${grouped(flawed)} fehlerhaft; ${grouped(brokenOff)} abgebrochen.`,
    practised: (time, days, repetitions) =>
      `${time} an ${counted(days, 'Tag', 'Tagen')}, ${grouped(repetitions)} ${repetitions === 1 ? 'Durchgang' : 'Durchgänge'}`,
    piece: (share, brokenOff, practised) =>
      `${share === undefined ? '' : `${share} fehlerfrei, `}${grouped(brokenOff)} abgebrochen; ${practised}.`,
    alsoPractised: (pieces) => `Außerdem geübt: ${pieces.join('; ')}.`,
    also: (title, practised) => `${title ?? 'ein Stück'} (${practised})`,
    overruled: (strong, what) => [strong('Anders entschieden als geraten:'), ` ${what}.`],
    overruledTimes: (what, times) => (times === 1 ? what : `${what}, ${often(times)}`),
    remarks: 'Fragen und Bemerkungen',
    lesson: 'In der Stunde',
  },
  places: {
    title: 'Schwere Stellen',
    bar: (bar, n, standing) => `Takt ${bar}: ${flaws(n)}, ${standings[standing]}`,
    chunk: (chunk, standing, n, told) => [chunk, `, ${standings[standing]}, ${flaws(n)}: ${told}.`],
    flawAt: (key, flaw) => (key === undefined ? flaw : `${key}: ${flaw}`),
  },
  chunks: {
    columns: {
      chunk: 'Ausschnitt',
      stands: 'Stand',
      share: 'Fehlerfrei',
      repetitions: 'Durchgänge',
      brokenOff: 'Abgebrochen',
      tempo: 'Tempo',
      goal: 'Ziel',
    },
    standings,
    counted: (n, standing) => `${n} ${standings[standing]}`,
    more: (n, counts) =>
      `und ${counted(n, 'weiterer Ausschnitt', 'weitere Ausschnitte')}: ${counts.join(', ')}.`,
  },
  changes: {
    slipped: 'Wieder unsicher, kalt misslungen',
    kept: 'Behalten, an einem späteren Tag kalt fehlerfrei',
    secure: 'Sicher geworden im Zieltempo',
    others: (n) => `und ${counted(n, 'weiterer', 'weitere')}`,
  },
  howToRead:
    'Fehlerfrei: kein Fehler nach dem gewählten Maßstab (die richtigen Tasten der Reihe nach; dazu kein Stocken; dazu ein gleichmäßiger Puls). Nach einem fehlerfreien Anteil steht, wo er in 95 von 100 Fällen liegt. Sicher: eine Serie fehlerfreier Durchgänge im Zieltempo; behalten: Auch der erste an einem späteren Tag war fehlerfrei; wieder unsicher: Er war es nicht. Tempi sind Schläge in der Minute: das zuletzt gespielte und das Ziel.',
  legend: (marks) => `Zeichen: ${marks.join('; ')}.`,
  marks: {
    right: 'ein Häkchen, richtig',
    wrong:
      'ein Ring, andere Taste angeschlagen (der kleine Kopf ist die am häufigsten angeschlagene)',
    missing: 'ein gepunkteter Ring, der Ton fehlte',
    extra: 'ein Kreuz, eine Taste zu viel',
    repeated: 'ein Kreuz neben der Note, doppelt angeschlagen',
    order: 'das Zeichen für Vertauschen, zwei Töne vertauscht',
    restart: 'ein Haken, zurückgegangen',
    hesitation: 'zwei Striche, gestockt',
    early: 'ein Pfeil nach links, zu früh',
    late: 'ein Pfeil nach rechts, zu spät',
    uneven: 'eine Welle, ungleichmäßig',
    spread: 'eine Wellenlinie, der Akkord nicht zusammen',
    drift: 'eine schräge Linie, das Tempo verändert sich',
  },
}
