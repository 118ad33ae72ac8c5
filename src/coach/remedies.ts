import { usualSpan, widestIn } from '@/exercises/blocked'
import { writeVariant, type Variant } from '@/exercises/variants'
import type { Chunk } from '@/music/chunk'
import type { Form } from '@/music/form'
import { hands, type Hand, type HandChoice, type Score } from '@/music/music'
import { chunkAt, placeOf } from '@/music/place'
import { tempo, tick, type Tempo } from '@/music/units'
import { beginCoach } from './coach'
import type { Diagnosis, LikelyKind } from './diagnose'
import type { Endurance } from './endurance'
import { cameFrom, lineOf } from './handLine'
import { limits } from './limits'
import type { RemedyKind } from './remedyKinds'
import type { Coach } from './standing'

/** An exercise against a problem, cut from the chunk as it is written. */
export interface Remedy {
  readonly kind: RemedyKind
  /** First and last onset of the chunk. */
  readonly from: number
  readonly to: number
  readonly hand: HandChoice
  readonly form: Form
  /** Of the rung at which the drill stopped. */
  readonly tempoShare: number
}

/** Remedies by likely kind, the most likely to help first; common practice, no source. */
const remediesFor: { readonly [kind in LikelyKind]: readonly RemedyKind[] } = {
  shortLeap: ['leapAlone', 'oneHand', 'smallGroup', 'loop'],
  longLeap: ['leapAlone', 'oneHand', 'smallGroup', 'loop'],
  weakFinger: ['smallGroup', 'oneHand', 'fingering'],
  neighbours: ['smallGroup', 'fingering', 'oneHand'],
  handsApart: ['handsSlowly', 'oneHand', 'loop', 'smallGroup'],
  positionChange: ['loop', 'blocked', 'fingering', 'oneHand'],
  rhythm: ['tapFirst', 'oneHand', 'smallGroup'],
  accidental: ['nameKeys', 'smallGroup', 'loop'],
  unknown: ['smallGroup', 'oneHand', 'loop', 'fingering'],
}

/** As many as keys 1, 2, 3 choose from. */
const mostOffered = 3

/** The slowest that a remedy is played where the drill is not slower still, quarters a minute. */
const slowest = 20

/**
 * Two or three remedies for a problem, each of which can be played at once. `written` is the drilled
 * chunk as written: the place is found by its notes, whatever form was drilled. No blocked chord is wider
 * than `span`, what the hand reaches in semitones.
 */
export const offerRemedies = (
  score: Score,
  written: Chunk,
  diagnosis: Diagnosis,
  span: number = usualSpan,
): readonly Remedy[] => {
  const onset = written.onsets.findIndex(({ notes }) =>
    notes.some((note) => note.ids.some((id) => diagnosis.notes.includes(id))),
  )
  if (onset < 0) return []
  const hand = diagnosis.hand ?? busierHand(written)
  return remediesFor[diagnosis.likely]
    .flatMap((kind) => layOut(kind, written, onset, hand) ?? [])
    .filter((remedy) => {
      const exercise = remedyExercise(score, written, remedy)
      return exercise && (remedy.form !== 'blocked' || widestIn(exercise.chunk) <= span)
    })
    .slice(0, mostOffered)
}

/** What is to be played: the stretch of the chunk in the remedy's hand and form. */
export const remedyExercise = (
  score: Score,
  written: Chunk,
  { from, to, hand, form }: Remedy,
): Variant | undefined => {
  const onsets = written.onsets.slice(from, to + 1)
  const [first] = onsets
  if (!first) return undefined
  const start = tick(written.start + first.start)
  const place = placeOf({
    ...written,
    hand,
    start,
    onsets: onsets.map((onset) => ({ ...onset, start: tick(onset.start - first.start) })),
  })
  const chunk = chunkAt(score, place)
  return chunk && writeVariant(score, chunk, form)
}

/**
 * The drill of a remedy: a coach of its own, whose goal is the remedy's tempo. Three clean in a row
 * there and it is secure: the problem is solved. It eases off below that as in any drill.
 */
export const beginRemedy = (remedy: Remedy, rung: Tempo, endurance?: Endurance): Coach => {
  const share = Math.round(rung * remedy.tempoShare)
  const goalTempo = tempo(Math.max(share, Math.min(slowest, rung)))
  const { streak } = limits.remedy
  const ladder = { kind: 'classic' } as const
  return beginCoach({ streakGoal: streak, goalTempo, startTempo: goalTempo, ladder }, endurance)
}

/** The remedy at this place; `undefined` where it makes no sense. */
const layOut = (kind: RemedyKind, chunk: Chunk, onset: number, hand: Hand): Remedy | undefined => {
  const together = chunk.hand === 'both'
  const near = (reach: number): { readonly from: number; readonly to: number } => ({
    from: Math.max(0, onset - reach),
    to: Math.min(chunk.onsets.length - 1, onset + reach),
  })
  const plain = { kind, hand: chunk.hand, form: 'asWritten' } as const
  switch (kind) {
    case 'smallGroup':
      return { ...plain, ...threeAround(chunk, onset), tempoShare: 0.7 }
    case 'oneHand': {
      const stretch = together ? handStretch(chunk, onset, hand) : undefined
      return stretch && { ...plain, ...stretch, hand, tempoShare: 0.8 }
    }
    case 'blocked':
      return { ...plain, ...near(2), form: 'blocked', tempoShare: 0.6 }
    case 'loop':
      return { ...plain, ...near(2), tempoShare: 0.7 }
    case 'leapAlone': {
      const before = cameFrom(lineOf(chunk, hand), onset)
      return before && { ...plain, from: before.onset, to: onset, hand, tempoShare: 0.5 }
    }
    case 'tapFirst':
      return { ...plain, ...near(2), tempoShare: 0.5 }
    case 'handsSlowly':
      return together ? { ...plain, ...near(2), tempoShare: 0.5 } : undefined
    case 'fingering':
      return { ...plain, ...threeAround(chunk, onset), tempoShare: 0.6 }
    case 'nameKeys':
      return { ...plain, ...near(2), tempoShare: 0.6 }
  }
}

/** Three onsets with the place in the middle where there is room. */
const threeAround = (
  chunk: Chunk,
  onset: number,
): { readonly from: number; readonly to: number } => {
  const last = chunk.onsets.length - 1
  const from = Math.max(0, Math.min(onset - 1, last - 2))
  return { from, to: Math.min(last, from + 2) }
}

/** So far around the place that the hand has two onsets before it and two after, as far as there are. */
const handStretch = (
  chunk: Chunk,
  onset: number,
  hand: Hand,
): { readonly from: number; readonly to: number } | undefined => {
  const line = lineOf(chunk, hand).map((place) => place.onset)
  const before = line.filter((i) => i <= onset).slice(-3)
  const after = line.filter((i) => i > onset).slice(0, 2)
  const stretch = [...before, ...after]
  const [from, to] = [stretch.at(0), stretch.at(-1)]
  return from === undefined || to === undefined ? undefined : { from, to }
}

/** Where the hand cannot be told: the one with more to play. */
const busierHand = (chunk: Chunk): Hand => {
  const [left, right] = hands.map((hand) => lineOf(chunk, hand).flatMap(({ keys }) => keys).length)
  return (left ?? 0) > (right ?? 0) ? 'left' : 'right'
}
