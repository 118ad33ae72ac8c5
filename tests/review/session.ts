import { dayAt } from '@/journal/day'
import { drillId, eventId, sessionId } from '@/journal/ids'
import {
  journalVersion,
  type JournalEvent,
  type NotebookWritten,
  type OverruledRecorded,
  type PieceDecided,
  type RecordedFlaw,
  type RepetitionRecorded,
} from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import { chunkId, key, noteId, pieceId, tempo } from '@/music/units'
import { parseKey } from '@/music/pitch'

/** One minute past some midnight. */
export const midnight = 1_767_225_600_000

const stamp = (seconds: number, name = 'r') => ({
  v: journalVersion,
  id: eventId(`${name}${seconds}`),
  session: sessionId('s1'),
  atEpochMs: midnight + seconds * 1_000,
})
const where = (chunk: string) => ({
  drill: drillId(`d ${chunk}`),
  piece: pieceId('p1'),
  chunk: chunkId(chunk),
})

/** 'wrong 2 D4 D#4': kind, onset, written, played ('-' for none); 'forgiven', or how much in milliseconds, at the end. */
export const flaw = (text: string): RecordedFlaw => {
  const [kind = '', onset = '', written = '-', played = '-', end = ''] = text.split(' ')
  const pitch = (name: string) => parseKey(name) ?? key(0)
  return {
    kind: kind as RecordedFlaw['kind'],
    onset: Number(onset),
    ...(written === '-' ? {} : { written: pitch(written), notes: [noteId(`n${onset}${written}`)] }),
    ...(played === '-' ? {} : { played: pitch(played) }),
    ...(/^-?\d+$/.test(end) ? { ms: Number(end) } : {}),
    ...(end === 'forgiven' ? { forgiven: true } : {}),
  }
}

const verdicts = { c: 'clean', f: 'flawed', b: 'brokenOff' } as const

/** A repetition whose verdict came so many seconds after midnight; it took two seconds. */
export const repetition = (
  letter: keyof typeof verdicts,
  seconds: number,
  { chunk = 'a', rung = 72, flaws = [] as readonly string[] } = {},
): RepetitionRecorded => ({
  ...stamp(seconds),
  kind: 'repetition',
  ...where(chunk),
  rung: tempo(rung),
  standard: 'flow',
  forgiveBrushed: false,
  verdict: verdicts[letter],
  tookMs: 2_000,
  flaws: flaws.map(flaw),
  figures: {},
  take: '',
})

/** 'ccfb': repetitions of chunk a, ten seconds apart. */
export const repetitions = (letters: string): readonly RepetitionRecorded[] =>
  [...letters].flatMap((letter, i) =>
    letter === 'c' || letter === 'f' || letter === 'b' ? [repetition(letter, (i + 1) * 10)] : [],
  )

export const rungChanged = (
  seconds: number,
  from: number,
  to: number,
  chunk = 'a',
): JournalEvent => ({
  ...stamp(seconds, 'rung'),
  kind: 'rungChanged',
  ...where(chunk),
  from: tempo(from),
  to: tempo(to),
  reason: 'streak',
})

export const secure = (seconds: number, chunk = 'a'): JournalEvent => ({
  ...stamp(seconds, 'secure'),
  kind: 'secure',
  ...where(chunk),
  rung: tempo(120),
})

export const exerciseDone = (seconds: number, rung: number, chunk = 'a'): JournalEvent => ({
  ...stamp(seconds, 'done'),
  kind: 'exerciseDone',
  ...where(chunk),
  rung: tempo(rung),
  streak: 3,
})

export const drillBegun = (seconds: number, chunk = 'a', goal = 120): JournalEvent => ({
  ...stamp(seconds, 'begun'),
  kind: 'drillBegun',
  ...where(chunk),
  place: { from: '0', to: '3_2', fromBar: 1, toBar: 1, hand: 'right' },
  form: 'asWritten',
  time: { beats: 4, beatType: 4 },
  streakGoal: 5,
  goalTempo: tempo(goal),
  startTempo: tempo(72),
  ladder: 'classic',
  standard: 'flow',
})

export const overruled = (
  seconds: number,
  what: OverruledRecorded['what'],
  chunk = 'a',
): OverruledRecorded => ({
  ...stamp(seconds, 'overruled'),
  kind: 'overruled',
  ...where(chunk),
  what,
})

export const pieceAdded = (title: string): JournalEvent => ({
  ...stamp(0, 'added'),
  kind: 'pieceAdded',
  piece: pieceId('p1'),
  title,
  fileName: 'study.mid',
})

export const decided = (seconds: number, decision: PieceDecided['decision']): PieceDecided => ({
  ...stamp(seconds, 'decided'),
  kind: 'pieceDecided',
  piece: pieceId('p1'),
  decision,
})

export const written = (
  seconds: number,
  text: string,
  part: Partial<NotebookWritten> = {},
): NotebookWritten => ({
  ...stamp(seconds, 'written'),
  kind: 'notebookWritten',
  piece: pieceId('p1'),
  subject: 'idea',
  text,
  ...part,
})

/** Kept sums of the events, as the pages of the review take them. */
export const sumsOf = (events: readonly JournalEvent[]) => {
  const sums = sumDays(events, (epochMs) => dayAt(epochMs, 0))
  return {
    totals: sums.map(({ total }) => total),
    pieces: sums.flatMap(({ pieces }) => pieces),
    chunks: sums.flatMap(({ chunks }) => chunks),
  }
}
