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
  const sounding: Sounding = { since: [...silence], later: new Map() }
  const notes = joinEnded(events, sounding)
  const hanging = endAll(sounding, events.at(-1)?.at ?? tick(0))
  return { notes: hanging.length === 0 ? notes : [...notes, ...hanging], hanging: hanging.length }
}

/** What sounds, by channel and key. */
interface Sounding {
  /** When the note began. */
  readonly since: (Tick | undefined)[]
  /** When those began that were struck while it sounded. */
  readonly later: Map<number, Tick[]>
}

const keyCount = 128
const silence: readonly undefined[] = Array.from({ length: 16 * keyCount }, () => undefined)

/** A plain loop in a function of its own: closures and iterators take twice as long here (`npm run bench`). */
const joinEnded = (events: readonly SmfEvent[], { since, later }: Sounding): FileNote[] => {
  const notes: FileNote[] = []
  for (let i = 0; i < events.length; i++) {
    const e = events[i]
    if (e?.kind === 'noteOn') {
      const place = e.channel * keyCount + e.key
      if (since[place] === undefined) since[place] = e.at
      else later.set(place, added(later.get(place), e.at))
    } else if (e?.kind === 'noteOff') {
      const { at, channel, key } = e
      const place = channel * keyCount + key
      const start = since[place]
      if (start === undefined) continue
      notes.push({ start, length: tick(at > start ? at - start : 1), key, channel })
      since[place] = later.size === 0 ? undefined : later.get(place)?.shift()
    }
  }
  return notes
}

const added = (starts: Tick[] | undefined, start: Tick): Tick[] => {
  if (!starts) return [start]
  starts.push(start)
  return starts
}

const endAll = ({ since, later }: Sounding, end: Tick): readonly FileNote[] =>
  since.flatMap((first, place) =>
    first === undefined
      ? []
      : [first, ...(later.get(place) ?? [])].map((start) => ({
          start,
          length: tick(Math.max(1, end - start)),
          key: toKey(place % keyCount),
          channel: Math.floor(place / keyCount),
        })),
  )
