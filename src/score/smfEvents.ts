import { key, type Tick } from '@/music/units'
import type { SmfEvent } from './score'
import { decodeText } from './text'

/** The types of marks (meta events) that say something here (SMF 1.0, RP-001). */
const endOfTrack = 0x2f
const trackName = 0x03
const tempo = 0x51
const timeSignature = 0x58
const keySignature = 0x59

/** The lengths that a mark may have, by its type (SMF 1.0); types not listed may have any. */
const lengths: Readonly<Record<number, readonly number[]>> = {
  0x00: [2],
  0x20: [1],
  0x21: [1],
  [tempo]: [3],
  0x54: [5],
  [timeSignature]: [2, 4],
  [keySignature]: [2],
}

/** The marks that the person would miss. */
const missed: Readonly<Record<number, DamagedMark>> = {
  [tempo]: 'tempo',
  [timeSignature]: 'time',
  [keySignature]: 'key',
}

/** '': a mark that nobody would miss. */
export type DamagedMark = 'tempo' | 'time' | 'key' | ''

/** Longer texts than this say nothing about the music. */
const longestText = 0x4000

/**
 * What a mark would be that has a length which it cannot have, so that what it holds is left out:
 * '' where nobody would miss it, `undefined` where it is whole.
 */
export const damagedMark = (type: number, length: number): DamagedMark | undefined =>
  lengths[type]?.includes(length) === false || (type < 0x10 && length > longestText)
    ? (missed[type] ?? '')
    : undefined

/** What a mark of a right length says; `undefined` for those that say nothing of the music. */
export const readMark = (type: number, data: Uint8Array, at: Tick): SmfEvent | undefined => {
  const [a = 0, b = 0, c = 0] = data
  switch (type) {
    case endOfTrack:
      return { kind: 'end', at }
    case trackName:
      return { kind: 'name', at, text: decodeText(String.fromCharCode(...data)) }
    case tempo:
      return { kind: 'tempo', at, microsecondsPerQuarter: a * 0x10000 + b * 0x100 + c }
    case timeSignature:
      return { kind: 'time', at, beats: a, beatType: 1 << b }
    case keySignature:
      return { kind: 'key', at, fifths: a < 0x80 ? a : a - 0x100, minor: b === 1 }
  }
  return undefined
}

/** What a message of a channel says; `undefined` for those that are not about keys, pedals or instruments. */
export const readMessage = (
  status: number,
  first: number,
  second: number,
  at: Tick,
): SmfEvent | undefined => {
  const channel = status & 0x0f
  switch (status & 0xf0) {
    case 0x80:
      return { kind: 'noteOff', at, channel, key: key(first) }
    case 0x90:
      return second === 0
        ? { kind: 'noteOff', at, channel, key: key(first) }
        : { kind: 'noteOn', at, channel, key: key(first), velocity: second }
    case 0xb0:
      return { kind: 'controller', at, channel, controller: first, value: second }
    case 0xc0:
      return { kind: 'program', at, channel, program: first }
  }
  return undefined
}
