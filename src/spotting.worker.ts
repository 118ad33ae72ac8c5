import { layOut } from '@/app/layOut'
import { assessDifficulty } from '@/difficulty/difficulty'
import type { SpottingRequest } from './spotting'

self.onmessage = ({ data: { score, tempo, span, words } }: MessageEvent<SpottingRequest>) =>
  self.postMessage(
    words ? layOut(score, tempo, words, span) : assessDifficulty(score, { tempo, span }),
  )
