import { formatFraction } from './fraction'
import type { Bar, Note } from './music'
import { noteId, pieceId, type Key, type NoteId, type PieceId, type Tick } from './units'

/**
 * Names the notes of a piece in their order, each by its place and key, in reduced fractions of a
 * quarter, so that the same music at another resolution has the same names: 'n3_2k60'. A second
 * note on the same key and place gets a letter: 'n3_2k60b'. Valid as an XML id.
 */
export const noteNamer = (ticksPerQuarter: number): ((start: Tick, key: Key) => NoteId) => {
  const seen = new Map<number, number>()
  return (start, key) => {
    const place = start * keyCount + key
    const twins = seen.get(place) ?? 0
    seen.set(place, twins + 1)
    const name = `n${formatFraction(start, ticksPerQuarter)}k${key}`
    return noteId(twins === 0 ? name : `${name}${letter(twins)}`)
  }
}

/** The notes with their names. */
export const nameNotes = <T extends { readonly start: Tick; readonly key: Key }>(
  notes: readonly T[],
  ticksPerQuarter: number,
): (T & { readonly id: NoteId })[] => {
  const name = noteNamer(ticksPerQuarter)
  return notes.map((note) => ({ ...note, id: name(note.start, note.key) }))
}

/** Hashes what sounds and where the bars are; not the title, the tempo, the hands or the resolution. */
export const identifyPiece = (
  notes: readonly Pick<Note, 'start' | 'length' | 'key'>[],
  bars: readonly Pick<Bar, 'start' | 'time'>[],
  ticksPerQuarter: number,
): PieceId => {
  const fraction = (t: Tick): string => formatFraction(t, ticksPerQuarter)
  const sounding = notes
    .toSorted((a, b) => a.start - b.start || a.key - b.key || a.length - b.length)
    .map((n) => `${fraction(n.start)},${n.key},${fraction(n.length)}`)
  const meter = bars
    .filter((bar, i) => !followsFrom(bars[i - 1], bar, ticksPerQuarter))
    .map((bar) => `${fraction(bar.start)},${bar.time.beats}/${bar.time.beatType}`)
  return pieceId(`p${fnv1a64([...sounding, ...meter].join(';'))}`)
}

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

/** MIDI keys are 0 to 127. */
const keyCount = 128

const letter = (n: number): string =>
  String.fromCharCode(97 + (n % 26)).repeat(1 + Math.floor(n / 26))

/**
 * 64-bit FNV-1a of the text's UTF-16 code units' low bytes, as 16 hexadecimal digits. The product
 * with the prime 2^40 + 0x1b3 is taken in four 16-bit limbs, which stay exact in a double.
 * Source: Fowler, Noll, Vo, Eastlake, "The FNV Non-Cryptographic Hash Algorithm" (IETF draft).
 */
export const fnv1a64 = (text: string): string => {
  let a = 0x2325
  let b = 0x8422
  let c = 0x9ce4
  let d = 0xcbf2
  for (let i = 0; i < text.length; i++) {
    a ^= text.charCodeAt(i) & 0xff
    const pa = a * 0x1b3
    const pb = b * 0x1b3 + (pa >>> 16)
    const pc = c * 0x1b3 + ((a << 8) & 0xffffff) + (pb >>> 16)
    const pd = d * 0x1b3 + (b << 8) + Math.floor(pc / 65536)
    a = pa & 0xffff
    b = pb & 0xffff
    c = pc & 0xffff
    d = pd & 0xffff
  }
  return [d, c, b, a].map((limb) => limb.toString(16).padStart(4, '0')).join('')
}
