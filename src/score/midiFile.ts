import { parseMidi, type MidiEvent } from 'midi-file'
import { failed, ok, type Result } from '@/music/result'
import { key, tick, type Tick } from '@/music/units'
import { checkTrack } from './checkTrack'
import type { ReadProblem } from './readProblem'
import type { SmfEvent, SmfFile } from './score'
import { corrupt, findChunks, type SmfHeader } from './smfChunks'
import { decodeText } from './text'

/** Far above any piano piece, and still held in memory without trouble. */
const mostEvents = 2_000_000

/**
 * What a Standard MIDI File says. The only place that uses the library midi-file, which accepts
 * files that are cut short and stops at chunks it does not know: so all is checked before.
 */
export const parseMidiFile = (bytes: Uint8Array): Result<SmfFile, ReadProblem> => {
  const chunks = findChunks(bytes)
  if (!chunks.ok) return chunks
  const { header } = chunks.value
  const clock = readDivision(header)
  if (!clock) return failed(corrupt('the header gives an unknown frame rate', header.divisionByte))
  const tracks: SmfEvent[][] = clock.frames ? [framesTempo(clock.frames)] : []
  const warnings = [...chunks.value.warnings, ...(clock.frames ? [framesWarning] : [])]
  let events = 0
  for (const [i, span] of chunks.value.tracks.entries()) {
    const track = checkTrack(bytes, span, i + 1)
    if (!track.ok) return track
    events += track.value.events
    if (events > mostEvents) return failed({ kind: 'tooManyEvents', limit: mostEvents })
    const read = readTrack(track.value.bytes, span.from, header, clock)
    if (!read.ok) return read
    tracks.push(read.value)
    warnings.push(...track.value.warnings)
  }
  return ok({
    format: header.format,
    ticksPerQuarter: clock.ticksPerQuarter,
    tracks,
    warnings,
  })
}

/** `scale` keeps times whole where half a second is an odd number of frame ticks. */
interface FileClock {
  readonly ticksPerQuarter: number
  readonly scale: 1 | 2
  readonly frames?: { readonly microsecondsPerQuarter: number }
}

const framesWarning =
  'The file counts time in film frames instead of beats; its bars are laid at 120 quarters a minute.'

/**
 * Frames a second as counted, by their code, and how long half a second of counted frames lasts:
 * 29 stands for 30 drop-frame, which runs slower by 1.001 (SMPTE 12M).
 */
const frameRates: Readonly<Record<number, FrameRate>> = {
  24: { counted: 24, halfSecond: 500_000 },
  25: { counted: 25, halfSecond: 500_000 },
  29: { counted: 30, halfSecond: 500_500 },
  30: { counted: 30, halfSecond: 500_000 },
}

interface FrameRate {
  readonly counted: number
  /** Microseconds. */
  readonly halfSecond: number
}

/** A file in frames has no beats: a quarter is taken as half a second, the default of SMF 1.0, whatever its tempo marks. */
const readDivision = ({ division }: SmfHeader): FileClock | undefined => {
  if (division < 0x8000) return { ticksPerQuarter: division, scale: 1 }
  const rate = frameRates[0x100 - (division >> 8)]
  const ticksPerSecond = (rate?.counted ?? 0) * (division & 0xff)
  if (!rate || ticksPerSecond === 0) return undefined
  const scale = ticksPerSecond % 2 === 0 ? 1 : 2
  return {
    ticksPerQuarter: (ticksPerSecond * scale) / 2,
    scale,
    frames: { microsecondsPerQuarter: rate.halfSecond },
  }
}

const framesTempo = (frames: { readonly microsecondsPerQuarter: number }): SmfEvent[] => [
  { kind: 'tempo', at: tick(0), ...frames },
]

/** One track at a time, so that the library's own objects of the whole file never stand in memory at once. */
const readTrack = (
  track: Uint8Array,
  from: number,
  { format }: SmfHeader,
  clock: FileClock,
): Result<SmfEvent[], ReadProblem> => {
  const events: SmfEvent[] = []
  let at = 0
  try {
    for (const event of parseMidi(asFile(track, format)).tracks[0] ?? []) {
      at += event.deltaTime * clock.scale
      const read = readEvent(event, tick(at))
      if (read && !(clock.frames && read.kind === 'tempo')) events.push(read)
    }
  } catch (error) {
    return failed(corrupt(`a track begins that cannot be understood (${String(error)})`, from))
  }
  return ok(events)
}

const asFile = (track: Uint8Array, format: number): Uint8Array => {
  const file = new Uint8Array(22 + track.length)
  const n = track.length
  file.set([0x4d, 0x54, 0x68, 0x64, 0, 0, 0, 6, 0, format, 0, 1, 0, 96, 0x4d, 0x54, 0x72, 0x6b])
  file.set([(n >> 24) & 0xff, (n >> 16) & 0xff, (n >> 8) & 0xff, n & 0xff], 18)
  file.set(track, 22)
  return file
}

const readEvent = (event: MidiEvent, at: Tick): SmfEvent | undefined => {
  if (event.type === 'noteOn') {
    const { channel, noteNumber, velocity } = event
    return { kind: 'noteOn', at, channel, key: key(noteNumber), velocity }
  }
  if (event.type === 'noteOff')
    return { kind: 'noteOff', at, channel: event.channel, key: key(event.noteNumber) }
  if (event.type === 'controller') {
    const { channel, controllerType, value } = event
    return { kind: 'controller', at, channel, controller: controllerType, value }
  }
  if (event.type === 'programChange')
    return { kind: 'program', at, channel: event.channel, program: event.programNumber }
  if (event.type === 'setTempo')
    return { kind: 'tempo', at, microsecondsPerQuarter: event.microsecondsPerBeat }
  if (event.type === 'timeSignature')
    return { kind: 'time', at, beats: event.numerator, beatType: event.denominator }
  if (event.type === 'keySignature')
    return { kind: 'key', at, fifths: event.key, minor: event.scale === 1 }
  if (event.type === 'trackName') return { kind: 'name', at, text: decodeText(event.text) }
  if (event.type === 'endOfTrack') return { kind: 'end', at }
  return undefined
}
