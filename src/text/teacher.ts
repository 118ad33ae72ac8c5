import { grouped } from './numbers'
import { plural } from './plural'
import { catalogue } from './text'

type Standing = 'slipped' | 'practised' | 'secure' | 'kept'

const standings: Readonly<Record<Standing, string>> = {
  slipped: 'slipped',
  practised: 'not yet secure',
  secure: 'secure',
  kept: 'kept',
}

/** The page for a teacher. */
export const teacherText = catalogue('teacher', {
  /** Beside the sheet. */
  tools: {
    review: 'Review',
    students: 'Students',
    about: 'About',
    aWeek: 'A week',
    aPiece: 'A piece',
    week: (monday: string) => `the week of ${monday}`,
    untitled: 'a piece without a title',
    name: 'Your name on the page',
    remarks: 'Questions and remarks',
    print: 'Print',
    save: 'Save as a file to send',
  },
  keys: {
    print: 'print',
    save: 'save as a file to send',
    before: 'the week before',
    after: 'the week after',
  },
  /** From one day to another of the same month. */
  daysOfMonth: (from: number, to: string) => `${from} to ${to}`,
  days: (from: string, to: string) => `${from} to ${to}`,
  titles: {
    week: (days: string) => `The week of ${days}`,
    aWeek: 'A week',
    aPiece: 'A piece',
    untitled: 'A piece without a title',
  },
  sheet: {
    kind: 'For the teacher',
    practisedFrom: (days: string, isOneDay: boolean) =>
      isOneDay ? `Practised on ${days}.` : `Practised from ${days}.`,
    nothing: 'Nothing was practised in this time.',
    share: <N>(percent: N, low: number, high: number) => [
      percent,
      ` of what was played to its end was clean (between ${low} and ${high}\u00a0% in 95 of 100 cases).`,
    ],
    tally: (clean: number, flawed: number, brokenOff: number) =>
      `${grouped(clean)} clean, ${grouped(flawed)} flawed; ${grouped(brokenOff)} broken off.`,
    practised: (time: string, days: number, repetitions: number) =>
      `${time} on ${plural(days, 'day')}, ${grouped(repetitions)} ${repetitions === 1 ? 'repetition' : 'repetitions'}`,
    /** Of a piece among others. */
    piece: (share: string | undefined, brokenOff: number, practised: string) =>
      `${share === undefined ? '' : `${share} clean, `}${grouped(brokenOff)} broken off; ${practised}.`,
    alsoPractised: (pieces: readonly string[]) => `Practised too: ${pieces.join('; ')}.`,
    also: (title: string | undefined, practised: string) => `${title ?? 'a piece'} (${practised})`,
    overruled: <N>(strong: (words: string) => N, what: string) => [
      strong('Decided otherwise than advised:'),
      ` ${what}.`,
    ],
    overruledTimes: (what: string, times: number) =>
      times === 1 ? what : `${what}, ${times === 2 ? 'twice' : `${times} times`}`,
    remarks: 'Questions and remarks',
    lesson: 'In the lesson',
  },
  places: {
    title: 'Hard places',
    bar: (bar: number, flaws: number, standing: Standing) =>
      `Bar ${bar}: ${plural(flaws, 'flaw')}, ${standings[standing]}`,
    chunk: <N>(chunk: N, standing: Standing, flaws: number, told: string) => [
      chunk,
      `, ${standings[standing]}, ${plural(flaws, 'flaw')}: ${told}.`,
    ],
    flawAt: (key: string | undefined, flaw: string) =>
      key === undefined ? flaw : `${key}: ${flaw}`,
  },
  chunks: {
    columns: {
      chunk: 'Chunk',
      stands: 'Stands',
      share: 'Clean share',
      repetitions: 'Repetitions',
      brokenOff: 'Broken off',
      tempo: 'Tempo',
      goal: 'Goal',
    },
    standings,
    counted: (n: number, standing: Standing) => `${n} ${standings[standing]}`,
    more: (n: number, counts: readonly string[]) =>
      `and ${plural(n, 'other chunk')}: ${counts.join(', ')}.`,
  },
  changes: {
    slipped: 'Slipped, failed cold',
    kept: 'Kept, clean cold on a later day',
    secure: 'Became secure at the goal tempo',
    others: (n: number) => `and ${plural(n, 'other')}`,
  },
  /** For a teacher who has never seen the program. */
  howToRead:
    'Clean: no flaw by the standard chosen (the right keys in order; no stops besides; a steady pulse besides). After a clean share stands where it lies in 95 of 100 cases. Secure: a streak of clean repetitions at the goal tempo; kept: the first one on a later day was clean too; slipped: it was not. Tempi are beats a minute: the last one played, and the goal.',
  legend: (marks: readonly string[]) => `Marks: ${marks.join('; ')}.`,
  marks: {
    right: 'a tick, right',
    wrong: 'a ring, another key was struck (the small head is the one struck most)',
    missing: 'a dotted ring, the note was missing',
    extra: 'a cross, a key too many',
    repeated: 'a cross beside the note, struck twice',
    order: 'the sign of exchange, two notes changed places',
    restart: 'a hook, went back',
    hesitation: 'two strokes, a stop',
    early: 'an arrow to the left, early',
    late: 'an arrow to the right, late',
    uneven: 'a wave, uneven',
    spread: 'a wavy line, the chord not together',
    drift: 'a slanted line, the tempo drifts',
  },
})

export type TeacherText = typeof teacherText
