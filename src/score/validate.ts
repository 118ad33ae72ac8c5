import { failed, ok, type Result } from '@/music/result'
import { tick, type Tick } from '@/music/units'
import type { KeySignature } from '@/music/music'
import { barScale, layBars, mostBars } from './bars'
import { estimateKey } from './estimateKey'
import { finishScore, mergeDoubled, sortNotes } from './finishScore'
import { giveHands } from './partHands'
import type { ReadProblem } from './readProblem'
import type { PieceRead, SmfPiece } from './score'
import type { Warning } from './warning'

/** Makes the `Score` that the rest relies on: sorted, every note with a length, a hand and a bar. */
export const validate = (piece: SmfPiece): Result<PieceRead, ReadProblem> => {
  const scaled = scalePiece(piece, barScale(piece.times, piece.ticksPerQuarter))
  const { ticksPerQuarter } = scaled
  const handed = giveHands(scaled.parts)
  const notes = mergeDoubled(sortNotes(handed.notes))
  if (notes.length === 0) return failed({ kind: piece.drumNotes > 0 ? 'onlyDrums' : 'noNotes' })
  const lastEnd = tick(notes.reduce((end, n) => Math.max(end, n.start + n.length), 0))
  const bars = layBars(scaled.times, ticksPerQuarter, lastEnd)
  const lastBar = bars?.at(-1)
  if (!bars || !lastBar) return failed({ kind: 'tooLong', limit: mostBars })
  const end = tick(lastBar.start + lastBar.length)
  const guess = scaled.keys.length === 0 ? estimateKey(notes) : undefined
  const keys = guess ? [guess] : scaled.keys
  return ok({
    score: finishScore({ ...scaled, notes, bars, keys, end }),
    warnings: [...piece.warnings, ...handed.warnings, ...warnOfGuess(guess)],
  })
}

/** C major is what everybody takes for granted; any other guess is told. */
const warnOfGuess = (guess: KeySignature | undefined): readonly Warning[] =>
  !guess || guess.fifths === 0 ? [] : [{ kind: 'guessedKey', fifths: guess.fifths }]

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
