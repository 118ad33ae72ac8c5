import { formatFraction } from './fraction'
import type { Bar, Note } from './music'
import { noteId, pieceId, type Key, type NoteId, type PieceId, type Tick } from './units'

/**
 * Names notes that come in the order of start and key, each by its place and key, in reduced
 * fractions of a quarter, so that the same music at another resolution has the same names:
 * 'n3_2k60'. A second note on the same key and place gets a letter: 'n3_2k60b'. Valid as an XML id.
 */
export const noteNamer = (ticksPerQuarter: number): ((start: Tick, key: Key) => NoteId) => {
  let lastStart = -1
  let lastKey = -1
  let place = ''
  let twins = 0
  return (start, key) => {
    if (start !== lastStart) place = placeName(start, ticksPerQuarter)
    twins = start === lastStart && key === lastKey ? twins + 1 : 0
    lastStart = start
    lastKey = key
    return nameNote(place, key, twins)
  }
}

/** The notes with their names, in whatever order they come. */
export const nameNotes = <T extends { readonly start: Tick; readonly key: Key }>(
  notes: readonly T[],
  ticksPerQuarter: number,
): (T & { readonly id: NoteId })[] => {
  const seen = new Map<string, number>()
  return notes.map((note) => {
    const place = placeName(note.start, ticksPerQuarter)
    const first = nameNote(place, note.key, 0)
    const twins = seen.get(first) ?? 0
    seen.set(first, twins + 1)
    return { ...note, id: nameNote(place, note.key, twins) }
  })
}

const placeName = (start: Tick, ticksPerQuarter: number): string =>
  `n${formatFraction(start, ticksPerQuarter)}k`

const nameNote = (place: string, key: Key, twins: number): NoteId =>
  noteId(twins === 0 ? `${place}${key}` : `${place}${key}${letter(twins)}`)

/**
 * Hashes what sounds and where the bars are; not the title, the tempo, the hands or the resolution.
 * The text hashed is '0,60,1;1,62,1_2;0,4/4': start, key and length of each note in order, then start
 * and metre of each bar that brings something new.
 */
export const identifyPiece = (
  notes: readonly Pick<Note, 'start' | 'length' | 'key'>[],
  bars: readonly Pick<Bar, 'start' | 'time'>[],
  ticksPerQuarter: number,
): PieceId => {
  const words: string[] = []
  const lengths = new Map<Tick, string>()
  let start: Tick | undefined
  let place = ''
  for (const note of inOrder(notes)) {
    if (note.start !== start) place = `${formatFraction(note.start, ticksPerQuarter)},`
    start = note.start
    let length = lengths.get(note.length)
    if (length === undefined) {
      length = `,${formatFraction(note.length, ticksPerQuarter)};`
      lengths.set(note.length, length)
    }
    words.push(place, `${note.key}`, length)
  }
  for (const [i, bar] of bars.entries()) {
    if (followsFrom(bars[i - 1], bar, ticksPerQuarter)) continue
    const { beats, beatType } = bar.time
    words.push(`${formatFraction(bar.start, ticksPerQuarter)},${beats}/${beatType};`)
  }
  return pieceId(`p${fnv1a64(words.join('').slice(0, -1))}`)
}

const inOrder = <T extends Pick<Note, 'start' | 'length' | 'key'>>(notes: readonly T[]): T[] =>
  notes.toSorted((a, b) => a.start - b.start || a.key - b.key || a.length - b.length)

/** Nothing new: a whole bar after the one before, in the same time. A pickup makes the next bar new. */
const followsFrom = (
  before: Pick<Bar, 'start' | 'time'> | undefined,
  bar: Pick<Bar, 'start' | 'time'>,
  ticksPerQuarter: number,
): boolean => {
  const { beats, beatType } = bar.time
  if (before?.time.beats !== beats || before.time.beatType !== beatType) return false
  return (bar.start - before.start) * beatType === beats * 4 * ticksPerQuarter
}

const letter = (n: number): string =>
  String.fromCharCode(97 + (n % 26)).repeat(1 + Math.floor(n / 26))

/**
 * 64-bit FNV-1a of the text's UTF-16 code units' low bytes, as 16 hexadecimal digits. The two halves
 * of the hash are 32-bit integers; the product with the prime 2^40 + 0x1b3 is taken of the two halves
 * of the lower one, so that no part of it leaves 32 bits.
 * Source: Fowler, Noll, Vo, Eastlake, "The FNV Non-Cryptographic Hash Algorithm" (IETF draft).
 */
export const fnv1a64 = (text: string): string => {
  let high = 0xcbf29ce4 | 0
  let low = 0x84222325 | 0
  for (let i = 0; i < text.length; i++) {
    low ^= text.charCodeAt(i) & 0xff
    const lower = (low & 0xffff) * 0x1b3
    const upper = (low >>> 16) * 0x1b3 + (lower >>> 16)
    high = (Math.imul(high, 0x1b3) + (upper >>> 16) + (low << 8)) | 0
    low = (upper << 16) | (lower & 0xffff)
  }
  return [high, low].map((half) => (half >>> 0).toString(16).padStart(8, '0')).join('')
}
