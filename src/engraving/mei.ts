import type { Note } from '@/music/music'
import { groupLayer, type Group } from './beams'
import type { Piece } from './layers'
import { nameOf, spell } from '@/music/spelling'
import type { OpenTie } from './openTies'
import type { Stretch, SystemPlace } from './stretch'
import { graceAt, headId, write, type Staff, type WrittenBar, type Writing } from './writing'

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
  const signs = writing.staves.flatMap((staff, i) => signsOf(staff, i, index, writing))
  return `<measure${number}${partial}${right}>${staves.join('')}${signs.join('')}</measure>`
}

const staffXml = (staff: Staff, place: number, bar: WrittenBar, index: number): string => {
  const voices = staff.bars[index] ?? []
  const isHeard = (voice: readonly Piece[]): boolean => voice.some((p) => p.kind !== 'space')
  const some = voices.some(isHeard)
  const layers = voices.flatMap((voice, i) => {
    if (some ? !isHeard(voice) : i > 0) return []
    return [
      `<layer n="${i + 1}">${layerXml(voice, staff, bar)}${clefChange(staff, index, voices, i)}</layer>`,
    ]
  })
  return `<staff n="${place + 1}">${layers.join('')}</staff>`
}

/** A new clef stands before the bar line. */
const clefChange = (
  staff: Staff,
  index: number,
  voices: readonly (readonly Piece[])[],
  voice: number,
): string => {
  const next = staff.clefs[index + 1]
  const first = voices.findIndex((v) => v.some((p) => p.kind !== 'space'))
  if (!next || next === staff.clefs[index] || voice !== Math.max(0, first)) return ''
  const [shape, line] = clefAttributes[next]
  return `<clef shape="${shape}" line="${line}"/>`
}

const layerXml = (voice: readonly Piece[], staff: Staff, bar: WrittenBar): string => {
  const [only, ...others] = voice
  if (only?.kind === 'rest' && others.length === 0 && !bar.isPartial) return '<mRest/>'
  return groupLayer(voice, bar)
    .map((group) => groupXml(group, staff))
    .join('')
}

const groupXml = (group: Group, staff: Staff): string => {
  if (group.kind === 'piece') return pieceXml(group.piece, staff)
  const inner = group.content.map((each) => groupXml(each, staff)).join('')
  if (group.kind === 'beam') return `<beam>${inner}</beam>`
  const { num, numbase } = group.tuplet
  const bracket = group.content.length === 1 && group.content[0]?.kind === 'beam'
  return `<tuplet num="${num}" numbase="${numbase}" num.visible="true" bracket.visible="${!bracket}">${inner}</tuplet>`
}

const pieceXml = (piece: Piece, staff: Staff): string => {
  const value = `dur="${piece.value.dur}"${piece.value.dots === 1 ? ' dots="1"' : ''}`
  if (piece.kind !== 'notes') return `<${piece.kind} ${value}/>`
  const [only, ...others] = piece.notes
  const graces = gracesXml(piece, staff)
  if (only && others.length === 0)
    return graces + noteXml(only, headId(only, piece), staff, ` ${value}`)
  const heads = piece.notes.map((note) => noteXml(note, headId(note, piece), staff, ''))
  return `${graces}<chord ${value}>${heads.join('')}</chord>`
}

const gracesXml = (piece: Piece, staff: Staff): string => {
  if (piece.tiedFrom) return ''
  const graces = piece.notes.flatMap((note) => staff.graces.get(note.id) ?? [])
  return graces.map((note) => noteXml(note, note.id, staff, ' grace="unacc" dur="8"')).join('')
}

const noteXml = (note: Note, id: string, staff: Staff, value: string): string => {
  const { step, alter } = staff.spellings.get(note.id) ?? { step: 0, alter: 0 }
  const printed = staff.heads.get(id)?.accidental
  const accid =
    printed === undefined
      ? ` accid.ges="${alter === 2 ? 'ss' : accidentalName(alter)}"`
      : ` accid="${accidentalName(alter)}"`
  return `<note xml:id="${id}"${value} ${pitch(step)}${accid}/>`
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

/** Ties, rolled chords and ornaments of one staff in one bar. */
const signsOf = (staff: Staff, place: number, index: number, writing: Writing): string[] => {
  const voices = staff.bars[index] ?? []
  return voices.flatMap((voice, v) =>
    voice.flatMap((piece, i) => {
      if (piece.kind !== 'notes') return []
      const next = voice[i + 1] ?? writing.staves[place]?.bars[index + 1]?.[v]?.[0]
      const ties = piece.tiedTo ? piece.notes.map((note) => tieXml(note, piece, next)) : []
      return piece.tiedFrom ? ties : [...ties, ...ornamentXml(piece)]
    }),
  )
}

/** Ties whose other head the drawing does not show: held from before it, or over its end. */
const openTiesOf = ({ bars, staves }: Writing): readonly OpenTie[] =>
  staves.flatMap((staff) =>
    bars.flatMap((_, b) =>
      (staff.bars[b] ?? []).flatMap((voice, v) =>
        voice.flatMap((piece, i): readonly OpenTie[] => {
          const next = voice[i + 1] ?? staff.bars[b + 1]?.[v]?.[0]
          const open = (side: OpenTie['side']): readonly OpenTie[] =>
            piece.notes.map((note) => ({ id: headId(note, piece), side }))
          return [
            ...(piece.tiedFrom && b === 0 && i === 0 ? open('before') : []),
            ...(piece.tiedTo && !next?.tiedFrom ? open('after') : []),
          ]
        }),
      ),
    ),
  )

/** What is tied over the end of the drawing rings on. */
const tieXml = (note: Note, piece: Piece, next: Piece | undefined): string => {
  const from = headId(note, piece)
  if (!next?.tiedFrom) return `<lv startid="#${from}"/>`
  return `<tie startid="#${from}" endid="#${headId(note, next)}"/>`
}

const ornamentXml = ({ notes }: Piece): string[] => {
  const rolled = notes.filter((note) => note.rolled).map((note) => `#${note.id}`)
  const arpeggio = rolled.length > 1 ? [`<arpeg plist="${rolled.join(' ')}"/>`] : []
  const signs = notes.flatMap((note) => {
    if (!note.ornament || note.ornament === 'tremolo') return []
    return [`<${note.ornament} startid="#${note.id}"/>`]
  })
  return [...arpeggio, ...signs]
}

const placesOf = ({ bars, staves }: Writing): ReadonlyMap<string, NotePlace> => {
  const places = new Map<string, NotePlace>()
  for (const staff of staves)
    for (const [i, voices] of staff.bars.entries()) {
      const signature = bars[i]?.signature ?? { fifths: 0, mode: 'major' }
      const place = ({ id, key }: Note, at: number): void => {
        const { step } = staff.spellings.get(id) ?? spell(key, signature)
        const { fifths, mode } = signature
        places.set(id, {
          at,
          step,
          fifths,
          mode,
          inForce: [...(staff.heads.get(id)?.inForce ?? [])],
        })
      }
      for (const piece of voices.flat().filter(({ tiedFrom }) => !tiedFrom))
        for (const note of piece.notes) {
          place(note, piece.start)
          for (const grace of staff.graces.get(note.id) ?? []) place(grace, graceAt(piece))
        }
    }
  return places
}
