import { dayAt, type Day } from '@/journal/day'
import { drillId, eventId, sessionId } from '@/journal/ids'
import { journalVersion, type JournalEvent } from '@/journal/journal'
import { compareEvents } from '@/journal/merge'
import { encodeTake } from '@/journal/take'
import { chunkId, key, ms, pieceId, tempo } from '@/music/units'
import { flawOf, verdictOf } from '../support/madeByRule'

/** A journal of ten years made by rule, day by day: two million repetitions. */
export const dayCount = 3_650
const repetitionsADay = 548
const chunksADay = 20
/** A piece is practised for two months, three at a time. */
const piecesAtATime = 3
const daysAPiece = 60

const dayMs = 86_400_000
const begin = Date.UTC(2016, 0, 1, 18)

export const dayOf = (epochMs: number): Day => dayAt(epochMs, 0)

/** Eight notes, so sixteen key events: the reduced take of every repetition. */
const take = encodeTake(
  {
    events: Array.from({ length: 8 }, (_, i) => [
      { kind: 'down' as const, key: key(60 + i), velocity: 64, at: ms(i * 240.3) },
      { kind: 'up' as const, key: key(60 + i), at: ms(i * 240.3 + 221.7) },
    ]).flat(),
  },
  ms(0),
)
const figures = {
  tempo: 71.53,
  gapSd: 12.25,
  gapCv: 0.051,
  chordSpread: 8.5,
  velocityMean: 66.13,
  velocitySd: 4.517,
  overlap: -10.26,
}

/** The events of one day, sorted. */
export const eventsOf = (day: number): readonly JournalEvent[] => {
  const at = begin + day * dayMs
  const stamp = (name: string, seconds: number) => ({
    v: journalVersion,
    id: eventId(`${String(day).padStart(8, '0')}-4d1f-4c3a-9b7e-${name.padStart(12, '0')}`),
    session: sessionId(`session ${day}`),
    atEpochMs: at + seconds * 1_000,
  })
  const drills = Array.from({ length: chunksADay }, (_, i) => placeOf(day, i))
  const repetitions = Array.from({ length: repetitionsADay }, (_, i): JournalEvent => {
    const n = day * repetitionsADay + i
    const verdict = verdictOf(n)
    const { where, rung } =
      drills[Math.floor((i * chunksADay) / repetitionsADay)] ?? placeOf(day, 0)
    return {
      ...stamp(String(i), i * 6 + 5),
      kind: 'repetition',
      ...where,
      rung,
      standard: 'flow',
      forgiveBrushed: false,
      verdict,
      tookMs: 2_204.7,
      flaws: verdict === 'flawed' ? [{ ...flawOf(n), playedMs: 480.2, velocity: 58 }] : [],
      figures,
      take,
    }
  })
  const others = drills.flatMap(({ where, place, rung }, i): JournalEvent[] => {
    const seconds = (i * repetitionsADay * 6) / chunksADay
    return [
      {
        ...stamp(`b${i}`, seconds),
        kind: 'drillBegun',
        ...where,
        place,
        form: 'asWritten',
        time: { beats: 4, beatType: 4 },
        streakGoal: 5,
        goalTempo: tempo(120),
        startTempo: rung,
        ladder: 'classic',
        standard: 'flow',
      },
      {
        ...stamp(`r${i}`, seconds + 90),
        kind: 'rungChanged',
        ...where,
        from: rung,
        to: tempo(rung + 4),
        reason: 'streak',
      },
      ...(i % 4 === 0
        ? [{ ...stamp(`s${i}`, seconds + 91), kind: 'secure' as const, ...where, rung: tempo(120) }]
        : []),
    ]
  })
  return [...repetitions, ...others].toSorted(compareEvents)
}

const placeOf = (day: number, i: number) => {
  const piece = pieceId(
    `p${String(Math.floor(day / daysAPiece) * piecesAtATime + (i % piecesAtATime)).padStart(16, '0')}`,
  )
  const bar = (day + i * 5) % 40
  const from = bar * 4
  return {
    where: {
      drill: drillId(`drill ${day} ${i}`),
      piece,
      chunk: chunkId(`${piece}:${from}-${from + 4}:right`),
    },
    place: {
      from: `${from}`,
      to: `${from + 4}`,
      fromBar: bar + 1,
      toBar: bar + 2,
      hand: 'right' as const,
    },
    rung: tempo(60 + (day % 12) * 4),
  }
}
