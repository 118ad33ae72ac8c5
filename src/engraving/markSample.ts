import { key, noteId } from '@/music/units'
import { strokesOf } from './marks'
import type { Page, PageNote, PageStaff } from './page'
import type { PencilMark } from './pencilMark'
import type { Stroke } from './strokes'

/** One mark at a note in the middle of five lines, for a legend: `viewBox` units, ten to a staff space. */
export interface MarkSample {
  readonly viewBox: string
  /** How far the five lines lie from the top. */
  readonly lines: readonly number[]
  readonly heads: readonly { readonly x: number; readonly y: number }[]
  readonly strokes: readonly Stroke[]
  readonly space: number
}

const space = 10
const top = 25
const width = 90

const staff: PageStaff = { top, bottom: top + 4 * space, space, left: 0, right: width, ink: [] }

/** B4 on the middle line, and a second note for marks that need two. */
const noteAt = (id: string, x: number, at: number): PageNote => ({
  id,
  x,
  y: top + 2 * space,
  left: x - 0.6 * space,
  half: 0.6 * space,
  at,
  step: 34,
  signature: { fifths: 0, mode: 'major' },
  inForce: new Map(),
  staff,
})

const [first, second] = [noteId('first'), noteId('second')]

export const sampleOfMark = (shape: PencilMark['shape']): MarkSample => {
  const isTwo = shape === 'order' || shape === 'drift'
  const notes = [noteAt(first, isTwo ? 25 : 45, 0), ...(isTwo ? [noteAt(second, 65, 1)] : [])]
  const page: Page = {
    notes: new Map(notes.map((note) => [note.id, note])),
    staves: [staff],
    height: 0,
    above: 0,
  }
  return {
    viewBox: isUnder.has(shape) ? '8 15 74 92' : '8 4 74 74',
    lines: [0, 1, 2, 3, 4].map((line) => top + line * space),
    heads: notes.map(({ x, y }) => ({ x, y })),
    strokes: strokesOf(markOf(shape), page),
    space,
  }
}

/** Under the staff, where the others need no room. */
const isUnder: ReadonlySet<PencilMark['shape']> = new Set([
  'right',
  'early',
  'late',
  'uneven',
  'drift',
])

/** C5 in place of B4. */
const playedKey = key(72)

const markOf = (shape: PencilMark['shape']): PencilMark => {
  switch (shape) {
    case 'wrong':
      return { shape, note: first, playedKey }
    case 'extra':
      return { shape, near: first, key: playedKey }
    case 'early':
    case 'late':
      return { shape, note: first, ms: 0 }
    case 'order':
      return { shape, notes: [first, second] }
    case 'spread':
      return { shape, notes: [first] }
    case 'drift':
      return { shape, from: first, to: second, faster: true }
    case 'right':
    case 'missing':
    case 'repeated':
    case 'restart':
    case 'hesitation':
    case 'uneven':
      return { shape, note: first }
  }
}
