import type { ReadPiece } from '@/app/ports'
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
  if (bytes.length <= smallFile && looksLikeMidi(bytes)) return readHere(bytes, fileName)
  const worker = new Worker(new URL('./reading.worker.ts', import.meta.url), { type: 'module' })
  return new Promise<Result<ReadPiece, ReadProblem>>((resolve, reject) => {
    worker.onmessage = (event: MessageEvent<Result<ReadPiece, ReadProblem>>) => resolve(event.data)
    worker.onerror = (event) => reject(new Error(event.message))
    const request: ReadingRequest = { bytes, fileName, ...(parts ? { parts } : {}) }
    worker.postMessage(request)
  }).finally(() => worker.terminate())
}

/** The hands of the pieces that come with the program are known: a first visit need not load how they are inferred. */
const readHere = async (
  bytes: Uint8Array,
  fileName: string,
): Promise<Result<ReadPiece, ReadProblem>> => {
  const read = readMidiPiece(bytes, fileName)
  if (!read.ok || read.value.score.notes.every(({ handFrom }) => handFrom === 'file')) return read
  const { inferHands } = await import('@/hands/hands')
  return { ok: true, value: { ...read.value, score: inferHands(read.value.score) } }
}
