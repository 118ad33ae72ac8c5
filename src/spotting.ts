import type { Difficulty } from '@/difficulty/difficulty'
import type { Score } from '@/music/music'
import type { Tempo } from '@/music/units'

export interface SpottingRequest {
  readonly score: Score
  readonly tempo: Tempo
}

let worker: Worker | undefined
let asked: Promise<unknown> = Promise.resolve()

/**
 * Looks for the hard spots in a worker, so that the page does not stall and its first load is without the
 * analysis. The worker stays for the next tempo or piece: it is warm then, and knows the costs of fingers.
 */
export const assessInWorker = (score: Score, tempo: Tempo): Promise<Difficulty> => {
  const answer = asked.then(() => ask({ score, tempo }))
  asked = answer.catch(() => {
    worker?.terminate()
    worker = undefined
  })
  return answer
}

const ask = (request: SpottingRequest): Promise<Difficulty> => {
  const at = (worker ??= new Worker(new URL('./spotting.worker.ts', import.meta.url), {
    type: 'module',
  }))
  return new Promise((resolve, reject) => {
    at.onmessage = (event: MessageEvent<Difficulty>) => resolve(event.data)
    at.onerror = (event) => reject(new Error(event.message))
    at.postMessage(request)
  })
}
