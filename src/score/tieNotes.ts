import { tick, type Key, type Tick } from '@/music/units'
import type { XmlNote } from './musicXml'
import type { NoteMarks } from './part'

/** A note of one part at its place in the score. */
export interface PlacedNote {
  readonly start: Tick
  readonly length: Tick
  readonly key: Key
  readonly staff: number
  readonly tie: XmlNote['tie']
  readonly marks: NoteMarks
}

/**
 * Joins tied notes into one that is as long as all of them. A note that ends a tie goes on from one
 * of the same key that began a tie and ends where it starts, in whatever voice, on its own staff if
 * there is a choice. A tie that nothing answers leaves its note as it is. `slack`: by how many ticks
 * a rounded end may miss the start.
 */
export const tieNotes = (notes: readonly PlacedNote[], slack: number): readonly PlacedNote[] => {
  if (!notes.some(({ tie }) => tie.stops)) return notes
  const joined: PlacedNote[] = []
  /** Where in `joined` the notes are that wait for the end of their tie, by key and about where they end. */
  const waiting = new Map<number, number[]>()
  const place = (key: Key, end: number, near: number): number =>
    (Math.round(end / slack) + near) * keyCount + key
  const find = (note: PlacedNote): number | undefined => {
    for (const near of [0, -1, 1]) {
      const found = waiting.get(place(note.key, note.start, near))
      if (!found || found.length === 0) continue
      const recent = found.slice(-mostVoices)
      const own = recent.findIndex((i) => joined[i]?.staff === note.staff)
      return found.splice(own < 0 ? -1 : own - recent.length, 1)[0]
    }
    return undefined
  }
  const wait = (index: number, end: number, key: Key): void => {
    const at = place(key, end, 0)
    const others = waiting.get(at)
    if (others) others.push(index)
    else waiting.set(at, [index])
  }
  for (const note of notes.toSorted((a, b) => a.start - b.start)) {
    const end = note.start + note.length
    const index = note.tie.stops ? find(note) : undefined
    const before = index === undefined ? undefined : joined[index]
    if (index !== undefined && before) joined[index] = extend(before, note, end)
    else joined.push(note)
    if (note.tie.starts && !note.marks.grace) wait(index ?? joined.length - 1, end, note.key)
  }
  return joined
}

/** So many notes of one key that end together are looked at; more are no music. */
const mostVoices = 8
/** MIDI keys are 0 to 127. */
const keyCount = 128

const extend = (before: PlacedNote, note: PlacedNote, end: number): PlacedNote => ({
  ...before,
  length: tick(Math.max(end - before.start, before.length)),
  marks: before.marks.ornament ? before.marks : { ...ornamentOf(note.marks), ...before.marks },
})

const ornamentOf = ({ ornament, inverted, tremolo }: NoteMarks): NoteMarks => ({
  ...(ornament ? { ornament } : {}),
  ...(inverted ? { inverted } : {}),
  ...(tremolo ? { tremolo } : {}),
})
