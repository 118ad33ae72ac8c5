import { failed, ok, type Result } from '@/music/result'
import { tick } from '@/music/units'
import type { ReadProblem } from './readProblem'
import { collectEvents, readTrack, type TrackListener } from './readTrack'
import type { SmfFile } from './score'
import { corrupt, findChunks, type SmfHeader } from './smfChunks'
import type { Warning } from './warning'

/** Far above any piano piece, and still held in memory without trouble. */
const mostEvents = 2_000_000

/** What a Standard MIDI File says: its tracks, each event of them checked (SMF 1.0, RP-001). */
export const parseMidiFile = (bytes: Uint8Array): Result<SmfFile, ReadProblem> =>
  readMidiFile(bytes, collectEvents)

/** The same, with a listener for each track, and what it heard in place of the events. */
export const readMidiFile = <Heard>(
  bytes: Uint8Array,
  listen: () => TrackListener<Heard>,
): Result<SmfFile<Heard>, ReadProblem> => {
  const chunks = findChunks(bytes)
  if (!chunks.ok) return chunks
  const { header } = chunks.value
  const clock = readDivision(header)
  if (!clock) return failed(corrupt({ kind: 'frameRate' }, header.divisionByte))
  const tracks: Heard[] = []
  const warnings: Warning[] = [...chunks.value.warnings]
  if (clock.frames) {
    const listener = listen()
    listener.mark({ kind: 'tempo', at: tick(0), ...clock.frames })
    tracks.push(listener.heard())
    warnings.push({ kind: 'frames' })
  }
  let counted = 0
  for (const [i, span] of chunks.value.tracks.entries()) {
    const listener = listen()
    const heard = clock.frames ? withoutTempo(listener) : listener
    const track = readTrack(bytes, span, i + 1, clock.scale, heard)
    if (!track.ok) return track
    counted += track.value.count
    if (counted > mostEvents) return failed({ kind: 'tooManyEvents', limit: mostEvents })
    tracks.push(listener.heard())
    warnings.push(...track.value.warnings)
  }
  return ok({
    format: header.format,
    ticksPerQuarter: clock.ticksPerQuarter,
    tracks,
    warnings,
  })
}

const withoutTempo = <Heard>(listener: TrackListener<Heard>): TrackListener<Heard> => ({
  ...listener,
  mark: (event) => {
    if (event.kind !== 'tempo') listener.mark(event)
  },
})

/** `scale` keeps times whole where half a second is an odd number of frame ticks. */
interface FileClock {
  readonly ticksPerQuarter: number
  readonly scale: 1 | 2
  readonly frames?: { readonly microsecondsPerQuarter: number }
}

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
