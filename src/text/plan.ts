import { capital } from './numberWords'
import { plural } from './plural'
import { catalogue } from './text'

const stateWords = {
  kept: 'kept',
  secure: 'secure',
  slipped: 'slipped',
  practised: 'practised',
  untouched: 'not begun',
}

const itemWords = {
  warmUp: 'Warm-up',
  coldCheck: 'Cold check',
  problemSpot: 'Hard spot',
  newGroup: 'Passage',
  join: 'Join',
  runThrough: 'Run-through',
  rest: 'Rest',
}

/** What is shorter is 'a minute'. */
const minuteWords = (minutes: number): string => (minutes === 1 ? 'a minute' : `${minutes} minutes`)

const since = (days: number): string => (days === 1 ? 'yesterday' : `${days} days ago`)

/** What today holds. */
export interface DayCounts {
  /** Whole minutes, one at least. */
  readonly minutes: number
  readonly places: number
  readonly checks: number
  readonly runs: number
  readonly rests: number
}

/** How the bars of a piece stand. */
type StateCounts = readonly (readonly [state: keyof typeof stateWords, bars: number])[]

/** The plan of a day and of a piece. */
export const planText = catalogue('plan', {
  today: {
    title: 'Today',
    date: (weekday: string, date: string) => `${weekday}, ${date}`,
    reading: 'Looking into the record …',
    start: 'Start',
    another: 'Another choice',
    list: 'What to play',
    making: 'Making a plan of it …',
    lowered: 'Less than half was clean of late: slower and easier today, nothing new.',
    noPiece: 'Choose a piece: its hardest place comes first.',
    allKept:
      'All of it is kept, and nothing is due today: play it for its own sake, or take up something new.',
    nothingDue: 'Nothing is due today.',
    counts: ({ minutes, places, checks, runs, rests }: DayCounts) => {
      const parts = [
        ...(places > 0 ? [`${plural(places, 'place')} in turn`] : []),
        ...(checks > 0 ? [plural(checks, 'cold check')] : []),
        ...(runs > 0 ? ['a run-through at the end'] : []),
        ...(rests > 0 ? [plural(rests, 'rest')] : []),
      ]
      return `${capital(minuteWords(minutes))}: ${parts.join(', ')}.`
    },
    spare: 'There is no more to do: the rest is yours, or take a piece more.',
    isOn: (number: number, of: number) => `Item ${number} of ${of} is on.`,
    goOn: 'Go on',
    toReview: 'The session’s review',
    planAnew: 'Plan anew',
    rest: 'A rest: stand up, hands off the keys.',
    noneDone: 'Nothing of today’s plan was played; all of it comes again on another day.',
    allDone: 'All of today’s plan is done.',
    someDone: (done: number, of: number) =>
      `${done} of ${of} done; the rest comes again on another day.`,
    /** In the review of a session. */
    isOnOfPlan: (number: number, of: number) => `Of today’s plan item ${number} of ${of} is on.`,
    goOnWithIt: 'Go on with it',
    open: 'Today’s plan',
    goOnWith: 'Go on with today’s plan',
    failed: (why: string) => `The plan could not be made: ${why}`,
    notHere: 'This piece is not on this machine: bring its file in again.',
  },
  choice: {
    minutesToday: 'Minutes today',
    minutes: <N>(minutes: N) => [minutes, ' minutes'],
    less: (minutes: number) => `${minutes} minutes less`,
    more: (minutes: number) => `${minutes} minutes more`,
    pieces: 'Pieces',
    others: (n: number) => `${n} more`,
    laidAside: '(laid aside)',
    main: '(main)',
  },
  keys: {
    start: 'start',
    goOn: 'go on',
    more: 'five minutes more',
    less: 'five minutes less',
    another: 'another choice of what is as urgent',
    toReview: 'the session’s review',
    planAnew: 'plan anew',
    today: 'today’s plan',
    piece: 'the page of the piece',
  },
  items: itemWords,
  /** Beside what was played, or was not. */
  outcomes: { done: ' · done', begun: ' · begun', left: ' · another day' },
  /** Of the drill: 'the third of seven today, a cold check'. */
  onDesk: <N>(count: N, item: keyof typeof itemWords) => [
    count,
    ` today, ${itemWords[item].toLowerCase()}`,
  ],
  minuteSign: 'min',
  inMinutes: (minutes: number) => `${minutes} min`,
  countOf: (number: number, of: number) => `${number} of ${of}`,
  onceThrough: 'once through',
  minutesLeft: (minutes: number) => `${minutes} min left`,
  /** An item within a sentence; where it is comes in words. */
  itemLine: (item: keyof typeof itemWords, title: string, where: string) =>
    `${itemWords[item].toLowerCase()}, ${title}, ${where}`,
  restLine: (minutes: number) => `a rest of ${minuteWords(minutes)}`,
  /** Why an item is played, in one sentence. */
  reasons: {
    warmUpKnown: 'To warm up: what you know, slowly, listening.',
    warmUpEasy: 'To warm up: an easy place, slowly, in a small group.',
    checkWrong: 'It went wrong in the run-through: once through, cold.',
    checkSlipped: (days: number) =>
      `It slipped ${since(days)}: once through, cold, to see whether it is back.`,
    checkKept: (days: number) => `Last confirmed ${since(days)}: once through, cold.`,
    checkSecure: (days: number) =>
      `Secure ${since(days)}: once through, cold, to see whether it is kept.`,
    lowered: (first: string) => `Less than half was clean of late: slower, ${first} first.`,
    slipped: 'It slipped: the whole once more, from a slower tempo.',
    join: 'Both passages are secure: now from one into the other.',
    next: (exercise: string, hard?: string) =>
      hard === undefined ? `Next: ${exercise}.` : `Next: ${exercise}; ${hard}.`,
    fresh: (exercise: string, hard?: string) =>
      hard === undefined ? `New: ${exercise} first.` : `New: ${exercise} first; ${hard}.`,
    wentWrong: 'It went wrong in the run-through.',
    theWhole: 'the whole',
    hardSpot: 'a hard spot',
    runThrough: 'Once from end to end without stopping; listen for what to work on tomorrow.',
  },
  weeks: {
    title: 'The weeks',
    layingOut: 'Laying out the piece …',
    howLong: 'How long',
    order: 'In this order',
    keptAll: 'Kept from end to end.',
    span: (least: number, most: number) =>
      least === most ? `about ${plural(least, 'week')}` : `${least} to ${most} weeks`,
    years: (least: number, most: number) =>
      least === most ? `about ${plural(least, 'year')}` : `${least} to ${most} years`,
    /** The work in minutes or hours, the repetitions rounded and written out. */
    left: <N>(weeks: N, goal: string, work: string, repetitions: string) => [
      weeks,
      ` until it is kept from end to end at ${goal}: about ${work} of work, ${repetitions} repetitions.`,
    ],
    goal: (beats: string, of: string) => `${beats} ${of} a minute`,
    minutesADay: 'Minutes a day',
    daysAWeek: 'Days a week',
    asOfLate: (days: number) => `${days} as of late`,
    asUsual: (days: number) => `${days} as usual`,
    today: 'Today',
    piece: 'The piece',
    fromRecord: (exercises: number) =>
      `Estimated from ${plural(exercises, 'exercise')} of your own record. It is said anew as the record grows; nine in ten should lie within.`,
    withoutRecord:
      'Estimated without a record, from what is usual; it is said anew as the record grows.',
    takenAsUsual: 'What is taken as usual',
    defaults: {
      repetitions:
        'repetitions a rung for three clean in a row: 4.8 on the average at eight of ten clean (common practice), times 1.9, since a new rung goes worse at first (an assumption)',
      difficulty: 'points a second at which that holds: quarters and eighths on neighbouring keys',
      slope:
        'twice as difficult takes a third more repetitions: an assumption, until the record says better',
      pause: 'seconds between repetitions: a breath (common practice)',
    },
  },
  places: { spot: 'Hard spot', passage: 'Passage', join: 'Join' },
  states: stateWords,
  standing: {
    slipped: (work: string) => `slipped, about ${work} left`,
    fresh: (work: string) => `new, about ${work} left`,
    begun: (work: string) => `begun, about ${work} left`,
    exercises: (done: number, of: number, work: string) =>
      `${done} of ${of} exercises done, about ${work} left`,
    due: (standing: string, date: string) => `${standing}, due cold on ${date}`,
  },
  picture: {
    bars: (bars: number, counts: StateCounts) =>
      `Of ${plural(bars, 'bar')}: ${counts.map(([state, n]) => `${n} ${stateWords[state]}`).join(', ')}.`,
    noSpotLeft: 'No hard spot is left.',
    spots: (open: number, of: number) =>
      `${plural(open, 'hard spot')} to do${open < of ? ` of ${of}` : ''}.`,
    workAt: (bars: string) => `The work is at ${bars}.`,
    lanes: {
      spot: 'Hard spots',
      right: 'Right hand',
      left: 'Left hand',
      both: 'Together',
      join: 'Joins',
    },
    bar: 'Bar',
    stretch: (place: string, where: string, state: string) => `${place}, ${where}: ${state}`,
    asTable: 'The same as a table',
    columns: {
      bars: 'Bars',
      what: 'What',
      right: 'Right hand',
      left: 'Left hand',
      both: 'Together',
    },
    /** A row of the table: 'Bars 5–8'. */
    row: capital,
  },
  honest: {
    label: 'Against your record',
    comparing: (done: number, of: number) => `Comparing with your pieces: ${done} of ${of}`,
    failed: (why: string) => `Your pieces could not be compared: ${why}`,
    noRecord: 'Nothing is kept yet, so there is nothing to compare this piece with.',
    within: 'This piece is no more difficult than what you keep already.',
    /** Times as difficult, formatted; in whole months. */
    above: (distance: 'above' | 'farAbove', times: string, least: number, most: number) => {
      const far = distance === 'farAbove' ? 'far above' : 'above'
      const months =
        least === most
          ? most === 1
            ? 'about a month'
            : `some ${most} months`
          : `some ${least} to ${most} months`
      return `This piece stands ${far} what you keep now (${times} times as difficult at its hardest). What you keep grows to that in ${months}, as a rough guess, so the weeks may turn into more; begin when you like.`
    },
    ways: 'On the way there:',
    /** With the ways in the sentence. */
    andWays: (distance: string, ways: readonly string[]) =>
      `${distance} On the way there: ${ways.join('; ')}.`,
    ofThisPiece: (from: number, to: number) =>
      `${from === to ? `bar ${from}` : `bars ${from} to ${to}`} of this piece`,
  },
})

export type PlanText = typeof planText
