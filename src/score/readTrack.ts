import { failed, ok, type Result } from '@/music/result'
import { tick, type Tick } from '@/music/units'
import type { ReadProblem } from './readProblem'
import type { SmfEvent } from './score'
import { corrupt, type Damage, type Span } from './smfChunks'
import { damagedMark, readMark, readMessage, type DamagedMark } from './smfEvents'
import type { Warning } from './warning'

/** Hears what a track says, event by event, so that nothing need be kept of it but what is wanted. */
export interface TrackListener<Heard> {
  /** A message of a channel: its status and values (MIDI 1.0). */
  readonly message: (status: number, first: number, second: number, at: Tick) => void
  /** Marks, the last of them the end. */
  readonly mark: (event: SmfEvent) => void
  readonly heard: () => Heard
}

/** All events of a track. */
export const collectEvents = (): TrackListener<readonly SmfEvent[]> => {
  const events: SmfEvent[] = []
  return {
    message: (status, first, second, at) => {
      const event = readMessage(status, first, second, at)
      if (event) events.push(event)
    },
    mark: (event) => events.push(event),
    heard: () => events,
  }
}

type Listening = Omit<TrackListener<unknown>, 'heard'>

interface TrackRead {
  /** How many events it has, also those that say nothing of the music. */
  readonly count: number
  readonly warnings: readonly Warning[]
}

/**
 * Reads a track chunk (SMF 1.0, RP-001) to a listener, times multiplied by `scale`; no event may be
 * cut, unknown or without status. Damaged marks are left out. A missing end of track at the very end
 * of the chunk is supplied; bytes after an end are dropped.
 */
export const readTrack = (
  file: Uint8Array,
  { from, to }: Span,
  number: number,
  scale: number,
  listener: Listening,
): Result<TrackRead, ReadProblem> => {
  const bytes = file.subarray(from, to)
  const warnings: Warning[] = []
  let cursor: Cursor = { at: 0, time: tick(0), status: 0, count: 0 }
  let ended = false
  while (!ended) {
    cursor = readMessages(bytes, cursor, scale, listener)
    if (cursor.at >= bytes.length) break
    const other = readOther(bytes, cursor, scale, number)
    if (!other.ok) return failed(corrupt(other.reason.damage, from + other.reason.at))
    const { event, damaged, to: at, time } = other.value
    cursor = { ...cursor, at, time, count: cursor.count + 1 }
    ended = event?.kind === 'end'
    if (event) listener.mark(event)
    if (damaged) warnings.push({ kind: 'damagedMark', track: number, mark: damaged })
  }
  const spare = bytes.length - cursor.at
  if (spare > 0) warnings.push({ kind: 'afterEnd', track: number, bytes: spare })
  if (!ended) {
    listener.mark({ kind: 'end', at: cursor.time })
    warnings.push({ kind: 'noEnd', track: number })
  }
  return ok({ count: cursor.count, warnings })
}

/** Where in a track the reading stands, and what is kept from event to event. */
interface Cursor {
  readonly at: number
  readonly time: Tick
  /** 0 before the first message. */
  readonly status: number
  /** How many events have been read. */
  readonly count: number
}

/**
 * Reads whole messages of channels, up to anything else. A long file has a hundred thousand of them,
 * and most of it has been read before the machine has compiled this; so it is one small loop that calls
 * and makes as little as can be (`npm run bench`).
 */
const readMessages = (
  bytes: Uint8Array,
  from: Cursor,
  scale: number,
  listener: Listening,
): Cursor => {
  let { at, time, status, count } = from
  for (;;) {
    let next = at + 1
    let byte = bytes[at] ?? outside
    let delta = byte & 0x7f
    while (byte > 0x7f && next < at + longestLength) {
      byte = bytes[next++] ?? outside
      delta = delta * 0x80 + (byte & 0x7f)
    }
    const first = bytes[next] ?? outside
    const kept = first > 0x7f ? first : status
    if (byte > 0x7f || kept === 0 || kept >= 0xf0) break
    if (first > 0x7f) next++
    const single = kept >= 0xc0 && kept < 0xe0
    const one = bytes[next] ?? outside
    const two = single ? 0 : (bytes[next + 1] ?? outside)
    if (one > 0x7f || two > 0x7f) break
    at = single ? next + 1 : next + 2
    status = kept
    count++
    if (delta > 0) time = tick(time + delta * scale)
    listener.message(status, one, two, time)
  }
  return { at, time, status, count }
}

/** What is read beyond the end of a track: neither the end of a length, nor a value, nor a status of a channel. */
const outside = 0xff

interface OtherRead extends SystemRead {
  readonly time: Tick
}

/** The event at which `readMessages` stopped: of the system, or why it is none. */
const readOther = (
  bytes: Uint8Array,
  { at, time, status }: Cursor,
  scale: number,
  number: number,
): Result<OtherRead, { readonly damage: Damage; readonly at: number }> => {
  const start = lengthEnd(bytes, at)
  if (start < 0) return failed({ damage: { kind: 'endlessTime', track: number }, at })
  const now = tick(time + lengthAt(bytes, at, start) * scale)
  const read = readSystem(bytes, start, now, { status, track: number })
  return read.ok ? ok({ ...read.value, time: now }) : failed({ damage: read.reason, at: start })
}

interface SystemRead {
  readonly to: number
  readonly event?: SmfEvent
  /** What it would have been. */
  readonly damaged?: DamagedMark
}

/** The track, and the status that holds in it. */
interface Where {
  readonly track: number
  readonly status: number
}

/** A mark (meta event) or a system exclusive message; or why it is none. */
const readSystem = (
  bytes: Uint8Array,
  at: number,
  time: Tick,
  { track, status }: Where,
): Result<SystemRead, Damage> => {
  const first = bytes[at]
  if (first === undefined) return failed({ kind: 'cutEvent', track })
  if (first < 0xf0) return failed(wrongMessage(bytes, at, { track, status }))
  const isMark = first === 0xff
  if (!isMark && first !== 0xf0 && first !== 0xf7)
    return failed({ kind: 'alienMessage', track, status: first.toString(16) })
  const lengthFrom = isMark ? at + 2 : at + 1
  const from = lengthEnd(bytes, lengthFrom)
  const to = from < 0 ? Infinity : from + lengthAt(bytes, lengthFrom, from)
  if (to > bytes.length) return failed({ kind: isMark ? 'cutMark' : 'cutMessage', track })
  if (!isMark) return ok({ to })
  const type = bytes[at + 1] ?? 0
  const damaged = damagedMark(type, to - from)
  if (damaged !== undefined) return ok({ to, damaged })
  const event = readMark(type, bytes.subarray(from, to), time)
  return ok(event ? { to, event } : { to })
}

const wrongMessage = (bytes: Uint8Array, at: number, { track, status: kept }: Where): Damage => {
  const first = bytes[at] ?? 0
  const status = first > 0x7f ? first : kept
  if (status === 0) return { kind: 'loneValue', track }
  const from = first > 0x7f ? at + 1 : at
  const to = from + (status >= 0xc0 && status < 0xe0 ? 1 : 2)
  return { kind: to > bytes.length ? 'cutEvent' : 'highValue', track }
}

/** Bytes of a variable-length quantity. */
const longestLength = 4

/** Where a variable-length quantity ends: seven bits a byte, the high bit set on all but the last, four bytes at most; -1 where it does not. */
const lengthEnd = (bytes: Uint8Array, at: number): number => {
  for (let i = at; i < at + longestLength; i++) {
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
