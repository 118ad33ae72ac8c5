import { key as toKey, tick, type Key, type Tick } from '@/music/units'
import type { SmfEvent } from './score'

export interface FileNote {
  readonly start: Tick
  readonly length: Tick
  readonly key: Key
  readonly channel: number
}

/**
 * Joins each note-on of a track with its note-off; notes come in the order of their ends. Of several
 * notes that sound on one key and channel the first in is the first out. Notes still sounding at the
 * end of the track end there (`hanging` counts them). A note without length gets one tick.
 */
export const joinNotes = (
  events: readonly SmfEvent[],
): { readonly notes: readonly FileNote[]; readonly hanging: number } => {
  const notes: FileNote[] = []
  /** When the notes began that sound on a channel and key. */
  const sounding = new Map<number, Tick[]>()
  const close = (start: Tick, end: Tick, key: Key, channel: number): void => {
    notes.push({ start, length: tick(Math.max(1, end - start)), key, channel })
  }
  for (const e of events) {
    if (e.kind !== 'noteOn' && e.kind !== 'noteOff') continue
    const place = e.channel * keyCount + e.key
    const starts = sounding.get(place) ?? []
    if (e.kind === 'noteOn') {
      starts.push(e.at)
      sounding.set(place, starts)
    } else {
      const start = starts.shift()
      if (start !== undefined) close(start, e.at, e.key, e.channel)
    }
  }
  const closed = notes.length
  const end = events.at(-1)?.at ?? tick(0)
  for (const [place, starts] of sounding)
    for (const start of starts)
      close(start, end, toKey(place % keyCount), Math.floor(place / keyCount))
  return { notes, hanging: notes.length - closed }
}

const keyCount = 128
