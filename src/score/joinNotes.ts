import { key as toKey, tick, type Key, type Tick } from '@/music/units'
import type { TrackListener } from './readTrack'
import type { SmfEvent } from './score'
import { readMessage } from './smfEvents'

export interface FileNote {
  readonly start: Tick
  readonly length: Tick
  readonly key: Key
  readonly channel: number
}

export interface JoinedTrack {
  /** In the order of their ends. */
  readonly notes: readonly FileNote[]
  /** How many of them never ended. */
  readonly hanging: number
  /** Its marks, and its programs. */
  readonly others: readonly SmfEvent[]
}

/**
 * Joins each note-on of a track with its note-off while the track is read: to keep both for later
 * takes a third longer. Of several notes that sound on one key and channel the first in is the
 * first out. Notes still sounding at the end of the track end there. A note without length gets one
 * tick.
 */
export const joinNotes = (): TrackListener<JoinedTrack> => {
  const notes: FileNote[] = []
  const others: SmfEvent[] = []
  const sounding: Sounding = { since: [...silence], later: new Map() }
  const { since, later } = sounding
  let end = tick(0)
  return {
    message: (status, first, second, at) => {
      const kind = status & 0xf0
      if (kind !== noteOn && kind !== noteOff) {
        const event = readMessage(status, first, second, at)
        if (event?.kind === 'program') others.push(event)
        return
      }
      const channel = status & 0x0f
      const place = channel * keyCount + first
      const start = since[place]
      if (kind === noteOn && second > 0) {
        if (start === undefined) since[place] = at
        else later.set(place, added(later.get(place), at))
      } else if (start !== undefined) {
        const length = tick(at > start ? at - start : 1)
        notes.push({ start, length, key: toKey(first), channel })
        since[place] = later.size === 0 ? undefined : later.get(place)?.shift()
      }
    },
    mark: (event) => {
      others.push(event)
      end = event.at
    },
    heard: () => {
      const hanging = endAll(sounding, end)
      return { notes: [...notes, ...hanging], hanging: hanging.length, others }
    },
  }
}

/** The status of a note's beginning and end, without the channel (MIDI 1.0). */
const noteOn = 0x90
const noteOff = 0x80

/** What sounds, by channel and key. */
interface Sounding {
  /** When the note began. */
  readonly since: (Tick | undefined)[]
  /** When those began that were struck while it sounded. */
  readonly later: Map<number, Tick[]>
}

const keyCount = 128
const silence: readonly undefined[] = Array.from({ length: 16 * keyCount }, () => undefined)

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
