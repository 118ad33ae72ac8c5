import { groupBy } from '@/journal/groupBy'
import type { RecordedFlawKind } from '@/journal/words'
import type { Bar, Score } from '@/music/music'
import { chunkAt } from '@/music/place'
import type { ChunkId, NoteId } from '@/music/units'
import type { FlawCount } from './flaws'
import type { ChunkFigures, PieceReview } from './pieceReview'

/** One kind of flaw at one note of the score, over all chunks that hold it. */
export interface NoteFlaw {
  readonly note: NoteId
  readonly kind: RecordedFlawKind
  readonly times: number
}

/** What went wrong in one bar. */
export interface BarFlaws {
  readonly bar: Bar
  readonly barIndex: number
  readonly times: number
  /** The most frequent first. */
  readonly notes: readonly NoteFlaw[]
  /** The chunk in whose drills most of them came. */
  readonly chunk: ChunkId
}

/** The note of the score at which a flaw of a chunk stands: its own, or the first one of its onset. */
export type Locate = (
  chunk: ChunkId,
  flaw: { readonly onset: number; readonly notes?: readonly NoteId[] },
) => NoteId | undefined

export const locateIn = (
  score: Score,
  chunks: readonly Pick<ChunkFigures, 'chunk' | 'drill'>[],
): Locate => {
  const onsets = new Map(chunks.map((chunk) => [chunk.chunk, notesOf(score, chunk)]))
  return (chunk, { notes, onset }) => notes?.[0] ?? onsets.get(chunk)?.[onset]
}

/** The bar of a note of the score, counted from 0. */
export type BarOf = (note: NoteId) => number | undefined

export const barsIn = (score: Score): BarOf => {
  const bars = new Map(score.notes.map(({ id, barIndex }) => [id, barIndex]))
  return (note) => bars.get(note)
}

/**
 * Where in the score the flaws are, the bar with most first. What a chunk without a known place, or as
 * chords, says of an onset alone cannot be placed and is left out.
 */
export const placeFlaws = (
  score: Score,
  { places, chunks }: Pick<PieceReview, 'places' | 'chunks'>,
): readonly BarFlaws[] => {
  const barOf = barsIn(score)
  const locate = locateIn(score, chunks)
  const placed = places.flatMap((flaw) => {
    const note = locate(flaw.chunk, flaw)
    const barIndex = note === undefined ? undefined : barOf(note)
    return note === undefined || barIndex === undefined ? [] : [{ ...flaw, note, barIndex }]
  })
  return [...groupBy(placed, ({ barIndex }) => barIndex)]
    .flatMap(([barIndex, flaws]): BarFlaws[] => {
      const bar = score.bars[barIndex]
      const chunk = mostOf(flaws)
      if (!bar || chunk === undefined) return []
      return [{ bar, barIndex, times: sum(flaws), notes: joinNotes(flaws), chunk }]
    })
    .toSorted((a, b) => b.times - a.times || a.barIndex - b.barIndex)
}

/** The first note of each onset. */
const notesOf = (score: Score, { drill }: Pick<ChunkFigures, 'drill'>): readonly NoteId[] => {
  // As chords several onsets are one: their numbers are not those of the score.
  if (!drill || drill.form === 'blocked') return []
  return chunkAt(score, drill.place)?.onsets.map(({ notes }) => notes[0].ids[0]) ?? []
}

const joinNotes = (flaws: readonly NoteFlaw[]): readonly NoteFlaw[] =>
  [...groupBy(flaws, ({ note, kind }) => `${note} ${kind}`).values()]
    .map((of) => ({ note: of[0].note, kind: of[0].kind, times: sum(of) }))
    .toSorted((a, b) => b.times - a.times)

const mostOf = (flaws: readonly FlawCount[]): ChunkId | undefined =>
  [...groupBy(flaws, ({ chunk }) => chunk)]
    .map(([chunk, of]) => ({ chunk, times: sum(of) }))
    .toSorted((a, b) => b.times - a.times)[0]?.chunk

const sum = (counts: readonly { readonly times: number }[]): number =>
  counts.reduce((total, { times }) => total + times, 0)
