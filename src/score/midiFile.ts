import { failed, ok, type Result } from '@/music/result'
import { tick } from '@/music/units'
import type { ReadProblem } from './readProblem'
import { readTrack } from './readTrack'
import type { SmfEvent, SmfFile } from './score'
import { corrupt, findChunks, type SmfHeader } from './smfChunks'

/** Far above any piano piece, and still held in memory without trouble. */
const mostEvents = 2_000_000

/** What a Standard MIDI File says: its tracks, each event of them checked (SMF 1.0, RP-001). */
export const parseMidiFile = (bytes: Uint8Array): Result<SmfFile, ReadProblem> => {
  const chunks = findChunks(bytes)
  if (!chunks.ok) return chunks
  const { header } = chunks.value
  const clock = readDivision(header)
  if (!clock) return failed(corrupt('the header gives an unknown frame rate', header.divisionByte))
  const tracks: (readonly SmfEvent[])[] = clock.frames ? [framesTempo(clock.frames)] : []
  const warnings = [...chunks.value.warnings, ...(clock.frames ? [framesWarning] : [])]
  let counted = 0
  for (const [i, span] of chunks.value.tracks.entries()) {
    const track = readTrack(bytes, span, i + 1, clock.scale)
    if (!track.ok) return track
    const { count, events, warnings: odd } = track.value
    counted += count
    if (counted > mostEvents) return failed({ kind: 'tooManyEvents', limit: mostEvents })
    tracks.push(clock.frames ? events.filter(({ kind }) => kind !== 'tempo') : events)
    warnings.push(...odd)
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
