import type { SpotWords } from '@/app/spotWords'
import type { Difficulty } from '@/difficulty/difficulty'
import type { Score } from '@/music/music'
import type { Tempo } from '@/music/units'
import type { PieceLayout } from '@/plan/layOut'

export interface SpottingRequest {
  readonly score: Score
  readonly tempo: Tempo
  /** With the person's word on the hard spots the piece is laid out in places; without it they are found. */
  readonly words?: SpotWords
}

let worker: Worker | undefined
let asked: Promise<unknown> = Promise.resolve()

/**
 * Looks for the hard spots in a worker, so that the page does not stall and its first load is without the
 * analysis. The worker stays for the next tempo or piece: it is warm then, and knows the costs of fingers.
 */
export const assessInWorker = (score: Score, tempo: Tempo): Promise<Difficulty> =>
  askNext({ score, tempo })

/** Lays the piece out in places for the plan, in the same worker. */
export const layOutInWorker = (
  score: Score,
  tempo: Tempo,
  words: SpotWords,
): Promise<PieceLayout> => askNext({ score, tempo, words })

/** One after the other. */
const askNext = <Answer>(request: SpottingRequest): Promise<Answer> => {
  const answer = asked.then(() => ask<Answer>(request))
  asked = answer.catch(() => {
    worker?.terminate()
    worker = undefined
  })
  return answer
}

const ask = <Answer>(request: SpottingRequest): Promise<Answer> => {
  const at = (worker ??= new Worker(new URL('./spotting.worker.ts', import.meta.url), {
    type: 'module',
  }))
  return new Promise((resolve, reject) => {
    at.onmessage = (event: MessageEvent<Answer>) => resolve(event.data)
    at.onerror = (event) => reject(new Error(event.message))
    at.postMessage(request)
  })
}
