/**
 * MusicXML written by hand for the tests. A voice is a line of notes: 'C4/4 E4+G4/2 r/2' are a note,
 * a chord and a rest with their durations in divisions (4 to a quarter unless said); '~' after a
 * duration starts a tie of the note before it, '~' before a name ends one; 'gD4' is a grace note.
 */
import { readPiece } from '@/score/readPiece'
import type { PieceRead } from '@/score/score'

export interface VoiceOptions {
  readonly voice?: number
  readonly staff?: number
  readonly divisions?: number
  /** Elements after the note value of each note, such as notations. */
  readonly marks?: string
}

/** One voice of one measure as `note` elements; equal notes of a tuplet are grouped by its number. */
export const voice = (line: string, options: VoiceOptions = {}): string => {
  let inTuplet = 0
  return line
    .split(' ')
    .filter(Boolean)
    .map((token) => {
      const value = valueOf(Number(/\/(\d+)/.exec(token)?.[1] ?? 0) / (options.divisions ?? 4))
      const first = inTuplet === 0
      inTuplet = value && value.actual > 1 ? (inTuplet + 1) % value.actual : 0
      const tuplet = !value || value.actual === 1 ? '' : first ? 'start' : inTuplet ? '' : 'stop'
      return noteOf(token, options, value ? typeOf(value) : '', tuplet)
    })
    .join('')
}

const noteOf = (token: string, options: VoiceOptions, type: string, tuplet: string): string => {
  const [, grace, names = '', length = '0', tied] =
    /^(g?)([^/]+?)(?:\/(\d+))?(~?)$/.exec(token) ?? []
  return names
    .split('+')
    .map((name, i) => {
      const ties = [...(name.startsWith('~') ? ['stop'] : []), ...(tied ? ['start'] : [])]
      const notations = [
        ...ties.map((kind) => `<tied type="${kind}"/>`),
        ...(tuplet && i === 0 ? [`<tuplet type="${tuplet}"/>`] : []),
      ].join('')
      return [
        `<note>${grace ? '<grace/>' : ''}${i > 0 ? '<chord/>' : ''}${pitchOf(name.replace('~', ''))}`,
        grace ? '' : `<duration>${length}</duration>`,
        ties.map((kind) => `<tie type="${kind}"/>`).join(''),
        `<voice>${options.voice ?? 1}</voice>${grace ? '<type>eighth</type>' : type}`,
        options.staff ? `<staff>${options.staff}</staff>` : '',
        notations ? `<notations>${notations}</notations>` : '',
        `${options.marks ?? ''}</note>`,
      ].join('')
    })
    .join('')
}

/** 'F#5' -> a `pitch`, 'r' -> a `rest`. */
const pitchOf = (name: string): string => {
  const [, step, accidental = '', octave] = /^([A-G])(#{0,2}|b{0,2})(\d)$/.exec(name) ?? []
  if (step === undefined) return '<rest/>'
  const alter = accidental.startsWith('b') ? -accidental.length : accidental.length
  const altered = alter === 0 ? '' : `<alter>${alter}</alter>`
  return `<pitch><step>${step}</step>${altered}<octave>${octave}</octave></pitch>`
}

const types = ['whole', 'half', 'quarter', 'eighth', '16th', '32nd', '64th']

interface Value {
  readonly type: string
  readonly dotted: boolean
  /** So many notes of a tuplet in the time of `normal`; 1 in 1 otherwise. */
  readonly actual: number
  readonly normal: number
}

/** The printed note value: plain, dotted, or in a triplet or quintuplet. */
const valueOf = (quarters: number): Value | undefined => {
  for (const [i, type] of types.entries())
    for (const [actual, normal, dotted] of [
      [1, 1, false],
      [1, 1, true],
      [3, 2, false],
      [5, 4, false],
    ] as const) {
      const value = (4 / 2 ** i) * (dotted ? 1.5 : 1) * (normal / actual)
      if (Math.abs(quarters - value) < 1e-9) return { type, dotted, actual, normal }
    }
  return undefined
}

const typeOf = ({ type, dotted, actual, normal }: Value): string =>
  `<type>${type}</type>${dotted ? '<dot/>' : ''}${
    actual === 1
      ? ''
      : `<time-modification><actual-notes>${actual}</actual-notes><normal-notes>${normal}</normal-notes></time-modification>`
  }`

export const backup = (duration: number): string =>
  `<backup><duration>${duration}</duration></backup>`
export const forward = (duration: number): string =>
  `<forward><duration>${duration}</duration></forward>`

/** `attributes` with 4 divisions and 4/4 in two staves; other elements by `more`. */
export const attributes = ({
  divisions = 4,
  time = '4/4',
  staves = 1,
  fifths = 0,
  more = '',
} = {}): string => {
  const [beats, beatType] = time.split('/')
  const signature = time
    ? `<time><beats>${beats}</beats><beat-type>${beatType}</beat-type></time>`
    : ''
  const clefs =
    staves > 1
      ? '<clef number="1"><sign>G</sign><line>2</line></clef><clef number="2"><sign>F</sign><line>4</line></clef>'
      : ''
  return `<attributes><divisions>${divisions}</divisions><key><fifths>${fifths}</fifths></key>${signature}<staves>${staves}</staves>${clefs}${more}</attributes>`
}

/** Numbered from 1; a measure that begins with '|' is implicit. */
export const measures = (contents: readonly string[]): string => {
  let number = 0
  return contents
    .map((content) => {
      const implicit = content.startsWith('|')
      if (!implicit) number++
      const name = implicit ? `number="X${number}" implicit="yes"` : `number="${number}"`
      return `<measure ${name}>\n${content.replace(/^\|/, '')}</measure>\n`
    })
    .join('')
}

export interface PartText {
  readonly name?: string
  /** More of `score-part`. */
  readonly more?: string
  readonly measures: readonly string[]
}

export const declaration = '<?xml version="1.0" encoding="UTF-8"?>\n'

/** A whole file; `head` stands before the part list. */
export const partwise = (parts: readonly PartText[], head = ''): string =>
  `${declaration}<score-partwise version="4.0">${head}<part-list>${partList(parts)}</part-list>\n${parts
    .map((part, i) => `<part id="P${i + 1}">\n${measures(part.measures)}</part>\n`)
    .join('')}</score-partwise>\n`

export const partList = (parts: readonly PartText[]): string =>
  parts
    .map(
      ({ name = 'Piano', more = '' }, i) =>
        `<score-part id="P${i + 1}"><part-name>${name}</part-name>${more}</score-part>`,
    )
    .join('')

/** A piano part alone. */
export const piano = (...contents: readonly string[]): string => partwise([{ measures: contents }])

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)

export const readText = (text: string, fileName = 'piece.musicxml'): PieceRead => {
  const piece = readPiece(bytesOf(text), fileName)
  if (!piece.ok) throw new Error(JSON.stringify(piece.reason))
  return piece.value
}

/** Each note as 'start+length key', in quarters; grace notes as 'start key grace'. */
export const notesOf = ({ score }: PieceRead): string[] =>
  score.notes.map((n) =>
    n.grace
      ? `${n.start / score.ticksPerQuarter} ${n.key} grace`
      : `${n.start / score.ticksPerQuarter}+${n.length / score.ticksPerQuarter} ${n.key}`,
  )
export const read = (text: string): string[] => notesOf(readText(text))
