import type { Chunk } from '@/music/chunk'
import { quarterMs, type Key, type Tempo } from '@/music/units'
import type { HeardNote } from './sound'

/** Even and a little louder on top, so that the upper line is heard: an example, not a performance. */
const velocity = 68
const topVelocity = 80
/** A key struck again is let go a moment before (common practice, no source), seconds. */
const restrike = 0.03

/** The chunk as written at a tempo: C4 D4 in quarters at 60 -> C4 at 0 s for 1 s, D4 at 1 s for 1 s. */
export const planHearing = (chunk: Chunk, tempo: Tempo): readonly HeardNote[] => {
  const seconds = (ticks: number): number =>
    ((ticks / chunk.ticksPerQuarter) * quarterMs(tempo)) / 1000
  const notes = chunk.onsets.flatMap((onset) =>
    onset.notes.map((note, i): HeardNote => ({
      key: note.key,
      at: seconds(onset.start),
      length: seconds(note.length),
      velocity: i === onset.notes.length - 1 ? topVelocity : velocity,
    })),
  )
  const lastStrike = new Map<Key, number>()
  return notes
    .toReversed()
    .map((note): HeardNote => {
      const again = lastStrike.get(note.key)
      lastStrike.set(note.key, note.at)
      if (again === undefined || note.at + note.length <= again - restrike) return note
      return { ...note, length: Math.max((again - note.at) / 2, again - restrike - note.at) }
    })
    .toReversed()
}
