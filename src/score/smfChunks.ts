import { failed, ok, type Result } from '@/music/result'
import { largestFile, tooLarge } from './largestFile'
import type { ReadProblem } from './readProblem'
import type { Warning } from './warning'

/** Where the content of a chunk lies in the file: [from, to). */
export interface Span {
  readonly from: number
  readonly to: number
}

export interface SmfChunks {
  readonly header: SmfHeader
  readonly tracks: readonly Span[]
  readonly warnings: readonly Warning[]
}

export interface SmfHeader {
  readonly format: 0 | 1
  /** The division word as written: ticks a quarter, or with bit 15 set frames and ticks a frame. */
  readonly division: number
  readonly divisionByte: number
}

/**
 * Finds the header and track chunks of a Standard MIDI File (SMF 1.0, RP-001): each chunk has four
 * letters and a length; chunks with other letters are skipped. The file may be wrapped in RIFF (RMID).
 */
export const findChunks = (bytes: Uint8Array): Result<SmfChunks, ReadProblem> => {
  if (bytes.length === 0) return failed({ kind: 'empty' })
  if (bytes.length > largestFile) return failed(tooLarge(bytes.length))
  const inner = unwrapRiff(bytes)
  if (!inner.ok) return inner
  const { from, to } = inner.value
  if (lettersAt(bytes, from) !== 'MThd') return failed({ kind: 'notMidi' })
  if (to < from + 14) return failed(truncated({ kind: 'header' }, to))
  const headerEnd = from + 8 + uint32At(bytes, from + 4)
  if (headerEnd < from + 14) return failed(corrupt({ kind: 'shortHeader' }, from + 4))
  if (headerEnd > to) return failed(truncated({ kind: 'header' }, to))
  const announced = uint16At(bytes, from + 10)
  const header = readHeader(uint16At(bytes, from + 8), uint16At(bytes, from + 12), from)
  if (!header.ok) return header
  return findTracks(bytes, { from: headerEnd, to }, header.value, announced)
}

/** Whether the bytes begin as a Standard MIDI File does, bare or wrapped in RIFF. */
export const looksLikeMidi = (bytes: Uint8Array): boolean =>
  lettersAt(bytes, 0) === 'MThd' ||
  (lettersAt(bytes, 0) === 'RIFF' && lettersAt(bytes, 8) === 'RMID')

type Lacking = Extract<ReadProblem, { kind: 'truncated' }>['lacking']
export type Damage = Extract<ReadProblem, { kind: 'corrupt' }>['damage']

const truncated = (lacking: Lacking, byte: number): ReadProblem => ({
  kind: 'truncated',
  lacking,
  byte,
})
export const corrupt = (damage: Damage, byte: number): ReadProblem => ({
  kind: 'corrupt',
  damage,
  byte,
})

const readHeader = (
  format: number,
  division: number,
  from: number,
): Result<SmfHeader, ReadProblem> => {
  if (format === 2) return failed({ kind: 'separateSequences' })
  if (format !== 0 && format !== 1) return failed(corrupt({ kind: 'format', format }, from + 8))
  if (division === 0) return failed(corrupt({ kind: 'noQuarter' }, from + 12))
  return ok({ format, division, divisionByte: from + 12 })
}

const findTracks = (
  bytes: Uint8Array,
  { from, to }: Span,
  header: SmfHeader,
  announced: number,
): Result<SmfChunks, ReadProblem> => {
  const tracks: Span[] = []
  const warnings: Warning[] = []
  let at = from
  while (at + 8 <= to) {
    const letters = lettersAt(bytes, at)
    const end = at + 8 + uint32At(bytes, at + 4)
    if (end > to) {
      if (tracks.length >= announced && letters !== 'MTrk') break
      const bytes = end - to
      return failed(
        truncated(
          letters === 'MTrk'
            ? { kind: 'track', track: tracks.length + 1, bytes }
            : { kind: 'part', bytes },
          to,
        ),
      )
    }
    if (letters === 'MTrk') tracks.push({ from: at + 8, to: end })
    at = end
  }
  const lacking = announced - tracks.length
  if (lacking > 0) return failed(truncated({ kind: 'tracks', count: lacking }, to))
  if (at < to) warnings.push({ kind: 'afterTracks', bytes: to - at })
  if (tracks.length > announced)
    warnings.push({ kind: 'moreTracks', announced, found: tracks.length })
  return ok({ header, tracks, warnings })
}

/** A RIFF file of type RMID keeps the MIDI file in its chunk named “data”; RIFF lengths are little-endian, padded to even. */
const unwrapRiff = (bytes: Uint8Array): Result<Span, ReadProblem> => {
  const whole = { from: 0, to: bytes.length }
  if (lettersAt(bytes, 0) !== 'RIFF' || lettersAt(bytes, 8) !== 'RMID') return ok(whole)
  let at = 12
  while (at + 8 <= bytes.length) {
    const length = littleUint32At(bytes, at + 4)
    const end = at + 8 + length
    if (lettersAt(bytes, at) === 'data') {
      if (end > bytes.length)
        return failed(truncated({ kind: 'data', bytes: end - bytes.length }, bytes.length))
      return ok({ from: at + 8, to: end })
    }
    at = end + (length % 2)
  }
  return failed(truncated({ kind: 'dataPart' }, bytes.length))
}

/** Beyond the end of the file a byte counts as 0, which is no letter of a chunk's name. */
const byteAt = (bytes: Uint8Array, at: number): number => bytes[at] ?? 0
const lettersAt = (bytes: Uint8Array, at: number): string =>
  String.fromCharCode(...bytes.subarray(at, at + 4))
const uint16At = (bytes: Uint8Array, at: number): number =>
  byteAt(bytes, at) * 0x100 + byteAt(bytes, at + 1)
const uint32At = (bytes: Uint8Array, at: number): number =>
  uint16At(bytes, at) * 0x10000 + uint16At(bytes, at + 2)
const littleUint32At = (bytes: Uint8Array, at: number): number =>
  byteAt(bytes, at) +
  byteAt(bytes, at + 1) * 0x100 +
  byteAt(bytes, at + 2) * 0x10000 +
  byteAt(bytes, at + 3) * 0x1000000
