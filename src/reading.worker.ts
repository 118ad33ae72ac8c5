import { readPiece } from '@/score/readPiece'
import type { ReadingRequest } from './reading'

self.onmessage = ({ data }: MessageEvent<ReadingRequest>) =>
  self.postMessage(readPiece(data.bytes, data.fileName))
