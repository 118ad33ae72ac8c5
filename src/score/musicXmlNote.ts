import type { Finger, Ornament, Tremolo } from '@/music/music'
import type { XmlNote, XmlPitch } from './musicXml'
import { noteValue } from './noteValues'
import type { NoteMarks } from './part'
import {
  childOf,
  childrenOf,
  hasChild,
  numberIn,
  oneLine,
  textIn,
  type XmlElement,
} from './xmlElement'

/** A `note` element (MusicXML 4.0). */
export const readNote = (element: XmlElement): XmlNote => {
  const grace = hasChild(element, 'grace')
  const pitch = readPitch(element)
  return {
    kind: 'note',
    sounds: soundOf(element, pitch),
    pitch,
    duration: numberIn(element, 'duration'),
    value: readValue(element),
    chord: hasChild(element, 'chord'),
    grace,
    staff: Math.max(1, Math.trunc(numberIn(element, 'staff') ?? 1)),
    tie: readTie(element),
    marks: { ...(grace ? { grace: true } : {}), ...readMarks(element) },
  }
}

const soundOf = (element: XmlElement, pitch: XmlPitch | undefined): XmlNote['sounds'] => {
  if (hasChild(element, 'cue')) return 'cue'
  if (hasChild(element, 'unpitched')) return 'unpitched'
  return pitch ? 'pitch' : 'rest'
}

const readPitch = (element: XmlElement): XmlPitch | undefined => {
  const pitch = childOf(element, 'pitch')
  if (!pitch) return undefined
  const step = textIn(pitch, 'step')
  const octave = numberIn(pitch, 'octave')
  return /^[A-G]$/.test(step) && octave !== undefined && Number.isInteger(octave)
    ? { step, octave, alter: numberIn(pitch, 'alter') ?? printedAlter(element) }
    : undefined
}

/** `alter` is what sounds and `accidental` what is printed; a file that lacks the one is read by the other. */
const printedAlter = (element: XmlElement): number =>
  printedAlters.get(textIn(element, 'accidental')) ?? 0

const printedAlters = new Map([
  ['sharp', 1],
  ['flat', -1],
  ['double-sharp', 2],
  ['sharp-sharp', 2],
  ['flat-flat', -2],
  ['natural-sharp', 1],
  ['natural-flat', -1],
])

/** By the printed note value: only where the duration is missing. */
const readValue = (element: XmlElement): number | undefined => {
  const value = noteValue(textIn(element, 'type'), childrenOf(element, 'dot').length)
  const tuplet = childOf(element, 'time-modification')
  const actual = tuplet && numberIn(tuplet, 'actual-notes')
  const normal = tuplet && numberIn(tuplet, 'normal-notes')
  return value !== undefined && actual && normal ? (value * normal) / actual : value
}

/** `tie` is what sounds, `tied` what is drawn; many files have only the one or the other. */
const readTie = (element: XmlElement): XmlNote['tie'] => {
  const sounding = childrenOf(element, 'tie')
  const drawn = childrenOf(element, 'notations').flatMap((n) => childrenOf(n, 'tied'))
  const types = (sounding.length > 0 ? sounding : drawn).map((tie) => tie.attributes.type)
  return {
    starts: types.includes('start') || types.includes('continue'),
    stops: types.includes('stop') || types.includes('continue'),
  }
}

const readMarks = (element: XmlElement): NoteMarks => {
  const notations = childrenOf(element, 'notations')
  if (notations.length === 0) return {}
  const sign = notations
    .flatMap((n) => childrenOf(n, 'ornaments'))
    .flatMap(({ children }) => children)
    .find(({ name }) => ornamentNames.has(name))
  const fingers = notations
    .flatMap((n) => childrenOf(n, 'technical'))
    .flatMap((technical) => childrenOf(technical, 'fingering'))
    .flatMap(readFingering)
  return {
    ...(sign ? readOrnament(sign) : {}),
    ...(notations.some((n) => hasChild(n, 'arpeggiate')) ? { rolled: true } : {}),
    ...(fingers.length > 0 ? { fingers } : {}),
  }
}

/** The ornaments of MusicXML by what they ask of the hand: which keys besides the main one are struck. */
const ornamentNames = new Map<string, Ornament>([
  ['trill-mark', 'trill'],
  ['wavy-line', 'trill'],
  ['shake', 'trill'],
  ['mordent', 'mordent'],
  ['inverted-mordent', 'mordent'],
  ['turn', 'turn'],
  ['inverted-turn', 'turn'],
  ['delayed-turn', 'turn'],
  ['delayed-inverted-turn', 'turn'],
  ['vertical-turn', 'turn'],
  ['inverted-vertical-turn', 'turn'],
  ['haydn', 'turn'],
  ['tremolo', 'tremolo'],
])

const readOrnament = (sign: XmlElement): NoteMarks => {
  const ornament = ornamentNames.get(sign.name)
  if (ornament === undefined) return {}
  return {
    ornament,
    ...(sign.name.includes('inverted') ? { inverted: true } : {}),
    ...(ornament === 'tremolo' ? readTremolo(sign) : {}),
  }
}

/** Up to eight marks, of type single unless it says else (MusicXML 4.0); three where the number is missing. */
const readTremolo = ({ attributes, text }: XmlElement): NoteMarks => {
  const strokes = /^\s*[1-8]\s*$/.test(text) ? Number(text) : 3
  return { tremolo: { kind: tremoloKinds.get(attributes.type) ?? 'single', strokes } }
}

const tremoloKinds = new Map<string | undefined, Tremolo['kind']>([
  ['start', 'from'],
  ['stop', 'to'],
])

/** '3', or '1-2' for a change of finger on the key; an alternative in brackets is left out. */
const readFingering = ({ attributes, text }: XmlElement): readonly Finger[] => {
  if (attributes.alternate === 'yes') return []
  const digits = oneLine(text)
  if (!/^[1-5]([ ,/_–-]*[1-5]){0,4}$/.test(digits)) return []
  return [...digits].flatMap((c) => fingers.filter((f) => `${f}` === c))
}

const fingers: readonly Finger[] = [1, 2, 3, 4, 5]
