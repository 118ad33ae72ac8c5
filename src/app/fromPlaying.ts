import { beatAt, beatsOf, type Beat } from '@/difficulty/beats'
import type { HardSpot } from '@/difficulty/difficulty'
import { clockOf } from '@/difficulty/strokes'
import { groupBy } from '@/journal/groupBy'
import type { Chunk, Onset } from '@/music/chunk'
import { keepsOnsets } from '@/music/form'
import { hands, type Hand, type Score } from '@/music/music'
import { chunkAt } from '@/music/place'
import { tick, type Tick } from '@/music/units'
import type { FlawCount } from '@/review/flaws'
import type { ChunkFigures } from '@/review/pieceReview'
import { estimateShare } from '@/review/proportion'

/** What the record of a piece tells of its places. */
export interface PlayedRecord {
  readonly chunks: readonly Pick<ChunkFigures, 'chunk' | 'drill' | 'state' | 'tally'>[]
  readonly places: readonly FlawCount[]
}

/** So many repetitions went over a place, and at least so many of them were flawed just there. */
export interface PlayedFigures {
  readonly flawed: number
  readonly of: number
}

/** A hard spot as the analysis found it, or as the person's playing says. */
export interface PlayedSpot extends HardSpot {
  /** Where flaws pile up in it: the figures of its worst beat. */
  readonly played?: PlayedFigures
}

/** Fewer repetitions than these say nothing of a place, whatever came of them. */
const leastRepetitions = 10
/** Flaws pile up where their share is surely higher than in all the rest that was played, and surely this: one in ten makes no hard spot. */
const leastShare = 0.1

/**
 * The record corrects the guess: where the person's own flaws pile up, a hard spot is raised by the
 * share that is sure (the lower bound of its interval: surely every second repetition flawed there is
 * half as difficult again), and where none was found there is one. The hardest first.
 */
export const correctByPlaying = (
  score: Score,
  found: readonly HardSpot[],
  record: PlayedRecord,
): readonly PlayedSpot[] => {
  const piles = pilesIn(score, record)
  const raised = found.map((spot): PlayedSpot => {
    const worst = worstIn(piles, spot)
    return worst ? { ...spot, ...raise(spot.difficulty, worst) } : spot
  })
  const least = Math.min(...found.map(({ difficulty }) => difficulty))
  const added = piles
    .filter((pile) => !found.some((spot) => isIn(spot, pile)))
    .map((pile): PlayedSpot => {
      const { from, to, hand } = pile
      const unknown = { reasons: [], strains: false }
      return { from, to, hand, ...unknown, ...raise(Number.isFinite(least) ? least : 1, pile) }
    })
  return [...raised, ...added].toSorted((a, b) => b.difficulty - a.difficulty || a.from - b.from)
}

/** Of each stretch the figures of the worst in it, and by how much that raises its difficulty. */
export const raisesIn = (
  score: Score,
  record: PlayedRecord,
): ((
  stretch: Stretch,
) => { readonly times: number; readonly played: PlayedFigures } | undefined) => {
  const piles = pilesIn(score, record)
  return (stretch) => {
    const worst = worstIn(piles, stretch)
    return worst && { times: 1 + worst.sure, played: { flawed: worst.flawed, of: worst.of } }
  }
}

const raise = (
  difficulty: number,
  { sure, flawed, of }: Pile,
): Pick<PlayedSpot, 'difficulty' | 'played'> => ({
  difficulty: difficulty * (1 + sure),
  played: { flawed, of },
})

/** Neighbouring beats in which the flaws of a hand pile up, with the figures of the worst. */
interface Pile extends PlayedFigures {
  readonly hand: Hand
  readonly from: Tick
  readonly to: Tick
  /** The lower bound of the share that is flawed. */
  readonly sure: number
}

/** From where to where, in one hand or both. */
type Stretch = Pick<HardSpot, 'from' | 'to' | 'hand'>

const isIn = (stretch: Stretch, pile: Pile): boolean =>
  (stretch.hand === 'both' || stretch.hand === pile.hand) &&
  stretch.from < pile.to &&
  pile.from < stretch.to

const worstIn = (piles: readonly Pile[], stretch: Stretch): Pile | undefined =>
  piles.filter((pile) => isIn(stretch, pile)).toSorted((a, b) => b.sure - a.sure)[0]

const pilesIn = (score: Score, record: PlayedRecord): readonly Pile[] => {
  const beats = beatsOf(score, clockOf(score, undefined))
  const drilled = drilledIn(score, record)
  return hands.flatMap((hand) => findPiles(beats, hand, drilled))
}

/** A chunk that is not secure, with what was played of it. */
interface Drilled {
  readonly chunk: Chunk
  readonly tally: ChunkFigures['tally']
  readonly flaws: readonly FlawCount[]
}

const drilledIn = (score: Score, { chunks, places }: PlayedRecord): readonly Drilled[] => {
  const flaws = groupBy(places, ({ chunk }) => chunk)
  return chunks.flatMap(({ chunk: id, drill, state, tally }) => {
    // What has become secure is no longer hard.
    if (!drill || !keepsOnsets(drill.form) || state === 'secure' || state === 'kept') return []
    const chunk = chunkAt(score, drill.place)
    return chunk ? [{ chunk, tally, flaws: flaws.get(id) ?? [] }] : []
  })
}

const findPiles = (
  beats: readonly Beat[],
  hand: Hand,
  drilled: readonly Drilled[],
): readonly Pile[] => {
  const counted = countBeats(beats, hand, drilled)
  const all = counted.reduce(
    (sum, each) => ({ flawed: sum.flawed + each.flawed, of: sum.of + each.of }),
    { flawed: 0, of: 0 },
  )
  const piles: Pile[] = []
  for (const [i, { start, end }] of beats.entries()) {
    const { flawed = 0, of = 0 } = counted[i] ?? {}
    const sure = estimateShare(flawed, of)?.low ?? 0
    const elsewhere = all.of > of ? (all.flawed - flawed) / (all.of - of) : 0
    if (of < leastRepetitions || sure < leastShare || sure <= elsewhere) continue
    const pile: Pile = { hand, from: start, to: end, sure, flawed, of }
    const last = piles.at(-1)
    if (last?.to !== start) piles.push(pile)
    else piles[piles.length - 1] = { ...(last.sure < sure ? pile : last), from: last.from, to: end }
  }
  return piles
}

/** How often each beat was played by a hand, and how often it was flawed. */
const countBeats = (
  beats: readonly Beat[],
  hand: Hand,
  drilled: readonly Drilled[],
): readonly PlayedFigures[] => {
  const counts = beats.map(() => ({ flawed: 0, of: 0 }))
  for (const { chunk, tally, flaws } of drilled) {
    const worst = new Map<number, number>()
    for (const flaw of flaws) {
      const onset = chunk.onsets[flaw.onset]
      if (!onset || handOf(onset, flaw) !== hand) continue
      const beat = beatOf(beats, chunk, onset)
      // Of several flaws in one beat the most frequent: they may be of the same repetitions.
      worst.set(beat, Math.max(worst.get(beat) ?? 0, Math.min(flaw.times, tally.flawed)))
    }
    const touched = new Set(
      chunk.onsets
        .filter(({ notes }) => notes.some((note) => note.hand === hand))
        .map((onset) => beatOf(beats, chunk, onset)),
    )
    for (const beat of touched) {
      const count = counts[beat]
      if (!count) continue
      count.of += tally.clean + tally.flawed
      count.flawed += worst.get(beat) ?? 0
    }
  }
  return counts
}

/** Whose a flaw is: of the note that it names, else of the only hand there. */
const handOf = ({ notes }: Onset, { written, notes: named }: FlawCount): Hand | undefined => {
  const note =
    notes.find(({ ids }) => ids.some((id) => named.includes(id))) ??
    notes.find(({ key }) => key === written)
  if (note) return note.hand
  return notes.every(({ hand }) => hand === notes[0].hand) ? notes[0].hand : undefined
}

const beatOf = (beats: readonly Beat[], chunk: Chunk, { start }: Onset): number =>
  beatAt(beats, tick(chunk.start + start))
