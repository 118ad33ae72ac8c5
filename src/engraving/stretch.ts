import type { Bar, Hand, HandChoice, KeySignature, Note, Score } from '@/music/music'
import { tick, type Tick } from '@/music/units'

/** The part of a score that a drawing needs: small enough to be sent to a worker at once. */
export interface Stretch {
  readonly ticksPerQuarter: number
  readonly start: Tick
  readonly end: Tick
  /** Top staff first. */
  readonly hands: readonly Hand[]
  /** The notes that start in [start, end). */
  readonly notes: readonly Note[]
  /** Their neighbours in the same bars and the next: context for the rhythm, not drawn. */
  readonly around: readonly Note[]
  /** The bars that the stretch touches and the one after: an onset may be written on its bar line. */
  readonly bars: readonly Bar[]
  readonly keys: readonly KeySignature[]
  /** Set where the stretch is a system of the whole piece, one line after the other. */
  readonly system?: SystemPlace
}

/** What a line must know of those before and after it. */
export interface SystemPlace {
  /** The time signature is the one of the line before: it is not printed again. */
  readonly sameTime: boolean
  /** The piece ends here. */
  readonly isLast: boolean
}

export const cutStretch = (
  score: Score,
  start: Tick,
  end: Tick,
  choice: HandChoice,
): Stretch | undefined => {
  const from = score.bars.findLastIndex((bar) => bar.start <= start)
  const to = score.bars.findLastIndex((bar) => bar.start < end)
  const first = score.bars[from]
  const last = score.bars[to]
  if (!first || !last || end <= start) return undefined
  const hands: readonly Hand[] = choice === 'both' ? ['right', 'left'] : [choice]
  const near = score.notes.filter(
    (note) =>
      hands.includes(note.hand) &&
      note.start < last.start + 2 * last.length &&
      note.start + note.length > first.start,
  )
  const isDrawn = (note: Note): boolean => note.start >= start && note.start < end
  return {
    ticksPerQuarter: score.ticksPerQuarter,
    start,
    end,
    hands,
    notes: near.filter(isDrawn),
    around: near.filter((note) => !isDrawn(note)),
    bars: score.bars.slice(from, to + 2),
    keys: score.keys,
  }
}

/** Whole bars [fromBar, toBar] of both hands as a line of the piece; of one hand where the other has no note at all. */
export const cutSystem = (score: Score, fromBar: number, toBar: number): Stretch | undefined => {
  const first = score.bars[fromBar]
  const last = score.bars[toBar]
  if (!first || !last) return undefined
  const stretch = cutStretch(score, first.start, tick(last.start + last.length), handsOf(score))
  const before = score.bars[fromBar - 1]?.time
  const sameTime = before?.beats === first.time.beats && before.beatType === first.time.beatType
  return stretch && { ...stretch, system: { sameTime, isLast: toBar === score.bars.length - 1 } }
}

const handsOf = ({ notes }: Score): HandChoice => {
  const [first] = notes
  return !first || notes.some((note) => note.hand !== first.hand) ? 'both' : first.hand
}
