import { beatQuarters } from '@/music/beat'
import { failed, ok, type Result } from '@/music/result'
import { tempo, tick } from '@/music/units'
import type { PartNote } from './part'
import { parseTypedMusic } from './parseTypedMusic'
import type { ReadProblem } from './readProblem'
import type { PieceRead, SmfPiece, TimeChange } from './score'
import { encodeText } from './text'
import { titleOfFile } from './title'
import { quarterParts, typedHeader, type TypedEvent, type TypedMusic } from './typedMusic'
import { validate } from './validate'
import { decodeXml } from './xmlText'

/** The first line says that a text is typed music, and of which version. */
export const looksTyped = (bytes: Uint8Array): boolean => {
  const from = bytes[0] === 0xef ? 3 : 0
  return [...start].every((letter, i) => bytes[from + i] === letter.charCodeAt(0))
}
const start = 'passagework '

/** The text of a fragment as the bytes of a file, which `readPiece` reads again. */
export const writeTypedFile = (title: string, text: string): Uint8Array => {
  const body = text.replace(/^passagework \d[^\n]*\n/, '')
  // Half of a pair of letters cannot be written (RFC 3629).
  const whole = `${typedHeader(title.replace(/\s+/g, ' ').trim())}\n${body}`.replace(
    /\p{Cs}/gu,
    '�',
  )
  return Uint8Array.from(encodeText(whole))
}

export const readTypedPiece = (
  bytes: Uint8Array,
  fileName: string,
): Result<PieceRead, ReadProblem> => {
  const text = decodeXml(bytes)
  if (!text.ok) return text
  const music = parseTypedMusic(text.value.text)
  if (!music.ok) {
    const { line, column, flaw } = music.reason
    return failed({ kind: 'typed', line, column, flaw })
  }
  return scoreTyped(music.value, titleOfFile(fileName))
}

/** The score of typed music, by the same checks as that of a file. */
export const scoreTyped = (music: TypedMusic, untitled: string): Result<PieceRead, ReadProblem> => {
  const { fifths, mode, right, left } = music
  const piece = validate({
    title: music.title || untitled,
    ticksPerQuarter: quarterParts,
    parts: [
      { name: 'right', program: 0, notes: notesOf(right) },
      { name: 'left', program: 0, notes: notesOf(left) },
    ],
    drumNotes: 0,
    tempos: [{ start: tick(0), tempo: tempo(music.tempo * beatQuarters(music.time)) }],
    times: timesOf(music),
    keys: [{ start: tick(0), fifths, mode }],
    warnings: [],
  } satisfies SmfPiece)
  return piece.ok ? ok({ score: piece.value.score, warnings: [] }) : piece
}

/** A pickup is a bar of its own length before the first full one, as files say it. */
const timesOf = ({ time, pickup }: TypedMusic): readonly TimeChange[] => {
  if (pickup === 0) return [{ start: tick(0), time }]
  const eighths = (pickup * 8) / quarterParts
  return [
    { start: tick(0), time: { beats: eighths, beatType: 32 } },
    { start: tick(pickup), time },
  ]
}

const notesOf = (events: readonly TypedEvent[]): PartNote[] => {
  const notes: PartNote[] = []
  let at = 0
  for (const { pitches, length } of events) {
    for (const { key, name } of pitches)
      notes.push({ start: tick(at), length: tick(length), key, marks: { spelling: name } })
    at += length
  }
  return notes
}
