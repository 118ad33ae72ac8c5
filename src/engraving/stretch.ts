import type { Bar, Finger, Hand, HandChoice, KeySignature, Note, Score } from '@/music/music'
import { tick, type NoteId, type Tick } from '@/music/units'
import { readingsOf, type Readings } from './readings'

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
  /** Clefs and octave lines, the same in every drawing of the piece. */
  readonly readings: Readings
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

/** The digits to print at a note, by its id; the first finger and those that take over from it. */
export type Fingers = ReadonlyMap<NoteId, readonly Finger[]>

const asWritten: Fingers = new Map()

/** `fingers` take the place of those that the score has; an empty list prints none. */
export const cutStretch = (
  score: Score,
  start: Tick,
  end: Tick,
  choice: HandChoice,
  fingers: Fingers = asWritten,
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
    notes: near.filter(isDrawn).map((note) => withFingers(note, fingers)),
    around: near.filter((note) => !isDrawn(note)),
    bars: score.bars.slice(from, to + 2),
    keys: score.keys,
    readings: readingsOf(score),
  }
}

const withFingers = (note: Note, fingers: Fingers): Note => {
  const chosen = fingers.get(note.id)
  return chosen ? { ...note, fingers: chosen } : note
}

/** Whole bars [fromBar, toBar] of both hands as a line of the piece; of one hand where the other has no note at all. */
export const cutSystem = (
  score: Score,
  fromBar: number,
  toBar: number,
  fingers: Fingers = asWritten,
): Stretch | undefined => {
  const first = score.bars[fromBar]
  const last = score.bars[toBar]
  if (!first || !last) return undefined
  const stretch = cutStretch(
    score,
    first.start,
    tick(last.start + last.length),
    handsOf(score),
    fingers,
  )
  const before = score.bars[fromBar - 1]?.time
  const sameTime = before?.beats === first.time.beats && before.beatType === first.time.beatType
  return stretch && { ...stretch, system: { sameTime, isLast: toBar === score.bars.length - 1 } }
}

const handsOf = ({ notes }: Score): HandChoice => {
  const [first] = notes
  return !first || notes.some((note) => note.hand !== first.hand) ? 'both' : first.hand
}
