import { failed, ok, type Result } from '@/music/result'
import type { ReadProblem } from './readProblem'
import { corrupt, type Span } from './smfChunks'

/** A track whose every event is whole, ended by an end-of-track event. */
export interface CheckedTrack {
  readonly bytes: Uint8Array
  readonly events: number
  readonly warnings: readonly string[]
}

/**
 * Walks the events of a track chunk (SMF 1.0, RP-001) and makes sure that none is cut, unknown or
 * without status. Marks of a wrong length are renamed to “sequencer specific”, which readers skip.
 * A missing end of track at the very end of the chunk is supplied; bytes after an end are dropped.
 */
export const checkTrack = (
  file: Uint8Array,
  { from, to }: Span,
  number: number,
): Result<CheckedTrack, ReadProblem> => {
  const bytes = file.slice(from, to)
  const warnings: string[] = []
  let at = 0
  let events = 0
  let running: number | undefined
  while (at < bytes.length) {
    const delta = readLength(bytes, at)
    if (!delta) return failed(corrupt(`a time in track ${number} does not end`, from + at))
    const event = readEvent(bytes, delta.end, running)
    if (typeof event === 'string')
      return failed(corrupt(`${event} in track ${number}`, from + delta.end))
    events++
    if (event.kind === 'end') {
      const spare = bytes.length - event.end
      if (spare > 0)
        warnings.push(`Track ${number} has ${spare} bytes after its end; they were left out.`)
      return ok({ bytes: endTrack(bytes.subarray(0, at), delta.value), events, warnings })
    }
    if (event.kind === 'odd') {
      bytes[delta.end + 1] = sequencerSpecific
      if (event.name) warnings.push(`Track ${number} has a damaged ${event.name}; it was left out.`)
    }
    if (event.kind === 'channel') running = event.status
    at = event.end
  }
  warnings.push(`Track ${number} has no end mark; all of it was read.`)
  return ok({ bytes: endTrack(bytes, 0), events, warnings })
}

type EventFrame =
  | { readonly kind: 'channel'; readonly end: number; readonly status: number }
  | { readonly kind: 'system'; readonly end: number }
  /** A mark with a length that it cannot have; `name` where the person would miss it. */
  | { readonly kind: 'odd'; readonly end: number; readonly name?: string }
  | { readonly kind: 'end'; readonly end: number }

const sequencerSpecific = 0x7f
const endOfTrack = 0x2f
/** Longer texts than this say nothing about the music, and some readers fail on them. */
const longestText = 0x4000

/** The lengths that a mark may have, by its type (SMF 1.0); types not listed may have any. */
const markLengths: Readonly<Record<number, readonly number[]>> = {
  0x00: [2],
  0x20: [1],
  0x21: [1],
  0x51: [3],
  0x54: [5],
  0x58: [2, 4],
  0x59: [2],
}
const markNames: Readonly<Record<number, string>> = {
  0x51: 'tempo',
  0x58: 'time signature',
  0x59: 'key signature',
}

/** Where the event that begins at `at` ends; or, in words, why it is none. */
const readEvent = (
  bytes: Uint8Array,
  at: number,
  running: number | undefined,
): EventFrame | string => {
  const first = bytes[at]
  if (first === undefined) return 'an event is cut off'
  if (first === 0xff) return readMark(bytes, at)
  if (first === 0xf0 || first === 0xf7) return skipData(bytes, at + 1) ?? 'a message is cut off'
  if (first > 0xf0) return `a message (${first.toString(16)}) stands that no file may hold`
  const status = first >= 0x80 ? first : running
  if (status === undefined) return 'a value stands without an event'
  const dataFrom = first >= 0x80 ? at + 1 : at
  const end = dataFrom + (status >= 0xc0 && status < 0xe0 ? 1 : 2)
  if (end > bytes.length) return 'an event is cut off'
  for (let i = dataFrom; i < end; i++)
    if ((bytes[i] ?? 0) > 0x7f) return 'an event has a value over 127'
  return { kind: 'channel', end, status }
}

const readMark = (bytes: Uint8Array, at: number): EventFrame | string => {
  const type = bytes[at + 1]
  const length = readLength(bytes, at + 2)
  if (type === undefined || !length) return 'a mark is cut off'
  const end = length.end + length.value
  if (end > bytes.length) return 'a mark is cut off'
  if (type === endOfTrack) return { kind: 'end', end }
  const allowed = markLengths[type]
  const name = markNames[type]
  if (allowed && !allowed.includes(length.value))
    return { kind: 'odd', end, ...(name ? { name } : {}) }
  if (type < 0x10 && length.value > longestText) return { kind: 'odd', end }
  return { kind: 'system', end }
}

const skipData = (bytes: Uint8Array, at: number): EventFrame | undefined => {
  const length = readLength(bytes, at)
  if (!length || length.end + length.value > bytes.length) return undefined
  return { kind: 'system', end: length.end + length.value }
}

/** A variable-length quantity: seven bits a byte, the high bit set on all but the last, four bytes at most. */
const readLength = (
  bytes: Uint8Array,
  at: number,
): { readonly value: number; readonly end: number } | undefined => {
  let value = 0
  for (let i = at; i < at + 4; i++) {
    const byte = bytes[i]
    if (byte === undefined) return undefined
    value = value * 0x80 + (byte & 0x7f)
    if (byte < 0x80) return { value, end: i + 1 }
  }
  return undefined
}

const endTrack = (bytes: Uint8Array, delta: number): Uint8Array => {
  const time = [delta >> 21, delta >> 14, delta >> 7].map((n) => (n & 0x7f) | 0x80)
  const ended = new Uint8Array(bytes.length + 7)
  ended.set(bytes)
  ended.set([...time, delta & 0x7f, 0xff, endOfTrack, 0], bytes.length)
  return ended
}
