import type { ReadPiece } from '@/app/ports'
import { inferHands } from '@/hands/hands'
import type { Result } from '@/music/result'
import { readMidiPiece } from '@/score/readMidiPiece'
import type { ReadProblem } from '@/score/readProblem'
import { looksLikeMidi } from '@/score/smfChunks'

/** A file as small as this is read within a frame or two; starting a worker would take longer. */
const smallFile = 100_000

export interface ReadingRequest {
  readonly bytes: Uint8Array
  readonly fileName: string
  /** Indices of the parts to take; absent: the reader chooses. */
  readonly parts?: readonly number[]
}

/**
 * Reads a piece; a large file in a worker, so that the page does not stall. MusicXML always, so that
 * a first visit need not load its reader.
 */
export const readInWorker = (
  bytes: Uint8Array,
  fileName: string,
  parts?: readonly number[],
): Promise<Result<ReadPiece, ReadProblem>> => {
  if (bytes.length <= smallFile && looksLikeMidi(bytes))
    return Promise.resolve(readHere(bytes, fileName))
  const worker = new Worker(new URL('./reading.worker.ts', import.meta.url), { type: 'module' })
  return new Promise<Result<ReadPiece, ReadProblem>>((resolve, reject) => {
    worker.onmessage = (event: MessageEvent<Result<ReadPiece, ReadProblem>>) => resolve(event.data)
    worker.onerror = (event) => reject(new Error(event.message))
    const request: ReadingRequest = { bytes, fileName, ...(parts ? { parts } : {}) }
    worker.postMessage(request)
  }).finally(() => worker.terminate())
}

const readHere = (bytes: Uint8Array, fileName: string): Result<ReadPiece, ReadProblem> => {
  const read = readMidiPiece(bytes, fileName)
  if (!read.ok) return read
  return { ok: true, value: { ...read.value, score: inferHands(read.value.score) } }
}
