import { failed, ok, type Result } from '@/music/result'
import { tick, type Tick } from '@/music/units'
import type { ReadProblem } from './readProblem'
import type { SmfEvent } from './score'
import { corrupt, type Span } from './smfChunks'
import { damagedMark, readMark, readMessage } from './smfEvents'

export interface TrackRead {
  readonly events: readonly SmfEvent[]
  /** All of them, also those that say nothing of the music. */
  readonly count: number
  readonly warnings: readonly string[]
}

/**
 * The events of a track chunk (SMF 1.0, RP-001), times multiplied by `scale`; none may be cut,
 * unknown or without status. Damaged marks are left out. A missing end of track at the very end of
 * the chunk is supplied; bytes after an end are dropped. For a message of a channel nothing is made
 * but what it says, since a long file has a hundred thousand of them.
 */
export const readTrack = (
  file: Uint8Array,
  { from, to }: Span,
  number: number,
  scale: number,
): Result<TrackRead, ReadProblem> => {
  const bytes = file.subarray(from, to)
  const events: SmfEvent[] = []
  const warnings: string[] = []
  let [at, ticks, count, status, ended] = [0, 0, 0, 0, false]
  while (at < bytes.length && !ended) {
    const start = lengthEnd(bytes, at)
    if (start < 0) return failed(corrupt(`a time in track ${number} does not end`, from + at))
    ticks += lengthAt(bytes, at, start) * scale
    count++
    const first = bytes[start] ?? 0
    let problem: string | undefined
    if (first < 0xf0) {
      if (first >= 0x80) status = first
      const dataAt = first >= 0x80 ? start + 1 : start
      at = dataAt + (status >= 0xc0 && status < 0xe0 ? 1 : 2)
      problem = checkMessage(bytes, dataAt, at, status)
      const event = readMessage(status, bytes[dataAt] ?? 0, bytes[dataAt + 1] ?? 0, tick(ticks))
      if (event) events.push(event)
    } else {
      const mark = readSystem(bytes, start, tick(ticks))
      if (typeof mark === 'string') problem = mark
      else {
        at = mark.to
        ended = mark.event?.kind === 'end'
        if (mark.event) events.push(mark.event)
        if (mark.damaged)
          warnings.push(`Track ${number} has a damaged ${mark.damaged}; it was left out.`)
      }
    }
    if (problem !== undefined) return failed(corrupt(`${problem} in track ${number}`, from + start))
  }
  const spare = bytes.length - at
  if (spare > 0)
    warnings.push(`Track ${number} has ${spare} bytes after its end; they were left out.`)
  if (!ended) {
    events.push({ kind: 'end', at: tick(ticks) })
    warnings.push(`Track ${number} has no end mark; all of it was read.`)
  }
  return ok({ events, count, warnings })
}

/** What is wrong with a message of a channel whose values lie in [from, to). */
const checkMessage = (
  bytes: Uint8Array,
  from: number,
  to: number,
  status: number,
): string | undefined => {
  if (status === 0 && from < bytes.length) return 'a value stands without an event'
  if (to > bytes.length) return 'an event is cut off'
  for (let i = from; i < to; i++) if ((bytes[i] ?? 0) > 0x7f) return 'an event has a value over 127'
  return undefined
}

interface SystemRead {
  readonly to: number
  readonly event?: SmfEvent
  /** What it would have been. */
  readonly damaged?: string
}

/** A mark (meta event) or a system exclusive message; or, in words, why it is none. */
const readSystem = (bytes: Uint8Array, at: number, time: Tick): SystemRead | string => {
  const first = bytes[at] ?? 0
  const isMark = first === 0xff
  if (!isMark && first !== 0xf0 && first !== 0xf7)
    return `a message (${first.toString(16)}) stands that no file may hold`
  const lengthFrom = isMark ? at + 2 : at + 1
  const from = lengthEnd(bytes, lengthFrom)
  const to = from < 0 ? Infinity : from + lengthAt(bytes, lengthFrom, from)
  if (to > bytes.length) return isMark ? 'a mark is cut off' : 'a message is cut off'
  if (!isMark) return { to }
  const type = bytes[at + 1] ?? 0
  const damaged = damagedMark(type, to - from)
  if (damaged !== undefined) return { to, damaged }
  const event = readMark(type, bytes.subarray(from, to), time)
  return event ? { to, event } : { to }
}

/** Where a variable-length quantity ends: seven bits a byte, the high bit set on all but the last, four bytes at most; -1 where it does not. */
const lengthEnd = (bytes: Uint8Array, at: number): number => {
  for (let i = at; i < at + 4; i++) {
    const byte = bytes[i]
    if (byte === undefined) return -1
    if (byte < 0x80) return i + 1
  }
  return -1
}

const lengthAt = (bytes: Uint8Array, at: number, end: number): number => {
  let value = 0
  for (let i = at; i < end; i++) value = value * 0x80 + ((bytes[i] ?? 0) & 0x7f)
  return value
}
