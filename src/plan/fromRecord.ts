import type { Exercise } from '@/exercises/buildUp'
import { groupBy } from '@/journal/groupBy'
import type { ChunkDay, DrillSum } from '@/journal/sums'
import { parseFraction } from '@/music/fraction'
import { tempo, tick, type PieceId } from '@/music/units'
import type { PieceLayout, PlanPlace } from './layOut'
import type { PracticeRecord } from './record'

/** A resolution that holds the usual divisions: 64th notes, triplets, quintuplets, septuplets. */
const ticksPerQuarter = 6720

/**
 * What can be laid out without the notes: what was drilled as written, each as one exercise. Groups that
 * lie inside a larger chunk of the record are left out, unless they were secure. Nothing is known of
 * difficulty, of hard spots, of what was never played.
 */
export const layOutRecord = ({ chunkDays }: PracticeRecord): readonly PieceLayout[] =>
  [...groupBy(chunkDays, ({ piece }) => piece)].map(([piece, rows]) => {
    const drilled = [...groupBy(rows, ({ chunk }) => chunk).values()].flatMap(drilledIn)
    const places = drilled
      .filter(
        (one) => one.secure || !drilled.some((other) => other !== one && isInside(one, other)),
      )
      .map((each) => placeOf(piece, each))
    const goal = drilled.at(-1)?.drill.goalTempo ?? tempo(120)
    return {
      piece,
      title: piece,
      goalTempo: goal,
      places,
      minutes: 0,
      difficulty: 0,
      uncertainty: 0,
    }
  })

interface Drilled {
  readonly row: ChunkDay
  readonly drill: DrillSum
  readonly from: number
  readonly to: number
  readonly secure: boolean
}

const drilledIn = (rows: readonly ChunkDay[]): readonly Drilled[] => {
  const row = rows.findLast(({ begun }) => begun !== undefined)
  const drill = row?.begun
  if (!row || !drill || drill.form !== 'asWritten') return []
  const from = parseFraction(drill.place.from, ticksPerQuarter)
  const to = parseFraction(drill.place.to, ticksPerQuarter)
  if (from === undefined || to === undefined) return []
  return [{ row, drill, from, to, secure: rows.some(({ secureAt }) => secureAt !== undefined) }]
}

const isInside = (one: Drilled, other: Drilled): boolean =>
  one.from >= other.from &&
  one.to <= other.to &&
  (other.drill.place.hand === 'both' || other.drill.place.hand === one.drill.place.hand)

const placeOf = (piece: PieceId, { row, drill, from, to }: Drilled): PlanPlace => {
  const { place, time } = drill
  const chunk: Exercise['chunk'] = {
    id: row.chunk,
    piece,
    hand: place.hand,
    ticksPerQuarter,
    start: tick(from),
    end: tick(to),
    barOffset: tick(0),
    barLength: tick((time.beats * 4 * ticksPerQuarter) / time.beatType),
    onsets: [],
  }
  const whole: Exercise = {
    chunk,
    form: 'asWritten',
    what: 'whole',
    hand: place.hand,
    place,
    from: tick(from),
    to: tick(to),
    size: 0,
    stage: 1,
    why: 'whole',
    begin: 0.7,
    reach: 1,
    streakGoal: 5,
  }
  return {
    id: row.chunk,
    piece,
    kind: 'passage',
    chunk,
    place,
    from: tick(from),
    to: tick(to),
    difficulty: 0,
    reasons: [],
    parts: [],
    exercises: [whole],
    motion: new Map(),
    bars: [
      { number: place.fromBar, start: tick(from), length: tick(1), time },
      { number: place.toBar, start: tick(to), length: tick(1), time },
    ],
  }
}
