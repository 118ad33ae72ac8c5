import type { Bar, Hand, Note } from '@/music/music'
import { printAccidentals, type PrintedHead } from './accidentals'
import type { Clef } from './clefs'
import { headsOf, onStaff } from './heads'
import { layerOf, type Piece } from './layers'
import { limitsOf, silenceOf, type Limits } from './limits'
import { metreOf, type Metre } from './metre'
import { quantise, type WrittenHand } from './quantise'
import { octaveLinesOf, type OctaveLine } from './octaveLines'
import type { Signature, Spelling } from '@/music/spelling'
import { centresOf, spellVoices, type Centres, type Graces } from './spellVoices'
import { tick } from '@/music/units'
import { clefOfNext, readStaff, type StaffReading } from './staffReading'
import type { Stretch } from './stretch'
import type { Tuplet } from './tuplets'
import type { Span } from './values'
import { partVoices, type Voice } from './voices'

/** One hand's staff, bar by bar, with all that is to be printed. */
export interface Staff extends StaffReading {
  readonly hand: Hand
  /** What the line after this one begins with. */
  readonly nextClef?: Clef
  readonly octaveLines: readonly OctaveLine[]
  /** For each bar its voices, upper first; a voice that is absent there is empty. */
  readonly bars: readonly (readonly (readonly Piece[])[])[]
  readonly spellings: ReadonlyMap<string, Spelling>
  /** Grace notes by the note before which they stand. */
  readonly graces: Graces
  /** By the id of the written head: ties continue under ids of their own. */
  readonly heads: ReadonlyMap<string, PrintedHead>
}

/** A stretch as it is written on the page. */
export interface Writing {
  readonly bars: readonly WrittenBar[]
  readonly staves: readonly Staff[]
}

export interface WrittenBar extends Metre {
  readonly bar: Bar
  readonly signature: Signature
  /** Cut off at the beginning or the end, or a pickup. */
  readonly isPartial: boolean
  readonly endsEarly: boolean
}

export const write = (stretch: Stretch): Writing => {
  const metres = stretch.bars.map((bar) => metreOf(bar, stretch.ticksPerQuarter))
  const all = [...stretch.notes, ...stretch.around].toSorted((a, b) => a.start - b.start)
  const drawn = new Set([...stretch.notes, ...(stretch.system ? heldInto(stretch) : [])])
  const hands = stretch.hands.map((hand) => {
    const own = all.filter((note) => note.hand === hand && !note.grace)
    const written = quantise(own, metres, stretch.ticksPerQuarter)
    return {
      hand,
      written,
      voices: partVoices(
        written.notes.filter((n) => drawn.has(n.note)),
        metres,
      ),
    }
  })
  const tuplets = hands.flatMap(({ written }) => written.tuplets)
  const chords = hands.flatMap(({ voices }) => voices.flat())
  const begun = new Set(stretch.notes)
  const own = chords.filter(({ notes }) => notes.some((note) => begun.has(note)))
  const limits = limitsOf(stretch, metres, own, tuplets)
  const bars = stretch.bars.flatMap((bar, i) => {
    const metre = metres[i]
    return metre && metre.end > limits.start && metre.start < limits.end
      ? [writtenBar(bar, metre, limits, stretch)]
      : []
  })
  const frame = {
    stretch,
    bars,
    limits,
    drawn,
    tuplets,
    graces: gracesOf(stretch.notes),
    centres: centresOf(bars, chords),
  }
  return { bars, staves: hands.map((hand) => staffOf(hand, frame)) }
}

/** A line of the piece goes on with what the line before has tied over the bar line. */
const heldInto = ({ around, start }: Stretch): readonly Note[] =>
  around.filter((note) => note.start < start && note.start + note.length > start)

/** What the staves of a drawing share. */
interface Frame {
  readonly stretch: Stretch
  readonly bars: readonly WrittenBar[]
  readonly limits: Limits
  readonly drawn: ReadonlySet<Note>
  readonly tuplets: readonly Tuplet[]
  readonly graces: Graces
  readonly centres: Centres
}

const writtenBar = (bar: Bar, metre: Metre, limits: Span, stretch: Stretch): WrittenBar => {
  const key = stretch.keys.findLast((k) => k.start <= bar.start) ?? stretch.keys[0]
  return {
    ...metre,
    bar,
    signature: key ?? { fifths: 0, mode: 'major' },
    isPartial: bar.number === 0 || limits.start > metre.start || limits.end < metre.end,
    endsEarly: limits.end < metre.end,
  }
}

interface PlayedHand {
  readonly hand: Hand
  readonly written: WrittenHand
  readonly voices: readonly Voice[]
}

const staffOf = ({ hand, written, voices }: PlayedHand, frame: Frame): Staff => {
  const { bars, limits, drawn, graces, stretch } = frame
  const around = written.notes.filter((n) => !drawn.has(n.note))
  const layers = bars.map((bar) =>
    voices.map((voice, v) => {
      // The first voice rests for all: a hand that is silent has one rest.
      const heard = v > 0 ? [limits] : [...around, ...voices.slice(1).flat()]
      const silence = { ...silenceOf(limits, written.tuplets, frame.tuplets), heard }
      return layerOf(voice, bar, limits, silence, written.tuplets)
    }),
  )
  const spellings = spellVoices(voices, bars, graces, frame.centres)
  const reading = readStaff(
    written.notes.filter((n) => drawn.has(n.note)),
    bars,
    stretch.readings[hand],
    hand,
    graces,
  )
  const heads = layers.flatMap((bar, i) =>
    headsOf(bar, i, bars[i]?.signature.fifths ?? 0, graces, (id) =>
      onStaff(spellings.get(id), reading.readings.get(id)),
    ),
  )
  return {
    hand,
    ...reading,
    ...nextClefOf(stretch, bars, hand),
    octaveLines: octaveLinesOf(layers, reading.readings, graces),
    bars: layers,
    spellings,
    graces,
    heads: printAccidentals(heads.toSorted((a, b) => a.bar - b.bar || a.at - b.at)),
  }
}

/** A line of the piece announces the clef of the line after it. */
const nextClefOf = (
  { bars: all, around, readings, system }: Stretch,
  bars: readonly WrittenBar[],
  hand: Hand,
): Pick<Staff, 'nextClef'> => {
  const next = all[bars.length]
  if (!system || !next) return {}
  const place = { bar: next.start, end: tick(next.start + next.length) }
  return { nextClef: clefOfNext(around, place, readings[hand], hand) }
}

/** Each grace note stands before the first main note of its hand at or after it, else the last before it. */
const gracesOf = (notes: readonly Note[]): Graces => {
  const graces = new Map<string, Note[]>()
  const inOrder = notes
    .filter((n) => n.grace)
    .toSorted((a, b) => a.start - b.start || (b.graceRank ?? 0) - (a.graceRank ?? 0))
  for (const grace of inOrder) {
    const mains = notes.filter((n) => !n.grace && n.hand === grace.hand)
    const main = mains.find((n) => n.start >= grace.start) ?? mains.at(-1)
    if (main) graces.set(main.id, [...(graces.get(main.id) ?? []), grace])
  }
  return graces
}
