import type { SpotWords } from '@/app/spotWords'
import type { Difficulty } from '@/difficulty/difficulty'
import type { HandReach } from '@/fingering/spans'
import type { Score } from '@/music/music'
import type { Tempo } from '@/music/units'
import type { PieceLayout } from '@/plan/layOut'
import { askWorker } from './asking'

export interface SpottingRequest {
  readonly score: Score
  readonly tempo: Tempo
  readonly span: HandReach
  /** With the person's word on the hard spots the piece is laid out in places; without it they are found. */
  readonly words?: SpotWords
}

/** Looks for the hard spots in a worker, so that the page does not stall and its first load is without the analysis. */
export const assessInWorker = (score: Score, tempo: Tempo, span: HandReach): Promise<Difficulty> =>
  ask({ score, tempo, span })

/** Lays the piece out in places for the plan, in the same worker. */
export const layOutInWorker = (
  score: Score,
  tempo: Tempo,
  words: SpotWords,
  span: HandReach,
): Promise<PieceLayout> => ask({ score, tempo, span, words })

const ask = askWorker<SpottingRequest>(
  () => new Worker(new URL('./spotting.worker.ts', import.meta.url), { type: 'module' }),
)
