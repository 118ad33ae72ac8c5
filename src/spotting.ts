import type { Difficulty } from '@/difficulty/difficulty'
import type { Score } from '@/music/music'
import type { Tempo } from '@/music/units'

export interface SpottingRequest {
  readonly score: Score
  readonly tempo: Tempo
}

/** Looks for the hard spots in a worker, so that the page does not stall and its first load is without the analysis. */
export const assessInWorker = (score: Score, tempo: Tempo): Promise<Difficulty> => {
  const worker = new Worker(new URL('./spotting.worker.ts', import.meta.url), { type: 'module' })
  return new Promise<Difficulty>((resolve, reject) => {
    worker.onmessage = (event: MessageEvent<Difficulty>) => resolve(event.data)
    worker.onerror = (event) => reject(new Error(event.message))
    const request: SpottingRequest = { score, tempo }
    worker.postMessage(request)
  }).finally(() => worker.terminate())
}
