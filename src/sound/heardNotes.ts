import type { Chunk } from '@/music/chunk'
import type { Take } from '@/music/keyEvent'
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

/** Down is 64 and more (MIDI 1.0). */
const pedalDown = 64
/** A key that never came up was let go when the listening ended; it sounds so long, seconds. */
const leftDown = 1

/**
 * What was played as it was played: its own times from the first key on, its own velocities, held by
 * the damper pedal where that was down.
 */
export const planTake = ({ events }: Take): readonly HeardNote[] => {
  const origin = events.find(({ kind }) => kind === 'down')?.at ?? 0
  const notes: HeardNote[] = []
  /** What sounds, by key; let go, it sounds on while the pedal is down. */
  const sounding = new Map<Key, { readonly at: number; readonly velocity: number; up: boolean }>()
  let pedal = false
  const end = (key: Key, at: number): void => {
    const note = sounding.get(key)
    if (!note) return
    sounding.delete(key)
    notes.push({ key, at: note.at, length: Math.max(0, at - note.at), velocity: note.velocity })
  }
  for (const event of events) {
    const at = (event.at - origin) / 1000
    if (event.kind === 'down') {
      end(event.key, at)
      sounding.set(event.key, { at, velocity: event.velocity, up: false })
    } else if (event.kind === 'up') {
      const note = sounding.get(event.key)
      if (note) note.up = true
      if (!pedal) end(event.key, at)
    } else if (event.pedal === 'sustain') {
      pedal = event.value >= pedalDown
      if (!pedal) for (const [key, { up }] of sounding) if (up) end(key, at)
    }
  }
  for (const [key, { at }] of sounding) end(key, at + leftDown)
  return notes.toSorted((a, b) => a.at - b.at || a.key - b.key)
}
