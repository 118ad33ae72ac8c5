import type { ListedSpot } from '@/app/spotList'
import type { SystemBars } from '@/engraving/systems'
import type { HandChoice, Score } from '@/music/music'
import type { NoteId } from '@/music/units'

/** A hard spot, or the part of it that stands in a line; bars are counted in the line. */
export interface SpotMark {
  readonly name: string
  readonly hand: HandChoice
  readonly depth: ListedSpot['depth']
  /** The person has accepted it. */
  readonly isPassage: boolean
  readonly fromBar: number
  /** Where it begins inside that bar. */
  readonly from?: NoteId
  readonly toBar: number
  /** The note before which it ends, inside that bar. */
  readonly before?: NoteId
}

/** For each line the hard spots that are hatched over it. */
export const markSpots = (
  score: Score,
  plan: readonly SystemBars[],
  spots: readonly ListedSpot[],
): ReadonlyMap<number, readonly SpotMark[]> => {
  const marks = new Map<number, SpotMark[]>()
  for (const spot of spots) {
    if (spot.word === 'rejected') continue
    for (const [line, bars] of plan.entries()) {
      const mark = markIn(score, bars, spot)
      if (mark) marks.set(line, [...(marks.get(line) ?? []), mark])
    }
  }
  return marks
}

const markIn = (score: Score, line: SystemBars, spot: ListedSpot): SpotMark | undefined => {
  const { place, hand, depth, word } = { ...spot, hand: spot.place.hand }
  const first = score.bars.findLastIndex(({ start }) => start <= spot.from)
  const last = score.bars.findLastIndex(({ start }) => start < spot.to)
  if (first > line.toBar || last < line.fromBar || last < first) return undefined
  const [begin, end] = [score.bars[first], score.bars[last]]
  const from = first >= line.fromBar && begin && spot.from > begin.start
  const before = last <= line.toBar && end && spot.to < end.start + end.length
  const noteFrom = from ? noteAt(score, first, spot.from) : undefined
  const noteBefore = before ? noteAt(score, last, spot.to) : undefined
  return {
    name: `${place.from}-${place.to}/${place.hand}`,
    hand,
    depth,
    isPassage: word === 'accepted',
    fromBar: Math.max(first, line.fromBar) - line.fromBar,
    toBar: Math.min(last, line.toBar) - line.fromBar,
    ...(noteFrom === undefined ? {} : { from: noteFrom }),
    ...(noteBefore === undefined ? {} : { before: noteBefore }),
  }
}

/** The first note of a bar at or after a tick. */
const noteAt = ({ notes }: Score, barIndex: number, at: number): NoteId | undefined =>
  notes.find((note) => note.barIndex === barIndex && note.start >= at)?.id
