import { plural } from './plural'
import { catalogue } from './text'

type State = 'slipped' | 'secure' | 'kept' | 'practised'
type Step = 'day' | 'week' | 'month'

const steps: Readonly<Record<Step, string>> = { day: 'day', week: 'week', month: 'month' }

const period = (step: Step, date: string): string =>
  step === 'week' ? `the week of ${date}` : date
/** 'on 3 May 2026', 'in May 2026' */
const inPeriod = (step: Step, date: string): string =>
  `${step === 'day' ? 'on' : 'in'} ${period(step, date)}`

/** The review: of a session, a piece, all time. Ranges are in percent, whole. */
export const reviewText = catalogue('review', {
  title: 'Review',
  ofPiece: 'Review of a piece',
  theirs: (name: string) => `${name}’s record, to read only`,
  printedOn: (date: string) => `Review of ${date}, Passagework`,
  head: {
    allPieces: 'All pieces',
    toPiece: 'To the piece',
    record: 'The record as a file',
    teacher: 'Teacher’s page',
    students: 'Students',
    repetitions: 'Repetitions',
    print: 'Print',
  },
  /** What the keys of the page do. */
  keys: {
    teacher: 'teacher’s page',
    students: 'students',
    repetitions: 'repetitions',
    print: 'print',
    numbers: 'how often, in numbers',
    seldom: 'marks of what came seldom',
    whole: 'the whole piece, or the lines with marks',
  },
  nothing: <N>(link: (to: 'pieces' | 'journal', words: string) => N) => [
    'Nothing practised here yet. Choose one of the ',
    link('pieces', 'pieces'),
    ' and one small chunk of it; or take in a record that was ',
    link('journal', 'saved as a file'),
    '.',
  ],
  noScore: <N>(pieces: (words: string) => N) => [
    'The score of this piece is not on this machine, only the record of its practice. Bring its file in on the page ',
    pieces('Pieces'),
    ', and the record will find it.',
  ],
  columns: {
    bar: 'Bar',
    brokenOff: 'Broken off',
    chunk: 'Chunk',
    clean: 'Clean',
    cleanShare: 'Clean share',
    day: 'Day',
    days: 'Days',
    daysSince: 'Days since',
    fastest: 'Fastest',
    flaw: 'Flaw',
    flawed: 'Flawed',
    flaws: 'Flaws',
    heldCold: 'held cold',
    last: 'Last',
    longestStreak: 'Longest streak',
    minutes: 'Minutes',
    month: 'Month',
    notes: 'At which notes',
    piece: 'Piece',
    played: 'Played',
    slowest: 'Slowest',
    tempo: 'Tempo',
    afterwards: 'Then',
    times: 'Times',
    trend: 'Trend',
    verdict: 'Verdict',
    week: 'Week of',
    written: 'Written',
  },
  showAll: (n: number) => `Show all ${n}`,
  share: {
    title: 'Clean share',
    clean: <N>(share: N) => [share, ' clean'],
    within: (low: number, high: number) => `between ${low} and ${high} % in 95 of 100 cases; `,
    tally: <N>(clean: N, flawed: N, brokenOff: N) => [
      clean,
      ' clean, ',
      flawed,
      ' flawed; ',
      brokenOff,
      ' broken off',
    ],
    range: (low: number, high: number) => `${low} to ${high}`,
    none: 'No clean share yet',
    onlyBrokenOff: <N>(n: N) => [n, ' broken off'],
    whyNone:
      'No repetition has come to its end so far, so there is nothing to be clean or flawed. A smaller chunk, or a slower tempo, is easier to bring to its end.',
  },
  /** The clean share on the last days with practice, against those before; bounds of 100 repetitions. */
  trend: {
    tooFew: 'Not enough days yet to say whether the clean share changes.',
    better: <N>(after: N, before: N, low: number, high: number) => [
      after,
      ' clean on the last 28 days with practice, ',
      before,
      ` on those before: better, by ${low} to ${high} of 100 repetitions.`,
    ],
    worse: <N>(after: N, before: N, low: number, high: number) => [
      after,
      ' clean on the last 28 days with practice, ',
      before,
      ` on those before: worse, by ${low} to ${high} of 100 repetitions.`,
    ],
    unclear: <N>(after: N, before: N, low: string, high: string) => [
      after,
      ' clean on the last 28 days with practice, ',
      before,
      ` on those before: unclear whether it changed (between ${low} and ${high} of 100 repetitions).`,
    ],
  },
  /** The picture of the clean share. */
  shares: {
    showBy: 'Show by',
    by: (step: Step) => `by ${steps[step]}`,
    brokenOff: 'broken off',
    key: 'A dot is the clean share; the line through it, where it lies in 95 of 100 cases: long where there is little to go by. Broken off is counted apart, below.',
    none: 'No repetition came to its end yet.',
    only: <N>(step: Step, share: N, date: string) => [
      `Only one ${steps[step]} so far: `,
      share,
      ` clean ${inPeriod(step, date)}.`,
    ],
    within: (share: string, step: Step, date: string) => `${share} ${inPeriod(step, date)}`,
    all: <N>(step: Step, first: string, last: string, lowest: N, highest: N, latest: N) => [
      `Clean share by ${steps[step]}, from ${period(step, first)} to ${period(step, last)}: lowest `,
      lowest,
      ', highest ',
      highest,
      ', last ',
      latest,
      '.',
    ],
  },
  asTable: 'The figures as a table',
  pieces: {
    title: 'Piece by piece',
    elsewhere: ' not on this machine',
  },
  chunks: {
    ofAll: 'How far the chunks have come',
    each: 'How far each chunk has come',
    trend:
      'Trend: whether flaws become fewer with practice, since the tempo last reached a new height.',
    /** Instead of a share, where nothing came to its end. */
    brokenOff: 'broken off',
    tempo: <N>(rung: N, goal: string) => [rung, ` of ${goal}`],
    tooFewDays: 'too few days',
    curves: {
      improving: 'fewer flaws',
      worsening: 'more flaws',
      plateau: 'stands still',
      unclear: 'unclear',
    },
    some: 'a chunk',
    beats: (bar: number, from: number, to: number) => `bar ${bar}, beats ${from}–${to}`,
    stretch: (from: string, to: string) => `${from} to ${to}`,
  },
  states: {
    names: { slipped: 'slipped', secure: 'secure', kept: 'kept', practised: 'practised' },
    captions: {
      slipped: 'Slipped: was kept, and failed cold',
      secure: 'Secure: to be confirmed cold on a later day',
      kept: 'Kept: confirmed cold on a later day',
      practised: 'Practised',
    },
    all: <N>(chunks: number, n: N, of: Readonly<Record<State, N>>) => [
      n,
      chunks === 1 ? ' chunk: ' : ' chunks: ',
      of.slipped,
      ' slipped, ',
      of.secure,
      ' secure, ',
      of.kept,
      ' kept, ',
      of.practised,
      ' practised.',
    ],
  },
  rungs: {
    title: 'Tempo and streaks, day by day',
    chunk: 'Chunk',
    streak: 'longest streak',
    key: 'A line is the tempi of a day, its stroke across the last one; the bars below are the longest streaks.',
    nothing: (chunk: string) => `Nothing was played of ${chunk}.`,
    oneDay: <N>(
      chunk: string,
      day: string,
      low: N,
      high: N,
      goal: string | undefined,
      streak: N,
    ) => [
      `Tempo of ${chunk}, on ${day}, from `,
      low,
      ' to ',
      high,
      `${goal === undefined ? '' : `, the goal is ${goal}`}; longest streak `,
      streak,
      '.',
    ],
    days: <N>(
      chunk: string,
      first: { readonly rung: N; readonly day: string },
      last: { readonly rung: N; readonly day: string },
      goal: string | undefined,
      streak: N,
    ) => [
      `Tempo of ${chunk}, from `,
      first.rung,
      ` at the end of ${first.day} to `,
      last.rung,
      ` at the end of ${last.day}${goal === undefined ? '' : `, the goal is ${goal}`}; longest streak `,
      streak,
      '.',
    ],
  },
  where: {
    title: 'Where the flaws are',
    all: <N>(times: number, n: N, bars: number) => [
      n,
      `${times === 1 ? ' flaw' : ' flaws'} in ${plural(bars, 'bar')}.`,
    ],
    most: <N>(times: number, n: N, bars: number, bar: number, most: N) => [
      n,
      `${times === 1 ? ' flaw' : ' flaws'} in ${plural(bars, 'bar')}, most of them in bar ${bar}: `,
      most,
      '.',
    ],
    barByBar: 'Bar by bar, those with most flaws first',
    showNotes: (bars: number) => `Show every note of ${plural(bars, 'bar')}`,
    /** 'another key, 12 times' */
    flaw: (flaw: string, times: string) => `${flaw}, ${times}`,
  },
  music: {
    show: 'Show',
    all: 'all kinds of flaw',
    numbers: 'how often, in numbers',
    seldom: 'what came seldom too',
    whole: 'lines without marks too',
    noFlaw: 'no flaw',
    flaws: (times: number, most: string) => `${plural(times, 'flaw')}, most of them: ${most}`,
  },
  kinds: { title: 'What kind of flaw' },
  keysPlayed: { title: 'Which key was played for which' },
  cold: {
    title: 'Cold, on a later day',
    all: <N>(checks: number, n: N, held: N, failed: N, brokenOff: N) => [
      n,
      ` cold ${checks === 1 ? 'check' : 'checks'} of what had been secure or kept: `,
      held,
      ' held, ',
      failed,
      ' failed; ',
      brokenOff,
      ' broken off.',
    ],
    share: <N>(share: N, low: number, high: number) => [
      ' ',
      share,
      ` held, between ${low} and ${high} % in 95 of 100 cases.`,
    ],
    heldOf: (held: number, of: number) => `${held} of ${of}`,
    latest: <N>(shown: number, all: N) => [`The latest ${shown} of `, all, '.'],
  },
  overruled: {
    yours: 'What you decided otherwise',
    theirs: (name: string) => `What ${name} decided otherwise`,
  },
  /** `shown`: the number of repetitions as it is written. */
  amount: (repetitions: number, shown: string, time: string, days: number) =>
    `${shown} repetition${repetitions === 1 ? '' : 's'} in ${time}, on ${plural(days, 'day')}.`,
  time: {
    little: 'less than a minute',
    hours: (n: number) => plural(n, 'hour'),
    minutes: (n: number) => plural(n, 'minute'),
  },
})

export type ReviewText = typeof reviewText
