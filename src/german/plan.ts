import type { PlanText } from '@/text/plan'
import { counted } from './counted'
import { capital } from './numberWords'

const stateWords: PlanText['states'] = {
  kept: 'behalten',
  secure: 'sicher',
  slipped: 'wieder unsicher',
  practised: 'geübt',
  untouched: 'noch nicht begonnen',
}

const itemWords: PlanText['items'] = {
  warmUp: 'Einspielen',
  coldCheck: 'Kaltprobe',
  problemSpot: 'Schwere Stelle',
  newGroup: 'Passage',
  join: 'Verbindung',
  runThrough: 'Durchspielen',
  rest: 'Pause',
}

/** Within a sentence: a noun keeps its capital, an adjective before it does not. */
const inSentence = (item: keyof PlanText['items']): string =>
  item === 'problemSpot' ? 'schwere Stelle' : itemWords[item]

const minuteWords = (minutes: number): string =>
  minutes === 1 ? 'eine Minute' : `${minutes} Minuten`

const since = (days: number): string => (days === 1 ? 'gestern' : `vor ${days} Tagen`)

const aDayAgo = (days: number): string => (days === 1 ? 'seit gestern' : `seit ${days} Tagen`)

export const plan: PlanText = {
  today: {
    title: 'Heute',
    date: (weekday, date) => `${weekday}, ${date}`,
    reading: 'Die Aufzeichnung wird durchgesehen …',
    start: 'Beginnen',
    another: 'Andere Auswahl',
    list: 'Was zu spielen ist',
    making: 'Der Plan entsteht …',
    lowered:
      'Zuletzt war weniger als die Hälfte fehlerfrei: heute langsamer und leichter, nichts Neues.',
    noPiece: 'Ein Stück auswählen: seine schwerste Stelle kommt zuerst.',
    allKept:
      'Alles ist behalten, und nichts ist heute fällig: Spielen Sie es um seiner selbst willen, oder nehmen Sie etwas Neues vor.',
    nothingDue: 'Heute ist nichts fällig.',
    counts: ({ minutes, places, checks, runs, rests }) => {
      const parts = [
        ...(places > 0 ? [`${counted(places, 'Stelle', 'Stellen')} im Wechsel`] : []),
        ...(checks > 0 ? [counted(checks, 'Kaltprobe', 'Kaltproben')] : []),
        ...(runs > 0 ? ['zum Schluss einmal durchspielen'] : []),
        ...(rests > 0 ? [counted(rests, 'Pause', 'Pausen')] : []),
      ]
      return `${capital(minuteWords(minutes))}: ${parts.join(', ')}.`
    },
    spare: 'Mehr ist nicht zu tun: Der Rest gehört Ihnen, oder nehmen Sie ein Stück dazu.',
    isOn: (number, of) => `Punkt ${number} von ${of} ist an der Reihe.`,
    goOn: 'Weiter',
    toReview: 'Rückblick auf die Sitzung',
    planAnew: 'Neu planen',
    rest: 'Pause: aufstehen, Hände von den Tasten.',
    noneDone: 'Vom Plan für heute wurde nichts gespielt; alles kommt an einem anderen Tag wieder.',
    allDone: 'Der Plan für heute ist erfüllt.',
    someDone: (done, of) =>
      `${done} von ${of} erledigt; das Übrige kommt an einem anderen Tag wieder.`,
    isOnOfPlan: (number, of) => `Vom Plan für heute ist Punkt ${number} von ${of} an der Reihe.`,
    goOnWithIt: 'Damit weitermachen',
    open: 'Plan für heute',
    goOnWith: 'Weiter im Plan für heute',
    failed: (why) => `Der Plan konnte nicht gemacht werden: ${why}`,
    notHere: 'Dieses Stück ist nicht auf diesem Rechner: die Datei noch einmal einlesen.',
  },
  choice: {
    minutesToday: 'Minuten heute',
    minutes: (minutes) => [minutes, ' Minuten'],
    less: (minutes) => `${minutes} Minuten weniger`,
    more: (minutes) => `${minutes} Minuten mehr`,
    pieces: 'Stücke',
    others: (n) => counted(n, 'weiteres', 'weitere'),
    laidAside: '(beiseitegelegt)',
    main: '(Hauptstück)',
  },
  keys: {
    start: 'beginnen',
    goOn: 'weiter',
    more: 'fünf Minuten mehr',
    less: 'fünf Minuten weniger',
    another: 'eine andere Auswahl von gleich Dringendem',
    toReview: 'der Rückblick auf die Sitzung',
    planAnew: 'neu planen',
    today: 'der Plan für heute',
    piece: 'die Seite des Stücks',
  },
  items: itemWords,
  outcomes: { done: ' · erledigt', begun: ' · begonnen', left: ' · ein andermal' },
  onDesk: (count, item) => [count, ` heute, ${inSentence(item)}`],
  minuteSign: 'min',
  inMinutes: (minutes) => `${minutes} min`,
  countOf: (number, of) => `${number} von ${of}`,
  onceThrough: 'einmal durch',
  minutesLeft: (minutes) => `noch ${minutes} min`,
  itemLine: (item, title, where) => `${inSentence(item)}, ${title}, ${where}`,
  restLine: (minutes) => (minutes === 1 ? 'eine Minute Pause' : `${minutes} Minuten Pause`),
  reasons: {
    warmUpKnown: 'Zum Einspielen: was Sie können, langsam und mit offenem Ohr.',
    warmUpEasy: 'Zum Einspielen: eine leichte Stelle, langsam, wenige Töne.',
    checkWrong: 'Beim Durchspielen ging es schief: einmal kalt.',
    checkSlipped: (days) =>
      `${capital(since(days))} wieder unsicher geworden: einmal kalt, ob es wieder da ist.`,
    checkKept: (days) => `Zuletzt ${since(days)} bestätigt: einmal kalt.`,
    checkSecure: (days) => `Sicher ${aDayAgo(days)}: einmal kalt, ob es behalten ist.`,
    lowered: (first) =>
      `Zuletzt war weniger als die Hälfte fehlerfrei: langsamer, zuerst ${first}.`,
    slipped: 'Wieder unsicher: noch einmal das Ganze, aus langsamerem Tempo.',
    join: 'Beide Passagen sind sicher: jetzt aus der einen in die andere.',
    next: (exercise, hard) =>
      hard === undefined ? `Als Nächstes: ${exercise}.` : `Als Nächstes: ${exercise}; ${hard}.`,
    fresh: (exercise, hard) =>
      hard === undefined ? `Neu: zuerst ${exercise}.` : `Neu: zuerst ${exercise}; ${hard}.`,
    wentWrong: 'Beim Durchspielen ging es schief.',
    theWhole: 'das Ganze',
    hardSpot: 'eine schwere Stelle',
    runThrough: 'Einmal von Anfang bis Ende, ohne anzuhalten; hören, woran morgen zu arbeiten ist.',
  },
  weeks: {
    title: 'Die Wochen',
    layingOut: 'Das Stück wird eingeteilt …',
    howLong: 'Wie lange',
    order: 'In dieser Reihenfolge',
    keptAll: 'Von Anfang bis Ende behalten.',
    span: (least, most) =>
      least === most ? `etwa ${counted(least, 'Woche', 'Wochen')}` : `${least} bis ${most} Wochen`,
    years: (least, most) =>
      least === most ? `etwa ${counted(least, 'Jahr', 'Jahre')}` : `${least} bis ${most} Jahre`,
    left: (weeks, goal, work, repetitions) => [
      weeks,
      `, bis es von Anfang bis Ende behalten ist (Zieltempo: ${goal}): etwa ${work} Arbeit, ${repetitions} Durchgänge.`,
    ],
    goal: (beats, of) => `${beats} ${of} in der Minute`,
    minutesADay: 'Minuten am Tag',
    daysAWeek: 'Tage in der Woche',
    asOfLate: (days) => `${days} wie zuletzt`,
    asUsual: (days) => `${days} wie üblich`,
    today: 'Heute',
    piece: 'Das Stück',
    fromRecord: (exercises) =>
      `Geschätzt aus ${counted(exercises, 'Übung', 'Übungen')} Ihrer eigenen Aufzeichnung. Wächst sie, wird neu geschätzt; in neun von zehn Fällen sollte es innerhalb der Spanne liegen.`,
    withoutRecord:
      'Ohne Aufzeichnung geschätzt, nach dem Üblichen; wächst die Aufzeichnung, wird neu geschätzt.',
    takenAsUsual: 'Was als üblich gilt',
    defaults: {
      repetitions:
        'Durchgänge je Stufe für drei fehlerfreie in Folge: im Mittel 4,8 bei acht fehlerfreien von zehn (Erfahrung), mal 1,9, da eine neue Stufe anfangs schlechter geht (Annahme)',
      difficulty:
        'Punkte in der Sekunde, bei denen das gilt: Viertel und Achtel auf benachbarten Tasten',
      slope:
        'doppelt so schwer braucht ein Drittel mehr Durchgänge: Annahme, bis die Aufzeichnung mehr weiß',
      pause: 'Sekunden zwischen zwei Durchgängen: ein Atemzug (Erfahrung)',
    },
  },
  places: { spot: 'Schwere Stelle', passage: 'Passage', join: 'Verbindung' },
  states: stateWords,
  standing: {
    slipped: (work) => `wieder unsicher, noch etwa ${work}`,
    fresh: (work) => `neu, noch etwa ${work}`,
    begun: (work) => `begonnen, noch etwa ${work}`,
    exercises: (done, of, work) => `${done} von ${of} Übungen erledigt, noch etwa ${work}`,
    due: (standing, date) => `${standing}, kalt fällig am ${date}`,
  },
  picture: {
    bars: (bars, counts) =>
      `Von ${counted(bars, 'Takt', 'Takten')}: ${counts.map(([state, n]) => `${n} ${stateWords[state]}`).join(', ')}.`,
    noSpotLeft: 'Keine schwere Stelle ist mehr offen.',
    spots: (open, of) =>
      open < of
        ? `Von ${of} schweren Stellen ${open === 1 ? 'ist noch eine' : `sind noch ${open}`} zu üben.`
        : `${counted(open, 'schwere Stelle', 'schwere Stellen')} zu üben.`,
    workAt: (bars) => `Jetzt an der Reihe: ${bars}.`,
    lanes: {
      spot: 'Schwere Stellen',
      right: 'Rechte Hand',
      left: 'Linke Hand',
      both: 'Zusammen',
      join: 'Verbindungen',
    },
    bar: 'Takt',
    stretch: (place, where, state) => `${place}, ${where}: ${state}`,
    asTable: 'Dasselbe als Tabelle',
    columns: {
      bars: 'Takte',
      what: 'Was',
      right: 'Rechte Hand',
      left: 'Linke Hand',
      both: 'Zusammen',
    },
    row: (bars) => bars,
  },
  honest: {
    label: 'Neben Ihrer Aufzeichnung',
    comparing: (done, of) => `Vergleich mit Ihren Stücken: ${done} von ${of}`,
    failed: (why) => `Ihre Stücke konnten nicht verglichen werden: ${why}`,
    noRecord:
      'Noch ist nichts behalten; es gibt also nichts, womit sich dieses Stück vergleichen ließe.',
    within: 'Dieses Stück ist nicht schwerer als das, was Sie schon behalten haben.',
    above: (distance, times, least, most) => {
      const far = distance === 'farAbove' ? 'weit über' : 'über'
      const months =
        least === most
          ? most === 1
            ? 'einem Monat'
            : `${most} Monaten`
          : `${least} bis ${most} Monaten`
      return `Dieses Stück liegt ${far} dem, was Sie jetzt behalten haben (an der schwersten Stelle ${times}-mal so schwer). Bis dahin wachsen Sie, grob geschätzt, in ${months}; aus den Wochen kann also mehr werden. Anfangen können Sie, wann Sie mögen.`
    },
    ways: 'Auf dem Weg dorthin:',
    andWays: (distance, ways) => `${distance} Auf dem Weg dorthin: ${ways.join('; ')}.`,
    ofThisPiece: (from, to) =>
      `${from === to ? `Takt ${from}` : `Takte ${from} bis ${to}`} dieses Stücks`,
  },
}
