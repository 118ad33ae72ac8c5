import type { TimeSignature } from '@/music/music'
import type { XmlAttributes, XmlEvent } from './musicXml'
import {
  childOf,
  childrenOf,
  hasChild,
  numberIn,
  oneLine,
  textIn,
  type XmlElement,
} from './xmlElement'

/** An `attributes` element: what holds from here on in the part. */
export const readAttributes = (element: XmlElement): readonly XmlEvent[] => {
  const divisions = numberIn(element, 'divisions')
  const staves = numberIn(element, 'staves')
  const fifths = upper(childrenOf(element, 'key')).map(readKey)[0]
  const time = upper(childrenOf(element, 'time')).map(readTime)[0]
  const transpositions = childrenOf(element, 'transpose').map(readTranspose)
  return [
    ...transpositions.map((transpose) => ({ kind: 'attributes', transpose }) as const),
    {
      kind: 'attributes',
      ...(divisions !== undefined && divisions > 0 ? { divisions } : {}),
      ...(staves !== undefined ? { staves } : {}),
      ...(fifths ? { fifths } : {}),
      ...(time ? { time } : {}),
    },
  ]
}

/** Where each staff has its own, that of the first. */
const upper = (elements: readonly XmlElement[]): readonly XmlElement[] =>
  elements.filter(({ attributes }) => (attributes.number ?? '1') === '1')

/** A key of single accidentals has no fifths and is left out, since notes carry their own. */
const readKey = (key: XmlElement): XmlAttributes['fifths'] => {
  const fifths = numberIn(key, 'fifths')
  if (fifths === undefined || !Number.isInteger(fifths) || Math.abs(fifths) > 14) return undefined
  const minor = ['minor', 'aeolian'].includes(textIn(key, 'mode'))
  return { fifths: foldFifths(fifths), mode: minor ? 'minor' : 'major' }
}

/** Beyond seven sharps or flats the same keys are written from the other side: 8 sharps are 4 flats. */
export const foldFifths = (fifths: number): number =>
  fifths > 7 ? foldFifths(fifths - 12) : fifths < -7 ? foldFifths(fifths + 12) : fifths

/** The most beats in a bar that a printed signature gives, and its smallest note value (common practice, no source). */
const mostBeats = 128
const smallestBeat = 128

/** '3+2' over 8 and 3 over 4 together -> 11/8: signatures that follow each other in a bar are added. */
const readTime = (time: XmlElement): TimeSignature | 'free' | undefined => {
  if (hasChild(time, 'senza-misura')) return 'free'
  const tops = childrenOf(time, 'beats').map(({ text }) => sum(text))
  const types = childrenOf(time, 'beat-type').map(({ text }) => sum(text))
  const beatType = Math.max(...types)
  if (tops.length === 0 || tops.length !== types.length) return undefined
  if (!types.every((type) => type >= 1 && type <= smallestBeat && beatType % type === 0))
    return undefined
  const beats = tops.reduce((total, top, i) => total + (top * beatType) / (types[i] ?? 1), 0)
  return beats >= 1 && beats <= mostBeats && Number.isInteger(beats)
    ? { beats, beatType }
    : undefined
}

/** NaN when it is no sum of whole numbers. */
const sum = (text: string): number =>
  /^\d{1,3}( ?\+ ?\d{1,3}){0,15}$/.test(oneLine(text))
    ? text.split('+').reduce((total, part) => total + Number(part), 0)
    : NaN

/** Octave changes are counted on top of the chromatic steps; `double` only adds a second player's octave. */
const readTranspose = (element: XmlElement): NonNullable<XmlAttributes['transpose']> => {
  const staff = Number(element.attributes.number ?? NaN)
  const octaves = numberIn(element, 'octave-change') ?? 0
  return {
    staff: Number.isInteger(staff) ? staff : undefined,
    semitones: (numberIn(element, 'chromatic') ?? 0) + 12 * octaves,
  }
}

/** Whether the part list gives the part the sound or the name of a piano. */
export const isPianoPart = (scorePart: XmlElement): boolean => {
  const instruments = childrenOf(scorePart, 'score-instrument')
  const names = [
    textIn(scorePart, 'part-name'),
    ...instruments.map((instrument) => textIn(instrument, 'instrument-name')),
  ]
  const sounds = instruments.map((i) => childOf(i, 'instrument-sound')?.text.trim() ?? '')
  return (
    sounds.some((sound) => sound.startsWith('keyboard.piano')) ||
    names.some((name) => /piano|klavier|^pno\b|^pf\b/i.test(name))
  )
}
