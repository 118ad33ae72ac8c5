import { readFileSync, statSync } from 'node:fs'
import { basename } from 'node:path'
import { inferHands } from '@/hands/hands'
import type { Take } from '@/music/keyEvent'
import { failed, ok, type Result } from '@/music/result'
import { largestFile, tooLarge } from '@/score/largestFile'
import { readPiece } from '@/score/readPiece'
import { explainReadProblem } from '@/score/readProblem'
import { readTake } from '@/score/readTake'
import type { PieceRead } from '@/score/score'

/** A piece from a file, its hands inferred where the file does not say them; or one line that says why not. */
export const loadPiece = (path: string): Result<PieceRead, string> => {
  const bytes = loadBytes(path)
  if (!bytes.ok) return bytes
  const read = readPiece(bytes.value, basename(path))
  return read.ok
    ? ok({ ...read.value, score: inferHands(read.value.score) })
    : failed(`${path}: ${explainReadProblem(read.reason)}`)
}

export const loadTake = (path: string): Result<Take, string> => {
  const bytes = loadBytes(path)
  if (!bytes.ok) return bytes
  const take = readTake(bytes.value)
  return take.ok ? take : failed(`${path}: ${explainReadProblem(take.reason)}`)
}

export const loadText = (path: string): Result<string, string> =>
  attempt(path, () => readFileSync(path, 'utf8'))

/** A file that is too large is refused before it is loaded. */
const loadBytes = (path: string): Result<Uint8Array, string> => {
  const size = attempt(path, () => statSync(path).size)
  if (!size.ok) return size
  if (size.value > largestFile)
    return failed(`${path}: ${explainReadProblem(tooLarge(size.value))}`)
  return attempt(path, () => new Uint8Array(readFileSync(path)))
}

const attempt = <T>(path: string, load: () => T): Result<T, string> => {
  try {
    return ok(load())
  } catch (error) {
    return failed(`${path}: The file cannot be opened (${nameOf(error)}): check its name and path.`)
  }
}

/** The usual failures in words; others by the system's own code. */
const nameOf = (error: unknown): string => {
  const code = error instanceof Error && 'code' in error ? String(error.code) : String(error)
  const words: Readonly<Record<string, string>> = {
    ENOENT: 'there is none of that name',
    EISDIR: 'it is a folder',
    EACCES: 'no permission',
  }
  return words[code] ?? code
}
