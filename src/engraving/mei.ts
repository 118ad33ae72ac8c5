import type { Note } from '@/music/music'
import { groupLayer, type Group } from './beams'
import type { Piece } from './layers'
import { nameOf, spell } from '@/music/spelling'
import type { OpenTie } from './openTies'
import { openTiesOf, signsOf } from './signs'
import { noteStrokes, pairStrokes } from './tremoloStrokes'
import type { Clef } from './clefs'
import type { Stretch, SystemPlace } from './stretch'
import { write, type Staff, type WrittenBar, type Writing } from './writing'
import { graceAt, headId, onStaff } from './heads'

/** The text that the engraver reads, and what a pencil must know of each note. */
export interface Mei {
  readonly mei: string
  readonly notes: ReadonlyMap<string, NotePlace>
  readonly onsets: number
  readonly openTies: readonly OpenTie[]
}

/** Where a note stands, and what a reader holds for the lines around it. */
export interface NotePlace {
  /** Parts of a quarter: notes of one onset have the same. */
  readonly at: number
  readonly step: number
  readonly fifths: number
  readonly mode: 'major' | 'minor'
  /** Staff step and alteration of each accidental in force after this onset. */
  readonly inForce: readonly (readonly [number, number])[]
}

/**
 * The stretch as MEI (Music Encoding Initiative, version 5). All that is to be printed is written
 * out: the engraver adds no accidental, beam or tie of its own.
 */
export const writeMei = (stretch: Stretch): Mei => {
  const writing = write(stretch)
  const body = writing.bars
    .map((bar, i) => changes(writing, i) + measure(writing, bar, i, stretch.system))
    .join('\n')
  return {
    mei: wholeDocument(scoreDef(writing, stretch.system), body),
    notes: placesOf(writing),
    openTies: openTiesOf(writing),
    onsets: new Set(stretch.notes.map((note) => note.start)).size,
  }
}

const wholeDocument = (definition: string, section: string): string =>
  `<?xml version="1.0" encoding="UTF-8"?>
<mei xmlns="http://www.music-encoding.org/ns/mei" meiversion="5.0"><meiHead><fileDesc><titleStmt><title/></titleStmt><pubStmt/></fileDesc></meiHead><music><body><mdiv><score>
${definition}
<section>
${section}
</section></score></mdiv></body></music></mei>`

const clefAttributes = { treble: ['G', 2], bass: ['F', 4] } as const

const scoreDef = ({ bars, staves }: Writing, system?: SystemPlace): string => {
  const first = bars[0]
  const again = system?.sameTime ? ' meter.visible="false"' : ''
  const shared = first ? `${keyAttribute(first)} ${meterAttributes(first)}${again}` : ''
  const defs = staves.map((staff, i) => {
    const [shape, line] = clefAttributes[staff.clefs[0] ?? 'treble']
    return `<staffDef n="${i + 1}" lines="5" clef.shape="${shape}" clef.line="${line}" ${shared}/>`
  })
  const brace = staves.length > 1 ? ' symbol="brace" bar.thru="true"' : ''
  return `<scoreDef><staffGrp${brace}>${defs.join('')}</staffGrp></scoreDef>`
}

const keyAttribute = ({ signature: { fifths } }: WrittenBar): string =>
  `keysig="${fifths === 0 ? '0' : `${Math.abs(fifths)}${fifths > 0 ? 's' : 'f'}`}"`

const meterAttributes = ({ bar: { time } }: WrittenBar): string =>
  `meter.count="${time.beats}" meter.unit="${time.beatType}"`

/** A change of key or time signature before a bar. */
const changes = ({ bars }: Writing, index: number): string => {
  const before = bars[index - 1]
  const now = bars[index]
  if (!before || !now) return ''
  const key = keyAttribute(before) === keyAttribute(now) ? '' : ` ${keyAttribute(now)}`
  const meter = meterAttributes(before) === meterAttributes(now) ? '' : ` ${meterAttributes(now)}`
  return key || meter ? `<scoreDef${key}${meter}/>\n` : ''
}

const measure = (
  writing: Writing,
  bar: WrittenBar,
  index: number,
  system?: SystemPlace,
): string => {
  const number = bar.number > 0 ? ` n="${bar.number}"` : ''
  const partial = bar.isPartial ? ' metcon="false"' : ''
  const isEnd = system?.isLast === true && index === writing.bars.length - 1
  const right = isEnd ? ' right="end"' : bar.endsEarly ? ' right="invis"' : ''
  const staves = writing.staves.map((staff, i) => staffXml(staff, i, bar, index))
  const signs = writing.staves.flatMap((staff, i) => signsOf(staff, i, index))
  return `<measure${number}${partial}${right}>${staves.join('')}${signs.join('')}</measure>`
}

const staffXml = (staff: Staff, place: number, bar: WrittenBar, index: number): string => {
  const voices = staff.bars[index] ?? []
  const isHeard = (voice: readonly Piece[]): boolean => voice.some((p) => p.kind !== 'space')
  const some = voices.some(isHeard)
  const drawn = voices.filter((voice, i) => (some ? isHeard(voice) : i === 0))
  const layers = drawn.map((voice, i) => {
    const inside = clefsInside(staff, place, bar, voice, i === 0)
    const after = i === 0 ? clefAfter(staff, bar, index) : ''
    return `<layer n="${voices.indexOf(voice) + 1}">${layerXml(voice, staff, bar, inside)}${after}</layer>`
  })
  return `<staff n="${place + 1}">${layers.join('')}</staff>`
}

/** A new clef at the beginning of a bar stands before the bar line. */
const clefAfter = (staff: Staff, bar: WrittenBar, index: number): string => {
  const next = staff.clefs[index + 1] ?? staff.nextClef
  const changed = staff.clefChanges.findLast(({ at }) => at >= bar.start && at < bar.end)
  return next && next !== (changed?.clef ?? staff.clefs[index]) ? clefXml(next) : ''
}

type ClefsBefore = ReadonlyMap<Piece, string>

/** New clefs inside a bar; further voices only refer to the one that the first prints. */
const clefsInside = (
  staff: Staff,
  place: number,
  bar: WrittenBar,
  voice: readonly Piece[],
  isFirst: boolean,
): ClefsBefore => {
  const clefs = new Map<Piece, string>()
  for (const { at, clef } of staff.clefChanges) {
    const piece = at < bar.end ? voice.find(({ start }) => start >= at) : undefined
    if (at <= bar.start || !piece) continue
    const id = `clef${place}at${at}`
    clefs.set(piece, isFirst ? clefXml(clef, id) : `<clef sameas="#${id}"/>`)
  }
  return clefs
}

const clefXml = (clef: Clef, id?: string): string => {
  const [shape, line] = clefAttributes[clef]
  return `<clef${id ? ` xml:id="${id}"` : ''} shape="${shape}" line="${line}"/>`
}

const layerXml = (
  voice: readonly Piece[],
  staff: Staff,
  bar: WrittenBar,
  clefs: ClefsBefore,
): string => {
  const [only, ...others] = voice
  if (only?.kind === 'rest' && others.length === 0 && !bar.isPartial) return '<mRest/>'
  return groupLayer(voice, bar)
    .map((group) => groupXml(group, staff, clefs))
    .join('')
}

const groupXml = (group: Group, staff: Staff, clefs: ClefsBefore): string => {
  switch (group.kind) {
    case 'piece':
      return (clefs.get(group.piece) ?? '') + pieceXml(group.piece, staff)
    case 'beam':
      return `<beam>${contentXml(group.content, staff, clefs)}</beam>`
    case 'tremolo': {
      const { from, to } = group
      const before = (clefs.get(from) ?? '') + gracesXml(from, staff)
      return `${before}<fTrem ${pairStrokes(from)}>${chordXml(from, staff)}${chordXml(to, staff)}</fTrem>`
    }
    case 'tuplet': {
      const { num, numbase } = group.tuplet
      const bracket = group.content.length === 1 && group.content[0]?.kind === 'beam'
      const inner = contentXml(group.content, staff, clefs)
      return `<tuplet num="${num}" numbase="${numbase}" num.visible="true" bracket.visible="${!bracket}">${inner}</tuplet>`
    }
  }
}

const contentXml = (content: readonly Group[], staff: Staff, clefs: ClefsBefore): string =>
  content.map((each) => groupXml(each, staff, clefs)).join('')

const pieceXml = (piece: Piece, staff: Staff): string => {
  if (piece.kind !== 'notes') return `<${piece.kind} ${valueXml(piece)}/>`
  const strokes = noteStrokes(piece)
  const chord = chordXml(piece, staff)
  const main = strokes === undefined ? chord : `<bTrem ${strokes}>${chord}</bTrem>`
  return gracesXml(piece, staff) + main
}

const valueXml = ({ value: { dur, dots } }: Piece): string =>
  `dur="${dur}"${dots === 1 ? ' dots="1"' : ''}`

const chordXml = (piece: Piece, staff: Staff): string => {
  const isAccented = !piece.tiedFrom && piece.notes.some((note) => note.accent)
  const value = `${valueXml(piece)}${isAccented ? ' artic="acc"' : ''}`
  const [only, ...others] = piece.notes
  if (only && others.length === 0) return noteXml(only, headId(only, piece), staff, ` ${value}`)
  const heads = piece.notes.map((note) => noteXml(note, headId(note, piece), staff, ''))
  return `<chord ${value}>${heads.join('')}</chord>`
}

const gracesXml = (piece: Piece, staff: Staff): string => {
  if (piece.tiedFrom) return ''
  const graces = piece.notes.flatMap((note) => staff.graces.get(note.id) ?? [])
  return graces.map((note) => noteXml(note, note.id, staff, ' grace="unacc" dur="8"')).join('')
}

const noteXml = (note: Note, id: string, staff: Staff, value: string): string => {
  const { step, alter } = staff.spellings.get(note.id) ?? { step: 0, alter: 0 }
  const written = onStaff({ step, alter }, staff.readings.get(note.id))
  const sounding = written.step === step ? '' : ` oct.ges="${nameOf(step).octave}"`
  const printed = staff.heads.get(id)?.accidental
  const accid =
    printed === undefined
      ? ` accid.ges="${alter === 2 ? 'ss' : accidentalName(alter)}"`
      : ` accid="${accidentalName(alter)}"`
  return `<note xml:id="${id}"${value} ${pitch(written.step)}${sounding}${accid}/>`
}

const pitch = (step: number): string => {
  const { letter, octave } = nameOf(step)
  return `pname="${letter}" oct="${octave}"`
}

const accidentalName = (alter: number): string => {
  if (alter === 0) return 'n'
  if (alter > 0) return alter === 1 ? 's' : 'x'
  return alter === -1 ? 'f' : 'ff'
}

const placesOf = ({ bars, staves }: Writing): ReadonlyMap<string, NotePlace> => {
  const places = new Map<string, NotePlace>()
  for (const staff of staves)
    for (const [i, voices] of staff.bars.entries()) {
      const signature = bars[i]?.signature ?? { fifths: 0, mode: 'major' }
      const place = ({ id, key }: Note, at: number): void => {
        const { step } = staff.spellings.get(id) ?? spell(key, signature)
        const { fifths, mode } = signature
        // Accidentals hold for lines of the staff: under an octave line they sound an octave away.
        const up = 7 * (staff.readings.get(id)?.octaves ?? 0)
        const inForce = [...(staff.heads.get(id)?.inForce ?? [])].map(
          ([line, alter]) => [line + up, alter] as const,
        )
        places.set(id, { at, step, fifths, mode, inForce })
      }
      for (const piece of voices.flat().filter(({ tiedFrom }) => !tiedFrom))
        for (const note of piece.notes) {
          place(note, piece.start)
          for (const grace of staff.graces.get(note.id) ?? []) place(grace, graceAt(piece))
        }
    }
  return places
}
