import { assessDifficulty } from '@/difficulty/difficulty'
import type { SpottingRequest } from './spotting'

self.onmessage = ({ data: { score, tempo } }: MessageEvent<SpottingRequest>) =>
  self.postMessage(assessDifficulty(score, { tempo }))
