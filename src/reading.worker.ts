import type { ReadingRequest } from './reading'
import { readWithHands } from './readWithHands'

self.onmessage = ({ data }: MessageEvent<ReadingRequest>) =>
  self.postMessage(readWithHands(data.bytes, data.fileName, data.parts))
