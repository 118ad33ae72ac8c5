import { identifyPiece, noteNamer } from '@/music/identity'
import type { Bar, Hand, KeySignature, Note, TempoChange } from '@/music/music'
import { failed, ok, type Result } from '@/music/result'
import { defaultTempo } from '@/music/tempoMap'
import { tick, type Key, type NoteId, type Tick } from '@/music/units'
import { barScale, layBars, mostBars } from './bars'
import type { HandedNote } from './part'
import { giveHands } from './partHands'
import type { ReadProblem } from './readProblem'
import type { PieceRead, SmfPiece } from './score'

/** Makes the `Score` that the rest relies on: sorted, every note with a length, a hand and a bar. */
export const validate = (piece: SmfPiece): Result<PieceRead, ReadProblem> => {
  const scaled = scalePiece(piece, barScale(piece.times, piece.ticksPerQuarter))
  const { ticksPerQuarter } = scaled
  const handed = giveHands(scaled.parts)
  const notes = mergeDoubled(handed.notes)
  if (notes.length === 0) return failed({ kind: piece.drumNotes > 0 ? 'onlyDrums' : 'noNotes' })
  const lastEnd = tick(notes.reduce((end, n) => Math.max(end, n.start + n.length), 0))
  const bars = layBars(scaled.times, ticksPerQuarter, lastEnd)
  const lastBar = bars?.at(-1)
  if (!bars || !lastBar) return failed({ kind: 'tooLong', limit: mostBars })
  const end = tick(lastBar.start + lastBar.length)
  return ok({
    score: {
      id: identifyPiece(notes, bars, ticksPerQuarter),
      title: piece.title,
      ticksPerQuarter,
      notes: finish(notes, bars, noteNamer(ticksPerQuarter)),
      bars,
      tempos: tidyTempos(scaled.tempos, end),
      keys: tidyKeys(scaled.keys, end),
      end,
    },
    warnings: [...piece.warnings, ...handed.warnings],
  })
}

const scalePiece = (piece: SmfPiece, scale: number): SmfPiece => {
  if (scale === 1) return piece
  const moved = <T extends { readonly start: Tick }>(mark: T): T => ({
    ...mark,
    start: tick(mark.start * scale),
  })
  return {
    ...piece,
    ticksPerQuarter: piece.ticksPerQuarter * scale,
    parts: piece.parts.map((part) => ({
      ...part,
      notes: part.notes.map((n) => ({ ...moved(n), length: tick(n.length * scale) })),
    })),
    tempos: piece.tempos.map(moved),
    times: piece.times.map(moved),
    keys: piece.keys.map(moved),
  }
}

/** Sorted by start, key, right hand first. Of notes with the same start, key and hand the longest stays. */
const mergeDoubled = (notes: readonly HandedNote[]): HandedNote[] => {
  const sorted = notes.toSorted(
    (a, b) =>
      a.start - b.start ||
      a.key - b.key ||
      handOrder(a.hand) - handOrder(b.hand) ||
      b.length - a.length,
  )
  return sorted.filter((note, i) => {
    const before = sorted[i - 1]
    return before?.start !== note.start || before.key !== note.key || before.hand !== note.hand
  })
}

const handOrder = (hand: Hand): number => (hand === 'right' ? 0 : 1)

/**
 * Gives the notes their bars and names; notes and bars are in order of time. The fields are listed,
 * since a spread with a field after it takes some eight times as long in V8.
 */
const finish = (
  notes: readonly HandedNote[],
  bars: readonly Bar[],
  name: (start: Tick, key: Key) => NoteId,
): Note[] => {
  let barIndex = 0
  return notes.map(({ start, length, key, hand, handFrom }) => {
    while ((bars[barIndex + 1]?.start ?? Infinity) <= start) barIndex++
    return { id: name(start, key), key, start, length, hand, handFrom, barIndex }
  })
}

const tidyTempos = (tempos: readonly TempoChange[], end: Tick): readonly TempoChange[] => {
  const fromZero =
    tempos[0]?.start === 0 ? tempos : [{ start: tick(0), tempo: defaultTempo }, ...tempos]
  return fromZero.filter((t, i) => t.start < end && t.tempo !== fromZero[i - 1]?.tempo)
}

const tidyKeys = (keys: readonly KeySignature[], end: Tick): readonly KeySignature[] =>
  keys.filter((k, i) => {
    const before = keys[i - 1]
    return k.start < end && (k.fifths !== before?.fifths || k.mode !== before.mode)
  })
