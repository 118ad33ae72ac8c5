import type { ReviewText } from '@/text/review'
import { counted } from './counted'
import { capital } from './numberWords'

const steps = { day: 'Tag', week: 'Woche', month: 'Monat' }

type Step = keyof typeof steps

/** 'am 3. Mai 2026', 'in der Woche ab dem 4. Mai 2026', 'im Mai 2026' */
const inPeriod = (step: Step, date: string): string => {
  switch (step) {
    case 'day':
      return `am ${date}`
    case 'week':
      return `in der Woche ab dem ${date}`
    case 'month':
      return `im ${date}`
  }
}

const span = (step: Step, first: string, last: string): string => {
  switch (step) {
    case 'day':
      return `vom ${first} bis zum ${last}`
    case 'week':
      return `von der Woche ab dem ${first} bis zu der ab dem ${last}`
    case 'month':
      return `von ${first} bis ${last}`
  }
}

const inBars = (n: number): string => (n === 1 ? 'in 1 Takt' : `in ${n} Takten`)

export const review: ReviewText = {
  title: 'Rückblick',
  ofPiece: 'Rückblick auf ein Stück',
  theirs: (name) => `Aufzeichnung von ${name}, nur zum Lesen`,
  printedOn: (date) => `Rückblick vom ${date}, Passagework`,
  head: {
    allPieces: 'Alle Stücke',
    toPiece: 'Zum Stück',
    record: 'Die Aufzeichnung als Datei',
    teacher: 'Seite für die Lehrkraft',
    students: 'Schülerinnen und Schüler',
    repetitions: 'Durchgänge',
    print: 'Drucken',
  },
  keys: {
    teacher: 'Seite für die Lehrkraft',
    students: 'Schülerinnen und Schüler',
    repetitions: 'Durchgänge',
    print: 'drucken',
    numbers: 'wie oft, in Zahlen',
    seldom: 'Zeichen für das, was selten vorkam',
    whole: 'das ganze Stück oder nur die Zeilen mit Zeichen',
  },
  nothing: (link) => [
    'Hier ist noch nichts geübt. Wählen Sie eines der ',
    link('pieces', 'Stücke'),
    ' und darin einen kleinen Ausschnitt, oder nehmen Sie eine Aufzeichnung herein, die ',
    link('journal', 'als Datei gesichert'),
    ' wurde.',
  ],
  noScore: (pieces) => [
    'Die Noten dieses Stücks sind nicht auf diesem Gerät, nur die Aufzeichnung des Übens. Bringen Sie seine Datei auf der Seite ',
    pieces('Stücke'),
    ' herein, dann findet die Aufzeichnung zu ihr.',
  ],
  columns: {
    bar: 'Takt',
    brokenOff: 'Abgebrochen',
    chunk: 'Ausschnitt',
    clean: 'Fehlerfrei',
    cleanShare: 'Fehlerfreier Anteil',
    day: 'Tag',
    days: 'Tage',
    daysSince: 'Tage seither',
    fastest: 'Bis',
    flaw: 'Fehler',
    flawed: 'Fehlerhaft',
    flaws: 'Fehler',
    heldCold: 'kalt gehalten',
    last: 'Zuletzt',
    longestStreak: 'Längste Serie',
    minutes: 'Minuten',
    month: 'Monat',
    notes: 'An welchen Tönen',
    piece: 'Stück',
    played: 'Gespielt',
    slowest: 'Von',
    tempo: 'Tempo',
    afterwards: 'Danach',
    times: 'Wie oft',
    trend: 'Verlauf',
    verdict: 'Ergebnis',
    week: 'Woche ab',
    written: 'Notiert',
  },
  showAll: (n) => `Alle ${n} zeigen`,
  share: {
    title: 'Fehlerfreier Anteil',
    clean: (share) => [share, ' fehlerfrei'],
    within: (low, high) => `in 95 von 100 Fällen zwischen ${low} und ${high} %; `,
    tally: (clean, flawed, brokenOff) => [
      clean,
      ' fehlerfrei, ',
      flawed,
      ' fehlerhaft; ',
      brokenOff,
      ' abgebrochen',
    ],
    range: (low, high) => `${low} bis ${high}`,
    none: 'Noch kein fehlerfreier Anteil',
    onlyBrokenOff: (n) => [n, ' abgebrochen'],
    whyNone:
      'Bisher kam kein Durchgang bis zum Ende; also konnte keiner fehlerfrei oder fehlerhaft sein. Ein kleinerer Ausschnitt oder ein langsameres Tempo ist leichter zu Ende zu bringen.',
  },
  trend: {
    tooFew: 'Noch zu wenige Tage, um zu sagen, ob sich der fehlerfreie Anteil ändert.',
    better: (after, before, low, high) => [
      after,
      ' fehlerfrei an den letzten 28 Übetagen, ',
      before,
      ` an denen davor: besser, um ${low} bis ${high} von 100 Durchgängen.`,
    ],
    worse: (after, before, low, high) => [
      after,
      ' fehlerfrei an den letzten 28 Übetagen, ',
      before,
      ` an denen davor: schlechter, um ${low} bis ${high} von 100 Durchgängen.`,
    ],
    unclear: (after, before, low, high) => [
      after,
      ' fehlerfrei an den letzten 28 Übetagen, ',
      before,
      ` an denen davor: Ob sich etwas geändert hat, ist unklar (zwischen ${low} und ${high} von 100 Durchgängen).`,
    ],
  },
  shares: {
    showBy: 'Zeigen nach',
    by: (step) => ({ day: 'nach Tagen', week: 'nach Wochen', month: 'nach Monaten' })[step],
    brokenOff: 'abgebrochen',
    key: 'Ein Punkt ist der fehlerfreie Anteil, die Linie durch ihn zeigt, wo er in 95 von 100 Fällen liegt: lang, wo wenig gespielt wurde. Abgebrochenes ist für sich gezählt, darunter.',
    none: 'Noch kam kein Durchgang bis zum Ende.',
    only: (step, share, date) => [
      `Bisher nur ${step === 'week' ? 'eine' : 'ein'} ${steps[step]}: `,
      share,
      ` fehlerfrei ${inPeriod(step, date)}.`,
    ],
    within: (share, step, date) => `${share} ${inPeriod(step, date)}`,
    all: (step, first, last, lowest, highest, latest) => [
      `Fehlerfreier Anteil ${span(step, first, last)}: am niedrigsten `,
      lowest,
      ', am höchsten ',
      highest,
      ', zuletzt ',
      latest,
      '.',
    ],
  },
  asTable: 'Die Zahlen als Tabelle',
  pieces: {
    title: 'Stück für Stück',
    elsewhere: ' (nicht auf diesem Gerät)',
  },
  chunks: {
    ofAll: 'Wie weit die Ausschnitte sind',
    each: 'Wie weit jeder Ausschnitt ist',
    trend:
      'Verlauf: ob die Fehler mit dem Üben weniger werden, seit das Tempo zuletzt höher war als je zuvor.',
    brokenOff: 'abgebrochen',
    tempo: (rung, goal) => [rung, ` von ${goal}`],
    tooFewDays: 'zu wenige Tage',
    curves: {
      improving: 'weniger Fehler',
      worsening: 'mehr Fehler',
      plateau: 'unverändert',
      unclear: 'unklar',
    },
    some: 'ein Ausschnitt',
    beats: (bar, from, to) => `Takt ${bar}, Schläge ${from}–${to}`,
    stretch: (from, to) => `${from} bis ${to}`,
  },
  states: {
    names: {
      slipped: 'wieder unsicher',
      secure: 'sicher',
      kept: 'behalten',
      practised: 'geübt',
    },
    captions: {
      slipped: 'Wieder unsicher: war behalten und gelang kalt nicht mehr',
      secure: 'Sicher: an einem späteren Tag kalt zu bestätigen',
      kept: 'Behalten: an einem späteren Tag kalt bestätigt',
      practised: 'Geübt',
    },
    all: (chunks, n, of) => [
      n,
      chunks === 1 ? ' Ausschnitt: ' : ' Ausschnitte: ',
      of.slipped,
      ' wieder unsicher, ',
      of.secure,
      ' sicher, ',
      of.kept,
      ' behalten, ',
      of.practised,
      ' geübt.',
    ],
  },
  rungs: {
    title: 'Tempo und Serien, Tag für Tag',
    chunk: 'Ausschnitt',
    streak: 'längste Serie',
    key: 'Eine Linie zeigt die Tempi eines Tages, der Strich quer dazu das letzte; die Balken darunter sind die längsten Serien.',
    nothing: (chunk) => `${capital(chunk)}: noch nichts gespielt.`,
    oneDay: (chunk, day, low, high, goal, streak) => [
      `${capital(chunk)}: Tempo am ${day} von `,
      low,
      ' bis ',
      high,
      `${goal === undefined ? '' : `, das Ziel ist ${goal}`}; längste Serie `,
      streak,
      '.',
    ],
    days: (chunk, first, last, goal, streak) => [
      `${capital(chunk)}: Tempo von `,
      first.rung,
      ` am Ende des ${first.day} bis `,
      last.rung,
      ` am Ende des ${last.day}${goal === undefined ? '' : `, das Ziel ist ${goal}`}; längste Serie `,
      streak,
      '.',
    ],
  },
  where: {
    title: 'Wo die Fehler sind',
    all: (_, n, bars) => [n, ` Fehler ${inBars(bars)}.`],
    most: (_, n, bars, bar, most) => [
      n,
      ` Fehler ${inBars(bars)}, die meisten in Takt ${bar}: `,
      most,
      '.',
    ],
    barByBar: 'Takt für Takt, die mit den meisten Fehlern zuerst',
    showNotes: (bars) =>
      bars === 1 ? 'Jeden Ton dieses Taktes zeigen' : `Jeden Ton aller ${bars} Takte zeigen`,
    flaw: (flaw, times) => `${flaw}, ${times}`,
  },
  music: {
    show: 'Zeigen',
    all: 'alle Arten von Fehlern',
    numbers: 'wie oft, in Zahlen',
    seldom: 'auch, was selten vorkam',
    whole: 'auch Zeilen ohne Zeichen',
    noFlaw: 'kein Fehler',
    flaws: (times, most) => `${times} Fehler, vor allem: ${most}`,
  },
  kinds: { title: 'Welche Art von Fehlern' },
  keysPlayed: { title: 'Welche Taste statt welcher gespielt wurde' },
  cold: {
    title: 'Kalt, an einem späteren Tag',
    all: (checks, n, held, failed, brokenOff) => [
      n,
      ` ${checks === 1 ? 'Kaltprobe' : 'Kaltproben'} von Sicherem oder Behaltenem: `,
      held,
      ' gehalten, ',
      failed,
      ' nicht gehalten; ',
      brokenOff,
      ' abgebrochen.',
    ],
    share: (share, low, high) => [
      ' ',
      share,
      ` gehalten, in 95 von 100 Fällen zwischen ${low} und ${high} %.`,
    ],
    heldOf: (held, of) => `${held} von ${of}`,
    latest: (shown, all) => [`Die letzten ${shown} von `, all, '.'],
  },
  overruled: {
    yours: 'Was Sie anders entschieden haben',
    theirs: (name) => `Was ${name} anders entschieden hat`,
  },
  amount: (repetitions, shown, time, days) =>
    `${shown} ${repetitions === 1 ? 'Durchgang' : 'Durchgänge'}, ${time}, an ${counted(days, 'Tag', 'Tagen')}.`,
  time: {
    little: 'weniger als eine Minute',
    hours: (n) => counted(n, 'Stunde', 'Stunden'),
    minutes: (n) => counted(n, 'Minute', 'Minuten'),
  },
}
