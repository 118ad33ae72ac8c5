import type { Signature } from '@/music/spelling'

/** Where everything stands on a drawing, in the drawing's own units: read once, no layout asked. */
export interface Page {
  readonly notes: ReadonlyMap<string, PageNote>
  readonly staves: readonly PageStaff[]
  /** The height of the drawing, and how far its top lies above the zero of all heights here. */
  readonly height: number
  readonly above: number
}

export interface PageNote {
  readonly id: string
  /** The middle of the head. */
  readonly x: number
  readonly y: number
  /** Left of its accidental, or of the head. */
  readonly left: number
  /** Half the width of the head. */
  readonly half: number
  readonly at: number
  readonly step: number
  readonly signature: Signature
  /** Alterations that a reader holds after this onset, by staff step. */
  readonly inForce: ReadonlyMap<number, number>
  readonly staff: PageStaff
}

/** One staff in one system. */
export interface PageStaff {
  readonly top: number
  readonly bottom: number
  readonly space: number
  left: number
  right: number
  /** What is printed on it: heads, stems, beams, rests, tuplet signs; fingers, ornaments, octave lines beside it. */
  readonly ink: Ink[]
}

export interface Ink {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
}

/** Reads the text of an engraved `<svg>`. */
export const readPage = (svg: string): Page => {
  const reading = newReading()
  for (const [, closing, name = '', attributes = '', selfClosing] of svg.matchAll(tag)) {
    if (closing) close(reading)
    else {
      open(reading, { name, attributes })
      if (selfClosing) close(reading)
    }
  }
  return { notes: reading.notes, staves: reading.systems.flat(), ...sizeOf(svg) }
}

/** The music is drawn at ten times the size of the outer drawing, within its margins. */
const sizeOf = (svg: string): Pick<Page, 'height' | 'above'> => {
  const [, , , height = 0] = numbers(/viewBox="([\d. ]+)"/.exec(svg)?.[1])
  const [, above = 0] = numbers(
    /class="page-margin" transform="translate\(([^)]*)\)"/.exec(svg)?.[1],
  )
  return { height: 10 * height, above }
}

const tag = /<(\/?)([a-z]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>/gi

interface Reading {
  readonly stack: string[]
  readonly systems: PageStaff[][]
  readonly notes: Map<string, PageNote>
  /** Staff lines met since the last staff began. */
  lines: { readonly x0: number; readonly x1: number; readonly y: number }[]
  staff: PageStaff | undefined
  note: string | undefined
  /** The accidental or head of a note may come first. */
  leftOfNote: number
}

const newReading = (): Reading => ({
  stack: [],
  systems: [],
  notes: new Map(),
  lines: [],
  staff: undefined,
  note: undefined,
  leftOfNote: Infinity,
})

interface Tag {
  readonly name: string
  readonly attributes: string
}

type AttributeName = keyof typeof attributePatterns

const attributePatterns = {
  class: /\sclass="([^"]*)"/,
  id: /\sid="([^"]*)"/,
  d: /\sd="([^"]*)"/,
  x: /\sx="([^"]*)"/,
  y: /\sy="([^"]*)"/,
  points: /\spoints="([^"]*)"/,
  transform: /\stransform="([^"]*)"/,
  href: /\s(?:xlink:)?href="([^"]*)"/,
  'data-at': /\sdata-at="([^"]*)"/,
  'data-step': /\sdata-step="([^"]*)"/,
  'data-key': /\sdata-key="([^"]*)"/,
  'data-accidentals': /\sdata-accidentals="([^"]*)"/,
} as const

const attribute = ({ attributes }: Tag, name: AttributeName): string | undefined =>
  attributePatterns[name].exec(attributes)?.[1]

const open = (reading: Reading, tag: Tag): void => {
  const word = tag.name === 'g' ? (attribute(tag, 'class')?.split(' ')[0] ?? '') : tag.name
  reading.stack.push(word)
  if (word === 'system') reading.systems.push([])
  if (word === 'staff') {
    reading.lines = []
    reading.staff = undefined
  }
  if (word === 'note' && attribute(tag, 'data-step') !== undefined) beginNote(reading, tag)
  if (word === 'path') readPath(reading, tag)
  if (word === 'use') readGlyph(reading, tag)
  if (word === 'polygon' || word === 'polyline') spill(reading, pairs(attribute(tag, 'points')))
  if (word === 'text') readText(reading, tag)
}

const close = (reading: Reading): void => {
  const word = reading.stack.pop()
  if (word === 'note') reading.note = undefined
  if (word === 'staff') reading.staff = undefined
}

const numbers = (text = ''): number[] => (text.match(/-?\d+(\.\d+)?/g) ?? []).map(Number)

const pairs = (text = ''): (readonly [number, number])[] => {
  const all = numbers(text)
  return all.flatMap((x, i) => (i % 2 === 0 ? [[x, all[i + 1] ?? 0] as const] : []))
}

/** The first five lines of a staff are its lines; what follows is ink. */
const readPath = (reading: Reading, tag: Tag): void => {
  const parent = reading.stack.at(-2)
  const points = pairs(attribute(tag, 'd'))
  const [from, to] = points
  if (parent === 'staff' && from && to && reading.lines.length < 5) {
    reading.lines.push({ x0: from[0], x1: to[0], y: from[1] })
    if (reading.lines.length === 5) beginStaff(reading)
  } else spill(reading, points)
}

const beginStaff = (reading: Reading): void => {
  const [first] = reading.lines
  const last = reading.lines.at(-1)
  const system = reading.systems.at(-1)
  if (!first || !last || !system) return
  const known = system.find(({ top }) => top === first.y)
  if (known) known.right = Math.max(known.right, first.x1)
  const staff = known ?? {
    top: first.y,
    bottom: last.y,
    space: (last.y - first.y) / 4,
    left: first.x0,
    right: first.x1,
    ink: [],
  }
  if (!known) system.push(staff)
  reading.staff = staff
}

/** Signs that the engraver draws after the staves, each beside one of them. */
const besideStaves = new Set(['fing', 'octave', 'trill', 'mordent', 'turn'])

/** The staff that is being drawn, or for a sign beside the staves the nearest one. */
const staffAt = ({ staff, stack, systems }: Reading, y: number): PageStaff | undefined => {
  if (staff || !stack.some((word) => besideStaves.has(word))) return staff
  const distance = ({ top, bottom }: PageStaff): number => Math.max(top - y, y - bottom, 0)
  return systems.at(-1)?.toSorted((a, b) => distance(a) - distance(b))[0]
}

const spill = (reading: Reading, points: readonly (readonly [number, number])[]): void => {
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  const staff = staffAt(reading, ys[0] ?? 0)
  if (!staff || points.length === 0) return
  staff.ink.push({
    x0: Math.min(...xs),
    x1: Math.max(...xs),
    y0: Math.min(...ys),
    y1: Math.max(...ys),
  })
}

/** The digits of a finger, centred on their place and standing on it. */
const readText = (reading: Reading, tag: Tag): void => {
  if (!reading.stack.includes('fing')) return
  const [x = 0] = numbers(attribute(tag, 'x'))
  const [y = 0] = numbers(attribute(tag, 'y'))
  const space = staffAt(reading, y)?.space ?? 0
  spill(reading, [
    [x - 0.5 * space, y - 1.2 * space],
    [x + 0.5 * space, y],
  ])
}

/** Glyphs stand by their left edge and baseline; heads, the tuplet's figure, rests and signs matter here. */
const readGlyph = (reading: Reading, tag: Tag): void => {
  const { stack } = reading
  const [x, y] = numbers(attribute(tag, 'transform'))
  if (x === undefined || y === undefined) return
  const staff = staffAt(reading, y)
  if (!staff) return
  const parent = stack.at(-2) ?? ''
  if (parent === 'notehead' || parent === 'accid') readHead(reading, tag, parent, x, y)
  const isSign = parent === 'tupletNum' || parent === 'rest' || besideStaves.has(parent)
  const reach = isSign ? 1 : parent === 'notehead' ? 0.5 : 0
  if (reach > 0)
    staff.ink.push({
      x0: x,
      x1: x + 1.2 * staff.space,
      y0: y - reach * staff.space,
      y1: y + reach * staff.space,
    })
}

const beginNote = (reading: Reading, tag: Tag): void => {
  const staff = reading.staff
  const id = attribute(tag, 'id')
  if (!staff || id === undefined) return
  const [fifths = 0] = numbers(attribute(tag, 'data-key'))
  const inForce = (attribute(tag, 'data-accidentals') ?? '').split(' ').filter(Boolean)
  reading.note = id
  reading.notes.set(id, {
    id,
    x: 0,
    y: 0,
    left: Infinity,
    half: 0.6 * staff.space,
    at: Number(attribute(tag, 'data-at')),
    step: Number(attribute(tag, 'data-step')),
    signature: { fifths, mode: attribute(tag, 'data-key')?.endsWith('minor') ? 'minor' : 'major' },
    inForce: new Map(inForce.map((pair) => [numbers(pair)[0] ?? 0, numbers(pair)[1] ?? 0])),
    staff,
  })
}

/** SMuFL: U+E0A2 is the whole notehead, half again as wide as the others. */
const readHead = (reading: Reading, tag: Tag, part: string, x: number, y: number): void => {
  const note = reading.note === undefined ? undefined : reading.notes.get(reading.note)
  if (!note) return
  const left = Math.min(note.left, x)
  const isWhole = /#E0A[01]|#E0A2/.test(attribute(tag, 'href') ?? '')
  const half = (isWhole ? 0.85 : 0.6) * note.staff.space
  reading.notes.set(
    note.id,
    part === 'accid' ? { ...note, left } : { ...note, left, half, x: x + half, y },
  )
}
