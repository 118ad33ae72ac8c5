import { keep, sessionsOf } from '@/app/studentRecords'
import { dayAt, type DayOf } from '@/journal/day'
import { drillId, eventId, sessionId, studentId } from '@/journal/ids'
import { journalVersion, type JournalEvent } from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import { chunkId, pieceId, tempo } from '@/music/units'
import { standPieces } from '@/review/standings'
import type { StudentListing } from '@/storage/students'
import { flawOf, verdictOf } from './madeByRule'

/** A studio made by rule: thirty students, each with a year of 150 days, 60 repetitions a day. */
export const studentCount = 30
const dayCount = 150
const drillsADay = 6
const repetitionsADrill = 10
/** Three pieces at a time, each for fifty days of practice: nine in the year, some of them of many students. */
const piecesAtATime = 3
const daysAPiece = 50
const dayMs = 86_400_000

/** The record of one student, sorted, the last day that of `end`. */
export const studentYear = (student: number, end: number): readonly JournalEvent[] =>
  Array.from({ length: dayCount }, (_, day) => practiceDay(student, day, end)).flat()

const practiceDay = (student: number, day: number, end: number): readonly JournalEvent[] => {
  const at = end - Math.floor(((dayCount - 1 - day) * 365) / dayCount) * dayMs
  const stamp = (name: string, seconds: number) => ({
    v: journalVersion,
    id: eventId(`${student} ${day} ${name}`),
    session: sessionId(`session ${student} ${day}`),
    atEpochMs: at + seconds * 1_000,
  })
  return Array.from({ length: drillsADay }, (_, i): readonly JournalEvent[] => {
    const number = Math.floor(day / daysAPiece) * piecesAtATime + (i % piecesAtATime)
    const piece = pieceId(`p${String((number + student) % 40).padStart(16, '0')}`)
    const from = ((day * 5 + i) % 24) * 4
    const where = {
      drill: drillId(`drill ${student} ${day} ${i}`),
      piece,
      chunk: chunkId(`${piece}:${from}-${from + 4}:right`),
    }
    const rung = tempo(60 + (day % daysAPiece))
    const bar = from / 4 + 1
    const begin = i * 100
    return [
      ...(day % daysAPiece === 0 && i < piecesAtATime
        ? [
            {
              ...stamp(`added ${i}`, begin),
              kind: 'pieceAdded' as const,
              piece,
              title: `Study ${(number + student) % 40}`,
              fileName: 'study.mid',
            },
          ]
        : []),
      {
        ...stamp(`begun ${i}`, begin),
        kind: 'drillBegun',
        ...where,
        place: { from: `${from}`, to: `${from + 4}`, fromBar: bar, toBar: bar, hand: 'right' },
        form: 'asWritten',
        time: { beats: 4, beatType: 4 },
        streakGoal: 5,
        goalTempo: tempo(104),
        startTempo: rung,
        ladder: 'classic',
        standard: 'flow',
      },
      ...Array.from({ length: repetitionsADrill }, (__, j): JournalEvent => {
        const n = (student * 31 + day) * drillsADay * repetitionsADrill + i * repetitionsADrill + j
        const verdict = verdictOf(n)
        return {
          ...stamp(`r ${i} ${j}`, begin + (j + 1) * 9),
          kind: 'repetition',
          ...where,
          rung,
          standard: 'flow',
          forgiveBrushed: false,
          verdict,
          tookMs: 4_000,
          flaws: verdict === 'flawed' ? [flawOf(n)] : [],
          figures: { tempo: 71.53, gapSd: 12.25, gapCv: 0.051 },
          take: '',
        }
      }),
      ...(rung >= 104
        ? [{ ...stamp(`secure ${i}`, begin + 95), kind: 'secure' as const, ...where, rung }]
        : []),
    ]
  }).flat()
}

const utc: DayOf = (epochMs) => dayAt(epochMs, 0)

/** The same student as the list of students keeps it. */
export const studentListing = (student: number, end: number, dayRule: string): StudentListing => {
  const events = studentYear(student, end)
  const sums = sumDays(events, utc)
  const pieces = standPieces(
    sums.flatMap((day) => day.pieces),
    sums.flatMap((day) => day.chunks),
  )
  return {
    id: studentId(`student-${student}`),
    name: `Student ${String(student + 1).padStart(2, '0')}`,
    fileName: `student-${student + 1}.jsonl`,
    takenAtEpochMs: end,
    sessions: sessionsOf(events),
    kept: keep(dayRule, pieces),
  }
}
