import { tick, type Key, type Tick } from '@/music/units'
import type { SmfEvent } from './score'

export interface FileNote {
  readonly start: Tick
  readonly length: Tick
  readonly key: Key
  readonly channel: number
}

/**
 * Joins each note-on of a track with its note-off. Of several notes that sound on one key and
 * channel the first in is the first out. Notes still sounding at the end of the track end there
 * (`hanging` counts them). A note without length gets one tick.
 */
export const joinNotes = (
  events: readonly SmfEvent[],
): { readonly notes: readonly FileNote[]; readonly hanging: number } => {
  const notes: FileNote[] = []
  const sounding = new Map<number, { readonly start: Tick; readonly index: number }[]>()
  const end = events.at(-1)?.at ?? tick(0)
  const close = (index: number, at: Tick): void => {
    const note = notes[index]
    if (!note) return
    const { start, key, channel } = note
    notes[index] = { start, length: tick(Math.max(1, at - start)), key, channel }
  }
  for (const e of events) {
    if (e.kind !== 'noteOn' && e.kind !== 'noteOff') continue
    const place = e.channel * 128 + e.key
    const queue = sounding.get(place) ?? []
    if (e.kind === 'noteOn') {
      queue.push({ start: e.at, index: notes.length })
      sounding.set(place, queue)
      notes.push({ start: e.at, length: tick(1), key: e.key, channel: e.channel })
    } else {
      const first = queue.shift()
      if (first) close(first.index, e.at)
    }
  }
  const left = [...sounding.values()].flat()
  for (const { index } of left) close(index, end)
  return { notes, hanging: left.length }
}
