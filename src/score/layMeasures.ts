import type { KeySignature, TimeSignature } from '@/music/music'
import { key, type Key } from '@/music/units'
import { foldFifths } from './musicXmlAttributes'
import type {
  BarSigns,
  XmlAttributes,
  XmlMeasure,
  XmlNote,
  XmlPart,
  XmlPitch,
  XmlTempo,
} from './musicXml'
import type { NoteMarks } from './part'

/** Ticks from the start of its measure. */
export interface LaidNote {
  readonly at: number
  readonly length: number
  readonly key: Key
  readonly staff: number
  readonly tie: XmlNote['tie']
  readonly chord: boolean
  readonly marks: NoteMarks
}

export interface LaidMeasure extends Pick<XmlMeasure, 'number' | 'implicit'> {
  readonly notes: readonly LaidNote[]
  /** How far its events reach; 0 when it has none. */
  readonly length: number
  readonly time: TimeSignature | 'free' | undefined
  readonly tempos: readonly (Pick<XmlTempo, 'tempo' | 'forPlaying'> & { readonly at: number })[]
  readonly keys: readonly (Omit<KeySignature, 'start'> & { readonly at: number })[]
  readonly signs: BarSigns
}

/** How many notes could not be taken as they stand. */
export interface Oddities {
  readonly unpitched: number
  readonly betweenKeys: number
  readonly noKey: number
  readonly noLength: number
  readonly rounded: number
  readonly backedTooFar: number
}

export interface LaidPart extends Pick<XmlPart, 'name' | 'piano'> {
  readonly staves: number
  readonly measures: readonly LaidMeasure[]
  readonly odd: Oddities
}

/**
 * Lays the events of a part along time, measure by measure: a duration moves the place at which the
 * next event stands, backup and forward move it alone, and a chord's further notes do not (MusicXML
 * 4.0, “duration”, “backup”, “chord”). The pitch is the sounding one except for transposition; an
 * octave shift or an octave clef changes what is drawn and not what is stored.
 */
export const layPart = (part: XmlPart, resolution: number): LaidPart => {
  const odd = { unpitched: 0, betweenKeys: 0, noKey: 0, noLength: 0, rounded: 0, backedTooFar: 0 }
  const state: PartState = {
    resolution,
    divisions: 1,
    time: undefined,
    staves: 1,
    transpose: new Map(),
    odd,
  }
  const measures = part.measures.map((measure) => layMeasure(measure, state))
  return { name: part.name, piano: part.piano, staves: state.staves, measures, odd }
}

/** What the part said last. */
interface PartState {
  readonly resolution: number
  divisions: number
  time: LaidMeasure['time']
  staves: number
  /** Semitones by staff; 0 for all staves without their own. */
  readonly transpose: Map<number, number>
  readonly odd: { -readonly [name in keyof Oddities]: number }
}

const layMeasure = ({ number, implicit, events }: XmlMeasure, state: PartState): LaidMeasure => {
  const notes: LaidNote[] = []
  const tempos: LaidMeasure['tempos'][number][] = []
  const keys: LaidMeasure['keys'][number][] = []
  let signs: BarSigns = {}
  let time = state.time
  let cursor = 0
  let chordAt = 0
  let length = 0
  for (const event of events)
    switch (event.kind) {
      case 'note': {
        const ticks = ticksOf(event, state)
        if (!event.chord) {
          chordAt = cursor
          cursor += ticks
        }
        length = Math.max(length, chordAt + ticks)
        const note = layNote(event, chordAt, ticks, state)
        if (note) notes.push(note)
        break
      }
      case 'move':
        cursor += inTicks(event.divisions, state)
        if (cursor < -0.5) state.odd.backedTooFar++
        cursor = Math.max(0, cursor)
        length = Math.max(length, cursor)
        break
      case 'attributes':
        hold(event, state)
        if (cursor === 0) time = state.time
        if (event.fifths) keys.push({ at: Math.round(cursor), ...sounding(event.fifths, state) })
        break
      case 'tempo': {
        const { tempo, forPlaying, offset } = event
        const at = Math.max(0, Math.round(cursor + inTicks(offset, state)))
        tempos.push({ at, tempo, forPlaying })
        break
      }
      case 'signs':
        signs = { ...signs, ...event.signs }
        break
    }
  const laid = rankGraces(notes)
  return { number, implicit, notes: laid, length: Math.round(length), time, tempos, keys, signs }
}

const hold = (event: XmlAttributes, state: PartState): void => {
  state.divisions = event.divisions ?? state.divisions
  state.time = event.time ?? state.time
  state.staves = Math.max(state.staves, event.staves ?? 1)
  if (event.transpose) state.transpose.set(event.transpose.staff ?? 0, event.transpose.semitones)
}

const semitonesAt = (staff: number, { transpose }: PartState): number =>
  transpose.get(staff) ?? transpose.get(0) ?? 0

/** A part written a whole tone higher has two sharps more than sound; a semitone is seven fifths. */
const sounding = (
  { fifths, mode }: NonNullable<XmlAttributes['fifths']>,
  state: PartState,
): Omit<KeySignature, 'start'> => {
  const semitones = semitonesAt(1, state) % 12
  return {
    fifths: semitones === 0 ? fifths : foldFifths(((fifths + 7 * semitones + 66) % 12) - 6),
    mode,
  }
}

const inTicks = (divisions: number, { resolution, divisions: perQuarter }: PartState): number => {
  const ticks = (divisions * resolution) / perQuarter
  const whole = Math.round(ticks)
  return Math.abs(ticks - whole) < 1e-6 ? whole : ticks
}

/** Grace notes take no time; where a duration is missing, the printed value is it. */
const ticksOf = (note: XmlNote, state: PartState): number => {
  if (note.grace) return 0
  if (note.duration !== undefined && note.duration > 0) return inTicks(note.duration, state)
  return (note.value ?? 0) * state.resolution
}

const layNote = (
  note: XmlNote,
  from: number,
  ticks: number,
  state: PartState,
): LaidNote | undefined => {
  const { odd, resolution } = state
  if (note.sounds === 'unpitched') odd.unpitched++
  if (note.sounds !== 'pitch' || !note.pitch) return undefined
  if (ticks === 0 && !note.grace) {
    odd.noLength++
    return undefined
  }
  const semitones = semitonesAt(note.staff, state)
  const keyNumber = keyOf(note.pitch) + semitones
  if (!Number.isInteger(keyNumber) || keyNumber < 0 || keyNumber > 127) {
    odd.noKey++
    return undefined
  }
  if (!Number.isInteger(note.pitch.alter)) odd.betweenKeys++
  if (ticks % 1 !== 0) odd.rounded++
  const at = Math.round(from)
  const graceTicks = Math.min(note.value ?? 0.5, 1) * resolution
  state.staves = Math.max(state.staves, Math.min(note.staff, mostStaves))
  return {
    at,
    length: Math.max(1, Math.round(note.grace ? graceTicks : from + ticks) - (note.grace ? 0 : at)),
    key: key(keyNumber),
    staff: note.staff,
    tie: note.tie,
    chord: note.chord,
    marks: semitones === 0 ? { ...note.marks, ...spellingOf(note.pitch) } : note.marks,
  }
}

/** No keyboard part has more. */
const mostStaves = 8

const steps: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 }

/** C4 is key 60. Of tones between two keys the one on the natural's side. */
const keyOf = ({ step, alter, octave }: XmlPitch): number =>
  12 * (octave + 1) + (steps[step] ?? 0) + Math.trunc(alter)

const accidentals = ['bb', 'b', '', '#', '##']

const spellingOf = ({ step, alter, octave }: XmlPitch): NoteMarks => {
  const accidental = accidentals[alter + 2]
  return accidental === undefined ? {} : { spelling: `${step}${accidental}${octave}` }
}

/** Tells grace notes how many of them still come before the main note; those of one chord come together. */
const rankGraces = (notes: readonly LaidNote[]): readonly LaidNote[] => {
  if (!notes.some(({ marks }) => marks.grace)) return notes
  let graceRank = 0
  return notes
    .toReversed()
    .map((note) => {
      if (!note.marks.grace) {
        graceRank = 0
        return note
      }
      const ranked = { ...note, marks: { ...note.marks, graceRank } }
      if (!note.chord) graceRank++
      return ranked
    })
    .toReversed()
}
