import { Note as TonalNote } from 'tonal'
import { key, type Key } from './units'

/** 'C4' -> 60, 'F#5' -> 78; `undefined` when it is no pitch name or outside 0 to 127. */
export const parseKey = (name: string): Key | undefined => {
  const midi = TonalNote.midi(name)
  return midi === null || midi < 0 || midi > 127 ? undefined : key(midi)
}

/** 61 -> 'C#4', or 'Db4' where flats are preferred: as it is typed and written to files. For people there is `nameKey`. */
export const formatKey = (k: Key, prefer: 'sharps' | 'flats' = 'sharps'): string =>
  prefer === 'sharps' ? TonalNote.fromMidiSharps(k) : TonalNote.fromMidi(k)

const blackClasses = new Set([1, 3, 6, 8, 10])

export const isBlackKey = (k: Key): boolean => blackClasses.has(k % 12)
