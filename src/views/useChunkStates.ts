import { useEffect, useState } from 'react'
import type { OpenPiece } from '@/app/library'
import type { ChunkId } from '@/music/units'
import type { ChunkState } from '@/review/chunkStates'
import { useApp } from './context'

const none: ReadonlyMap<ChunkId, ChunkState> = new Map()

/** How far each chunk of the piece has come; none until the record is read. */
export const useChunkStates = (piece: OpenPiece): ReadonlyMap<ChunkId, ChunkState> => {
  const app = useApp()
  const [states, setStates] = useState(none)
  useEffect(() => {
    let here = true
    void app.chunkStates(piece).then((read) => {
      if (here) setStates(read)
    })
    return () => {
      here = false
    }
  }, [app, piece])
  return states
}
