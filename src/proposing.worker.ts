import { compareFingerings } from '@/fingering/compare'
import { fingerHand } from '@/fingering/fingering'
import type { ProposingAnswer, ProposingRequest } from './proposing'

self.onmessage = ({ data: { notes, settings, versions } }: MessageEvent<ProposingRequest>) => {
  const answer: ProposingAnswer = versions
    ? { kind: 'compared', versions: compareFingerings(notes, settings, versions) }
    : { kind: 'proposed', fingering: fingerHand(notes, settings) }
  self.postMessage(answer)
}
