import { writeVariant } from '@/exercises/variants'
import type { RecordedFlaw, RepetitionRecorded } from '@/journal/journal'
import type { DrillSum } from '@/journal/sums'
import { decodeTake } from '@/journal/take'
import type { Flaw, Mark } from '@/judge/flaw'
import { replayTake } from '@/judge/replay'
import type { Chunk } from '@/music/chunk'
import { splitFormedId } from '@/music/form'
import type { Take } from '@/music/keyEvent'
import type { Score } from '@/music/music'
import { chunkAt } from '@/music/place'
import { ms, quarterMs } from '@/music/units'
import type { Sheet } from './practising'

/** A repetition as it can be seen and heard again. */
export interface Seen {
  /** The notation of what was played; absent where the piece or the place is not at hand. */
  readonly sheet?: Sheet
  /** On the notation, as its verdict had them. */
  readonly marks: readonly Mark[]
  /** Absent where none was recorded, or it cannot be read. */
  readonly take?: Take
}

export const seeRepetition = (
  repetition: RepetitionRecorded,
  score: Score | undefined,
  drill: DrillSum | undefined,
): Seen => {
  const sheet = score && drill && sheetOf(score, repetition, drill)
  const decoded = decodeTake(repetition.take, ms(0))
  const take = decoded.ok && decoded.value.events.length > 0 ? decoded.value : undefined
  return {
    ...(sheet ? { sheet } : {}),
    marks: sheet ? marksOf(sheet.chunk, repetition, take) : [],
    ...(take ? { take } : {}),
  }
}

const sheetOf = (
  score: Score,
  { chunk }: RepetitionRecorded,
  { place, form }: DrillSum,
): Sheet | undefined => {
  const written = chunkAt(score, place)
  return written && writeVariant(score, written, splitFormedId(chunk)?.form ?? form)
}

/**
 * Judged again by the settings of then, where that says the same as the record: so the right notes have
 * their marks too. Where this judge would say otherwise, the flaws as they were recorded, no others.
 */
const marksOf = (
  chunk: Chunk,
  repetition: RepetitionRecorded,
  take: Take | undefined,
): readonly Mark[] => {
  const { standard, forgiveBrushed, rung, clickMs, verdict, flaws } = repetition
  const settings = {
    standard,
    forgiveBrushed,
    quarter: quarterMs(rung),
    ...(clickMs === undefined ? {} : { click: ms(clickMs) }),
  }
  const [again, ...others] = take ? replayTake(chunk, settings, take).repetitions : []
  const isSame =
    others.length === 0 && again?.verdict === verdict && namesOf(again.flaws) === namesOf(flaws)
  return isSame ? again.marks : flaws.map((flaw) => recordedMark(chunk, flaw))
}

const namesOf = (flaws: readonly Pick<Flaw, 'kind' | 'onset'>[]): string =>
  flaws.map(({ kind, onset }) => `${kind} ${onset}`).join(', ')

const recordedMark = (chunk: Chunk, flaw: RecordedFlaw): Mark => {
  const { kind, onset, notes, played, playedMs = 0, velocity = 64, forgiven } = flaw
  const expected = chunk.onsets[onset]?.notes.find(({ ids }) => ids[0] === notes?.[0])
  return {
    kind,
    onset,
    ...(expected ? { expected } : {}),
    ...(played === undefined
      ? {}
      : { played: { index: 0, key: played, at: ms(playedMs), velocity } }),
    ...(flaw.ms === undefined ? {} : { ms: ms(flaw.ms) }),
    ...(forgiven ? { forgiven } : {}),
  }
}
