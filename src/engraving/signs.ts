import type { Note } from '@/music/music'
import type { Piece } from './layers'
import type { OctaveLine } from './octaveLines'
import type { OpenTie } from './openTies'
import { headId } from './heads'
import type { Staff, Writing } from './writing'

/** What stands beside the notes of one staff in one bar: ties, ornaments, fingers, octave lines. */
export const signsOf = (staff: Staff, place: number, index: number): string[] => {
  const voices = staff.bars[index] ?? []
  const signs = voices.flatMap((voice, v) =>
    voice.flatMap((piece, i) => {
      if (piece.kind !== 'notes') return []
      const next = voice[i + 1] ?? staff.bars[index + 1]?.[v]?.[0]
      const ties = piece.tiedTo ? piece.notes.map((note) => tieXml(note, piece, next)) : []
      return piece.tiedFrom
        ? ties
        : [...ties, ...ornamentXml(piece, v > 0), ...fingersXml(piece, staff)]
    }),
  )
  const lines = staff.octaveLines.filter(({ bar }) => bar === index)
  return [...signs, ...lines.map((line) => octaveXml(line, place))]
}

/** Ties whose other head the drawing does not show: held from before it, or over its end. */
export const openTiesOf = ({ bars, staves }: Writing): readonly OpenTie[] =>
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

/** Those of a lower voice stand below it. */
const ornamentXml = ({ notes }: Piece, isLower: boolean): string[] => {
  const rolled = notes.filter((note) => note.rolled).map((note) => `#${note.id}`)
  const arpeggio = rolled.length > 1 ? [`<arpeg plist="${rolled.join(' ')}"/>`] : []
  const place = isLower ? ' place="below"' : ''
  return [...arpeggio, ...notes.flatMap((note) => signOf(note, place))]
}

/** MEI: a lower mordent has the line through it, an upper turn begins above. */
const signOf = ({ id, ornament, inverted }: Note, place: string): string[] => {
  if (ornament === undefined) return []
  switch (ornament) {
    case 'tremolo':
      return []
    case 'trill':
      return [`<trill startid="#${id}"${place}/>`]
    case 'mordent':
      return [`<mordent form="${inverted ? 'upper' : 'lower'}" startid="#${id}"${place}/>`]
    case 'turn':
      return [`<turn form="${inverted ? 'lower' : 'upper'}" startid="#${id}"${place}/>`]
  }
}

/**
 * Above the right hand, below the left; those of a chord in the order of its notes, the nearest to
 * the staff first. Common practice, no source.
 */
const fingersXml = ({ notes }: Piece, { hand, graces }: Staff): string[] => {
  const [place, chord] = hand === 'right' ? ['above', notes] : ['below', notes.toReversed()]
  return chord
    .flatMap((note) => [...(graces.get(note.id) ?? []), note])
    .flatMap(({ id, fingers = [] }) =>
      fingers.length === 0
        ? []
        : [`<fing startid="#${id}" place="${place}">${fingers.join('\u2013')}</fing>`],
    )
}

const octaveXml = ({ octaves, from, to }: OctaveLine, place: number): string => {
  const side = octaves > 0 ? 'above' : 'below'
  const distance = Math.abs(octaves) === 1 ? 8 : 15
  return `<octave staff="${place + 1}" dis="${distance}" dis.place="${side}" startid="#${from}" endid="#${to}"/>`
}
