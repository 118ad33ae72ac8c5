import type { KeySignature, Score, TempoChange } from '@/music/music'
import { hands } from '@/music/music'
import type { KeyEvent, Take } from '@/music/keyEvent'
import type { Key, Ms, Tick } from '@/music/units'
import type { TimeChange } from './score'
import { encodeText } from './text'

export interface NoteToWrite {
  readonly start: Tick
  readonly length: Tick
  readonly key: Key
  /** 1 to 127; 64 where none is given (the middle, as MIDI 1.0 advises). */
  readonly velocity?: number
}

/** Notes in named tracks, with the marks that stand in the first track of their own. */
export interface MidiContent {
  readonly title: string
  readonly ticksPerQuarter: number
  readonly tempos: readonly TempoChange[]
  readonly times: readonly TimeChange[]
  readonly keys: readonly KeySignature[]
  readonly tracks: readonly { readonly name: string; readonly notes: readonly NoteToWrite[] }[]
}

/** A Standard MIDI File of format 1: a track of marks, then one for each part, each on its own channel. */
export const writeMidiFile = (content: MidiContent): Uint8Array => {
  const marks = [
    { at: 0, bytes: mark(0x03, encodeText(content.title)) },
    ...content.times.map(({ start, time }) => ({
      at: start,
      bytes: mark(0x58, [time.beats, Math.log2(time.beatType), 24, 8]),
    })),
    ...content.keys.map(({ start, fifths, mode }) => ({
      at: start,
      bytes: mark(0x59, [fifths & 0xff, mode === 'minor' ? 1 : 0]),
    })),
    ...content.tempos.map(({ start, tempo }) => ({ at: start, bytes: tempoMark(tempo) })),
  ]
  const parts = content.tracks.map(({ name, notes }, i) => [
    { at: 0, bytes: mark(0x03, encodeText(name)) },
    ...notes.flatMap((note) => noteEvents(note, channelOf(i))).toSorted(offFirst),
  ])
  return writeFile(content.ticksPerQuarter, [marks, ...parts])
}

/** The score as it was read, a track for each hand that has notes. */
export const writeScore = (score: Score): Uint8Array =>
  writeMidiFile({
    ...score,
    times: score.bars
      .filter((bar, i) => i === 0 || isNewTime(bar.time, score.bars[i - 1]?.time))
      .map(({ start, time }) => ({ start, time })),
    tracks: hands
      .toReversed()
      .map((hand) => ({ name: `${hand} hand`, notes: score.notes.filter((n) => n.hand === hand) }))
      .filter(({ notes }) => notes.length > 0),
  })

/** Ten ticks to a millisecond at 120 quarters a minute. */
const takeTicksPerQuarter = 5000
const takeTicksPerMs = 10

/** Recorded playing, its times rounded to a tenth of a millisecond. `origin` is the time at which the file begins. */
export const writeTake = (take: Take, title: string, origin: Ms): Uint8Array => {
  const events = take.events.map((event) => ({
    at: Math.max(0, Math.round((event.at - origin) * takeTicksPerMs)),
    bytes: keyEventBytes(event),
  }))
  const head = [
    { at: 0, bytes: mark(0x03, encodeText(title)) },
    { at: 0, bytes: tempoMark(120) },
  ]
  return writeFile(takeTicksPerQuarter, [[...head, ...events]])
}

interface EventBytes {
  readonly at: number
  readonly bytes: readonly number[]
}

/** Controllers of the pedals (MIDI 1.0). */
export const pedalControllers = { sustain: 64, sostenuto: 66, soft: 67 } as const

const keyEventBytes = (event: KeyEvent): number[] => {
  switch (event.kind) {
    case 'down':
      return [0x90, event.key, event.velocity]
    case 'up':
      return [0x80, event.key, 0]
    case 'pedal':
      return [0xb0, pedalControllers[event.pedal], event.value]
  }
}

const noteEvents = (note: NoteToWrite, channel: number): EventBytes[] => [
  { at: note.start, bytes: [0x90 | channel, note.key, note.velocity ?? 64] },
  { at: note.start + note.length, bytes: [0x80 | channel, note.key, 0] },
]

/** Note-offs before note-ons at one tick, so that a repeated key sounds again; then by key. */
const offFirst = (a: EventBytes, b: EventBytes): number =>
  a.at - b.at ||
  ((a.bytes[0] ?? 0) & 0xf0) - ((b.bytes[0] ?? 0) & 0xf0) ||
  (a.bytes[1] ?? 0) - (b.bytes[1] ?? 0)

/** Channel 10, index 9, is for drums. */
const channelOf = (part: number): number => (part < 9 ? part : 10 + ((part - 9) % 6))

const isNewTime = (a: TimeChange['time'], b: TimeChange['time'] | undefined): boolean =>
  a.beats !== b?.beats || a.beatType !== b.beatType

const mark = (type: number, data: readonly number[]): number[] => [
  0xff,
  type,
  ...formatLength(data.length),
  ...data,
]

const tempoMark = (tempo: number): number[] => {
  const micros = Math.min(0xffffff, Math.round(60_000_000 / tempo))
  return mark(0x51, [micros >> 16, (micros >> 8) & 0xff, micros & 0xff])
}

const writeFile = (ticksPerQuarter: number, tracks: readonly (readonly EventBytes[])[]) =>
  Uint8Array.from([
    ...chunk('MThd', [
      0,
      tracks.length > 1 ? 1 : 0,
      ...word(tracks.length),
      ...word(ticksPerQuarter),
    ]),
    ...tracks.flatMap((events) => chunk('MTrk', trackBytes(events))),
  ])

const trackBytes = (events: readonly EventBytes[]): number[] => {
  const bytes: number[] = []
  let now = 0
  for (const event of events.toSorted((a, b) => a.at - b.at)) {
    bytes.push(...formatLength(event.at - now), ...event.bytes)
    now = event.at
  }
  return [...bytes, 0, 0xff, 0x2f, 0]
}

const chunk = (letters: string, data: readonly number[]): number[] => [
  ...[...letters].map((c) => c.charCodeAt(0)),
  ...word(data.length >>> 16),
  ...word(data.length & 0xffff),
  ...data,
]

const word = (n: number): number[] => [(n >> 8) & 0xff, n & 0xff]

/** A variable-length quantity of SMF 1.0: 0x2000 -> C0 00. */
export const formatLength = (value: number): number[] => {
  const bytes = [value & 0x7f]
  for (let rest = value >>> 7; rest > 0; rest >>>= 7) bytes.unshift((rest & 0x7f) | 0x80)
  return bytes
}
