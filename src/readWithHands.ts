import { inferHands } from '@/hands/hands'
import { readPiece } from '@/score/readPiece'

/** Reads a piece and infers the hands where the file does not say them. */
export const readWithHands = (
  bytes: Uint8Array,
  fileName: string,
  parts?: readonly number[],
): ReturnType<typeof readPiece> => {
  const read = readPiece(bytes, fileName, parts)
  if (!read.ok) return read
  return { ok: true, value: { ...read.value, score: inferHands(read.value.score) } }
}
