import { failed, ok, type Result } from '@/music/result'
import type { ReadProblem } from './readProblem'
import type { Warning } from './warning'

export interface XmlText {
  readonly text: string
  readonly warnings: readonly Warning[]
}

/**
 * The text of an XML file by its byte-order mark, its first bytes or the encoding that it declares
 * (XML 1.0, appendix F): UTF-8, UTF-16, Latin-1. Bytes that are not in the encoding declared are
 * read as Latin-1, with a warning: only words are touched by it, the music is written in ASCII.
 */
export const decodeXml = (bytes: Uint8Array): Result<XmlText, ReadProblem> => {
  const wide = wideOrder(bytes)
  if (wide === 'fourBytes') return failed({ kind: 'unknownLetters', name: 'UTF-32' })
  if (wide) return ok({ text: decodeUtf16(bytes, wide), warnings: [] })
  const from = startsWith(bytes, utf8Mark) ? 3 : 0
  const name = from > 0 ? 'utf-8' : declaredEncoding(bytes)
  if (latin.has(name)) return ok({ text: decodeLatin(bytes), warnings: [] })
  // A file that declares UTF-16 and has one byte a letter was rewritten by a program that left the declaration.
  const utf8 = asciiBased(name) ? undefined : decodeUtf8(bytes, from)
  if (utf8 !== undefined) return ok({ text: utf8, warnings: [] })
  return ok({
    text: decodeLatin(bytes),
    warnings: [{ kind: 'oddLetters', name: name.toUpperCase() }],
  })
}

/** Whether the first character that is no blank is a '<', in any encoding that XML can have. */
export const looksLikeXml = (bytes: Uint8Array): boolean => {
  const wide = wideOrder(bytes)
  const width = wide === 'fourBytes' ? 4 : wide ? 2 : 1
  const low = wide === 'highFirst' ? 1 : 0
  let at = width === 4 ? 4 : wide ? markLength(bytes) : startsWith(bytes, utf8Mark) ? 3 : 0
  while (blanks.has(bytes[at + low] ?? 0)) at += width
  return bytes[at + low] === 0x3c || (width === 4 && bytes[at + 3] === 0x3c)
}

const blanks = new Set([0x20, 0x09, 0x0a, 0x0d])

const startsWith = (bytes: Uint8Array, start: readonly number[]): boolean =>
  start.every((byte, i) => bytes[i] === byte)

const utf8Mark = [0xef, 0xbb, 0xbf]
/** Bytes of the mark at the start of a file in UTF-16, which it may lack. */
const markLength = (bytes: Uint8Array): number => ((bytes[0] ?? 0) >= 0xfe ? 2 : 0)

type ByteOrder = 'lowFirst' | 'highFirst'

const wideOrder = (bytes: Uint8Array): ByteOrder | 'fourBytes' | undefined => {
  if (startsWith(bytes, [0xff, 0xfe, 0, 0]) || startsWith(bytes, [0, 0, 0xfe, 0xff]))
    return 'fourBytes'
  if (startsWith(bytes, [0xff, 0xfe]) || startsWith(bytes, [0x3c, 0])) return 'lowFirst'
  if (startsWith(bytes, [0xfe, 0xff]) || startsWith(bytes, [0, 0x3c])) return 'highFirst'
  return undefined
}

/** The declaration stands first and is short; XML 1.0 says UTF-8 where there is none. */
const declaredEncoding = (bytes: Uint8Array): string => {
  const start = String.fromCharCode(...bytes.subarray(0, 200))
  const [, name] = /^\s*<\?xml[^>]*?\sencoding\s*=\s*["']([\w.:-]{1,40})["']/.exec(start) ?? []
  return name?.toLowerCase() ?? 'utf-8'
}

const latin = new Set(['iso-8859-1', 'latin1', 'l1', 'windows-1252', 'cp1252'])
/** Encodings in which ASCII stands for itself and nothing else looks like it. */
const asciiBased = (name: string): boolean =>
  !['utf-8', 'utf8', 'utf-16', 'utf16', 'us-ascii', 'ascii'].includes(name)

/** What windows-1252 has at 80 to 9F, where Latin-1 has nothing (WHATWG Encoding reads both alike). */
const high = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ'

const decodeLatin = (bytes: Uint8Array): string =>
  gather(bytes.length, (put) => {
    for (const byte of bytes) put(byte >= 0x80 && byte < 0xa0 ? high.charCodeAt(byte - 0x80) : byte)
  })

const decodeUtf16 = (bytes: Uint8Array, order: ByteOrder): string => {
  const [lowAt, highAt] = order === 'lowFirst' ? [0, 1] : [1, 0]
  const from = markLength(bytes)
  return gather(bytes.length / 2, (put) => {
    for (let i = from; i + 1 < bytes.length; i += 2)
      put((bytes[i + lowAt] ?? 0) + (bytes[i + highAt] ?? 0) * 0x100)
  })
}

/** `undefined` when the bytes are no UTF-8 (RFC 3629: no overlong forms, no surrogates, nothing past 10FFFF). */
const decodeUtf8 = (bytes: Uint8Array, from: number): string | undefined => {
  let whole = true
  const text = gather(bytes.length, (put) => {
    for (let i = from; i < bytes.length && whole; i++) {
      const first = bytes[i] ?? 0
      if (first < 0x80) {
        put(first)
        continue
      }
      const more = first >= 0xf0 ? 3 : first >= 0xe0 ? 2 : 1
      let code = first & (0x3f >> more)
      for (let k = 1; k <= more; k++) {
        const next = bytes[i + k] ?? 0
        if ((next & 0xc0) !== 0x80) whole = false
        code = code * 0x40 + (next & 0x3f)
      }
      i += more
      if (first < 0xc2 || first > 0xf4 || code < (smallest[more] ?? 0)) whole = false
      if (code > 0x10ffff || (code >= 0xd800 && code < 0xe000)) whole = false
      if (code < 0x10000) put(code)
      else {
        put(0xd800 + ((code - 0x10000) >> 10))
        put(0xdc00 + ((code - 0x10000) & 0x3ff))
      }
    }
  })
  return whole ? text : undefined
}

/** The smallest code that needs so many bytes more. */
const smallest = [0, 0x80, 0x800, 0x10000]

/** Builds a text from UTF-16 code units, some thousands at a time: a call for each letter takes far longer. */
const gather = (most: number, write: (put: (unit: number) => void) => void): string => {
  const units = new Uint16Array(Math.min(Math.ceil(most) + 2, 8192))
  const pieces: string[] = []
  let filled = 0
  write((unit) => {
    units[filled++] = unit
    if (filled < units.length) return
    pieces.push(String.fromCharCode(...units))
    filled = 0
  })
  pieces.push(String.fromCharCode(...units.subarray(0, filled)))
  return pieces.join('')
}
