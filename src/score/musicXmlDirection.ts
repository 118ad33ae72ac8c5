import { tempo } from '@/music/units'
import type { BarSigns, XmlEvent, XmlTempo } from './musicXml'
import { noteValue } from './noteValues'
import {
  childOf,
  childrenOf,
  hasChild,
  numberIn,
  oneLine,
  parseDecimal,
  type XmlElement,
} from './xmlElement'

/** A `direction` element: the tempo and the signs for playing in it. Words and dynamics are left out. */
export const readDirection = (direction: XmlElement): readonly XmlEvent[] => {
  const sound = childOf(direction, 'sound')
  const printed = childrenOf(direction, 'direction-type')
    .flatMap((type) => childrenOf(type, 'metronome'))
    .flatMap(readMetronome)
  // The offset of a direction is where it is drawn, unless it says that it sounds there too.
  const offset = childOf(direction, 'offset')
  const heard = offset?.attributes.sound === 'yes' ? (parseDecimal(offset.text) ?? 0) : 0
  return [
    ...printed.map((mark) => ({ ...mark, offset: heard })),
    ...(sound ? readSound(sound, heard) : []),
  ]
}

/** Tempi outside of these stand in damaged files only (quarters a minute; common practice, no source). */
const slowest = 4
const fastest = 2000

/** A `sound` element, by itself or in a direction. */
export const readSound = (sound: XmlElement, offset = 0): readonly XmlEvent[] => {
  const { attributes } = sound
  const perMinute = parseDecimal(attributes.tempo)
  const signs: BarSigns = {
    ...(attributes.segno ? { segno: true } : {}),
    ...(attributes.coda ? { coda: true } : {}),
    ...(attributes.fine ? { fine: true } : {}),
    ...(attributes.tocoda ? { toCoda: true } : {}),
    ...(attributes.dacapo === 'yes' ? { daCapo: true } : {}),
    ...(attributes.dalsegno ? { dalSegno: true } : {}),
  }
  const events: XmlEvent[] = Object.keys(signs).length > 0 ? [{ kind: 'signs', signs }] : []
  if (perMinute === undefined || perMinute < slowest || perMinute > fastest) return events
  const at = numberIn(sound, 'offset') ?? offset
  return [...events, { kind: 'tempo', offset: at, tempo: tempo(perMinute), forPlaying: true }]
}

/** A printed metronome mark: 'dotted quarter = 60' -> 90 quarters a minute; 'quarter = half' -> twice the old tempo. */
const readMetronome = (metronome: XmlElement): readonly XmlTempo[] => {
  const units = readUnits(metronome)
  const [first, second] = units
  if (first === undefined) return []
  const text = oneLine(childOf(metronome, 'per-minute')?.text ?? '').slice(0, 40)
  const perMinute = parseDecimal(/\d+(\.\d+)?/.exec(text)?.[0])
  const mark = { kind: 'tempo', offset: 0, forPlaying: false } as const
  if (second !== undefined) return [{ ...mark, tempo: { timesTheOldOne: second / first } }]
  const quarters = first * (perMinute ?? 0)
  return quarters >= slowest && quarters <= fastest ? [{ ...mark, tempo: tempo(quarters) }] : []
}

/** Each beat unit with the dots after it, in quarters. */
const readUnits = ({ children }: XmlElement): readonly number[] =>
  children.flatMap(({ name, text }, i) => {
    if (name !== 'beat-unit') return []
    let dots = 0
    while (children[i + 1 + dots]?.name === 'beat-unit-dot') dots++
    return noteValue(text.trim(), dots) ?? []
  })

/** A `barline` element: repeats and endings. Those in the middle of a bar divide nothing that can be repeated. */
export const readBarline = (barline: XmlElement): readonly XmlEvent[] => {
  const { location } = barline.attributes
  if (location === 'middle') return []
  const repeat = childOf(barline, 'repeat')
  const ending = childOf(barline, 'ending')
  const passes = ending ? readPasses(ending.attributes.number ?? '') : []
  const times = parseDecimal(repeat?.attributes.times)
  const signs: BarSigns = {
    ...(repeat?.attributes.direction === 'forward' ? { repeatFrom: true } : {}),
    ...(repeat?.attributes.direction === 'backward' ? { repeatBack: { times } } : {}),
    ...(ending?.attributes.type === 'start' && passes.length > 0 ? { ending: passes } : {}),
    ...(ending && ending.attributes.type !== 'start' ? { endingOver: true } : {}),
    ...(hasChild(barline, 'segno') && location === 'left' ? { segno: true } : {}),
    ...(hasChild(barline, 'coda') && location === 'left' ? { coda: true } : {}),
  }
  return Object.keys(signs).length > 0 ? [{ kind: 'signs', signs }] : []
}

/** '1, 2' -> [1, 2]. */
const readPasses = (text: string): readonly number[] =>
  text
    .slice(0, 100)
    .split(/[ ,]+/)
    .map(Number)
    .filter((pass) => Number.isInteger(pass) && pass >= 1 && pass <= 99)
