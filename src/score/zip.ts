import { Inflate } from 'fflate'
import { failed, ok, type Result } from '@/music/result'
import { decodeXml } from './xmlText'
import { largestFile, tooLarge } from './largestFile'
import type { ReadProblem } from './readProblem'

/** A file in an archive, as the archive's directory says. */
export interface ZipEntry {
  readonly name: string
  readonly method: number
  readonly encrypted: boolean
  readonly checksum: number
  readonly packed: number
  readonly size: number
  /** Where its own header stands in the archive. */
  readonly at: number
}

/** A score has a handful of files besides: pictures, sounds, a thumbnail. */
const mostEntries = 2000
/** Deflate itself cannot do more than 1032 to 1; the notation of music packs some 10 to 60 to 1. */
const greatestRatio = 500

/**
 * The directory of a ZIP archive (APPNOTE 6.3.10, §4.3). Nothing is unpacked here; names are only
 * ever compared, never used as paths.
 */
export const listZip = (bytes: Uint8Array): Result<readonly ZipEntry[], ReadProblem> => {
  const end = findEnd(bytes)
  if (end === undefined) return failed(broken({ kind: 'noContents' }))
  const count = uint16(bytes, end + 10)
  if (count > mostEntries) return failed(broken({ kind: 'tooMany', count, most: mostEntries }))
  const entries: ZipEntry[] = []
  let at = uint32(bytes, end + 16)
  for (let i = 0; i < count; i++) {
    if (uint32(bytes, at) !== directoryMark || at + 46 > end)
      return failed(broken({ kind: 'cutContents' }))
    const nameEnd = at + 46 + uint16(bytes, at + 28)
    entries.push({
      name: nameOf(bytes.subarray(at + 46, nameEnd)),
      method: uint16(bytes, at + 10),
      encrypted: (uint16(bytes, at + 8) & 1) === 1,
      checksum: uint32(bytes, at + 16),
      packed: uint32(bytes, at + 20),
      size: uint32(bytes, at + 24),
      at: uint32(bytes, at + 42),
    })
    at = nameEnd + uint16(bytes, at + 30) + uint16(bytes, at + 32)
  }
  return ok(entries)
}

/** One file of the archive, unpacked: no larger than the directory says, and checked by its checksum. */
export const unpack = (bytes: Uint8Array, entry: ZipEntry): Result<Uint8Array, ReadProblem> => {
  const { name, method, at, packed, size } = entry
  if (entry.encrypted) return failed(broken({ kind: 'locked', name }))
  if (method !== stored && method !== deflated)
    return failed(broken({ kind: 'method', name, method }))
  if (size > largestFile || size > packed * greatestRatio)
    return failed(tooLarge(size, 'tooLargeUnpacked'))
  if (uint32(bytes, at) !== headerMark) return failed(broken({ kind: 'elsewhere', name }))
  const from = at + 30 + uint16(bytes, at + 26) + uint16(bytes, at + 28)
  if (from + packed > bytes.length) return failed(broken({ kind: 'cut', name }))
  const data = bytes.subarray(from, from + packed)
  const whole = method === stored ? data : inflate(data, size)
  if (whole?.length !== size || checksum(whole) !== entry.checksum)
    return failed(broken({ kind: 'damaged', name }))
  return ok(whole)
}

type Damage = Extract<ReadProblem, { kind: 'brokenArchive' }>['damage']

export const broken = (damage: Damage): ReadProblem => ({ kind: 'brokenArchive', damage })

const endMark = 0x06054b50
const directoryMark = 0x02014b50
const headerMark = 0x04034b50
const stored = 0
const deflated = 8

/** The end record is the last thing in the file but for a comment of at most 65,535 bytes. */
const findEnd = (bytes: Uint8Array): number | undefined => {
  const earliest = Math.max(0, bytes.length - 22 - 0xffff)
  for (let at = bytes.length - 22; at >= earliest; at--)
    if (uint32(bytes, at) === endMark) return at
  return undefined
}

/** Packed bytes given to fflate at a time: each can become a thousand times as many before the size is looked at. */
const portion = 1 << 12

/** `undefined` when the data are no deflate data (RFC 1951) or become more than they should. */
const inflate = (data: Uint8Array, size: number): Uint8Array | undefined => {
  const whole = new Uint8Array(size)
  let filled = 0
  let over = false
  const inflating = new Inflate((piece) => {
    over ||= filled + piece.length > size
    if (over) return
    whole.set(piece, filled)
    filled += piece.length
  })
  try {
    for (let at = 0; at < data.length && !over; at += portion)
      inflating.push(data.subarray(at, at + portion), at + portion >= data.length)
  } catch {
    return undefined
  }
  return over ? undefined : whole.subarray(0, filled)
}

/** CRC-32 as ZIP has it (polynomial EDB88320, reflected). */
const checksum = (bytes: Uint8Array): number => {
  let sum = 0xffffffff
  for (const byte of bytes) sum = (checksums[(sum ^ byte) & 0xff] ?? 0) ^ (sum >>> 8)
  return (sum ^ 0xffffffff) >>> 0
}

const checksums = Uint32Array.from({ length: 256 }, (_, n) => {
  let sum = n
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? 0xedb88320 ^ (sum >>> 1) : sum >>> 1
  return sum
})

const nameOf = (bytes: Uint8Array): string => {
  const name = decodeXml(bytes)
  return name.ok ? name.value.text : ''
}

const uint16 = (bytes: Uint8Array, at: number): number =>
  (bytes[at] ?? 0) + (bytes[at + 1] ?? 0) * 0x100
const uint32 = (bytes: Uint8Array, at: number): number =>
  uint16(bytes, at) + uint16(bytes, at + 2) * 0x10000
