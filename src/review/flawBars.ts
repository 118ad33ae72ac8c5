import { joinDetails } from '@/journal/flawCounts'
import { groupBy } from '@/journal/groupBy'
import type { RecordedFlawKind } from '@/journal/words'
import { keepsOnsets } from '@/music/form'
import type { Bar, Score } from '@/music/music'
import { chunkAt } from '@/music/place'
import type { ChunkId, NoteId } from '@/music/units'
import type { FlawCount } from './flaws'
import type { ChunkFigures, PieceReview } from './pieceReview'

/** Where in the score a flaw stands: at a note, or over a stretch as far as another one. */
export interface Located {
  readonly note: NoteId
  readonly until?: NoteId
}

/** One kind of flaw at one note or over one stretch of the score, over all chunks that hold it. */
export interface NoteFlaw extends Located, Pick<FlawCount, 'played' | 'faster'> {
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

/**
 * Where in the score a flaw of a chunk stands: at its own note, or the first one of its onset. A drift
 * is of the whole chunk: it stands over the stretch from its first onset to its last.
 */
export type Locate = (
  chunk: ChunkId,
  flaw: Pick<FlawCount, 'kind' | 'onset'> & { readonly notes?: readonly NoteId[] },
) => Located | undefined

export const locateIn = (
  score: Score,
  chunks: readonly Pick<ChunkFigures, 'chunk' | 'drill'>[],
): Locate => {
  const onsets = new Map(chunks.map((chunk) => [chunk.chunk, notesOf(score, chunk)]))
  /** Chunks in a form whose numbers of onsets are not those of the score. */
  const renumbered = new Set(
    chunks.flatMap(({ chunk, drill }) => (drill && !keepsOnsets(drill.form) ? [chunk] : [])),
  )
  return (chunk, { kind, notes, onset }) => {
    const of = onsets.get(chunk)
    const [from, until] = [of?.[0], of?.at(-1)]
    if (kind === 'drift' && from !== undefined && until !== undefined) return { note: from, until }
    const note = notes?.[0] ?? (renumbered.has(chunk) ? undefined : of?.[onset])
    return note === undefined ? undefined : { note }
  }
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
    const at = locate(flaw.chunk, flaw)
    const barIndex = at && barOf(at.note)
    return at === undefined || barIndex === undefined ? [] : [{ ...flaw, ...at, barIndex }]
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
const notesOf = (score: Score, { drill }: Pick<ChunkFigures, 'drill'>): readonly NoteId[] =>
  (drill && chunkAt(score, drill.place)?.onsets.map(({ notes }) => notes[0].ids[0])) ?? []

const joinNotes = (flaws: readonly NoteFlaw[]): readonly NoteFlaw[] =>
  [...groupBy(flaws, ({ note, until = '', kind }) => `${note} ${until} ${kind}`).values()]
    .map((of) => {
      const [{ note, until, kind }] = of
      const at = { note, ...(until === undefined ? {} : { until }) }
      return { ...at, kind, times: sum(of), ...joinDetails(of) }
    })
    .toSorted((a, b) => b.times - a.times)

const mostOf = (flaws: readonly FlawCount[]): ChunkId | undefined =>
  [...groupBy(flaws, ({ chunk }) => chunk)]
    .map(([chunk, of]) => ({ chunk, times: sum(of) }))
    .toSorted((a, b) => b.times - a.times)[0]?.chunk

const sum = (counts: readonly { readonly times: number }[]): number =>
  counts.reduce((total, { times }) => total + times, 0)
