import type { Key } from '@/music/units'
import type { Page, PageNote, PageStaff } from './page'
import type { PencilMark } from './pencilMark'
import { alterInSignature, spell } from '@/music/spelling'
import {
  accidentalStrokes,
  arrowStrokes,
  caesuraStrokes,
  crossStrokes,
  dottedRing,
  exchangeStrokes,
  hollowHead,
  hookStrokes,
  ledgerStroke,
  ringStroke,
  rolledStroke,
  slantStrokes,
  tickStroke,
  waveStroke,
  type Spot,
  type Stroke,
} from './strokes'

/** The strokes of a mark on a page; none where the page lacks the note. */
export const strokesOf = (mark: PencilMark, page: Page): Stroke[] => {
  switch (mark.shape) {
    case 'right':
      return on(page, mark.note, (note) => tickStroke(tickSpot(page, note)))
    case 'wrong':
      return on(page, mark.note, (note) => [
        ...ringStroke(spotOf(note), note.half),
        ...playedStrokes(page, note, mark.playedKey, hollowHead, true),
      ])
    case 'missing':
      return on(page, mark.note, (note) => dottedRing(spotOf(note), note.half))
    case 'extra':
      return on(page, mark.near, (note) =>
        playedStrokes(page, nearestTo(page, note, mark.key), mark.key, crossStrokes, false),
      )
    case 'repeated':
      return on(page, mark.note, (note) =>
        crossStrokes(shifted(note, note.half + 1.1 * note.staff.space)),
      )
    case 'order':
      return orderStrokes(page, mark.notes)
    case 'restart':
      return on(page, mark.note, (note) => hookStrokes(aboveSpot(note, -3, 0.4)))
    case 'hesitation':
      return on(page, mark.note, (note) => caesuraStrokes(beforeSpot(page, note, 1.3)))
    case 'early':
    case 'late': {
      const length = arrowLength(mark.ms)
      const signed = mark.shape === 'early' ? -length : length
      return on(page, mark.note, (note) => arrowStrokes(rowSpot(note, 1), signed))
    }
    case 'uneven':
      return on(page, mark.note, (note) => waveStroke(rowSpot(note, 1)))
    case 'spread':
      return spreadStrokes(page, mark.notes)
    case 'drift':
      return driftStrokes(page, mark)
  }
}

const on = (page: Page, id: string, strokes: (note: PageNote) => Stroke[]): Stroke[] => {
  const note = page.notes.get(id)
  return note ? strokes(note) : []
}

const spotOf = ({ x, y, staff: { space } }: PageNote): Spot => ({ x, y, space })

const shifted = (note: PageNote, by: number): Spot => ({ ...spotOf(note), x: note.x + by })

const notesOfOnset = (page: Page, note: PageNote): PageNote[] =>
  [...page.notes.values()].filter((n) => n.staff === note.staff && n.at === note.at)

/** Of the notes struck together, on whatever staff, the one nearest to a key. */
const nearestTo = (page: Page, note: PageNote, key: Key): PageNote => {
  const { step } = spell(key, note.signature)
  const together = [...page.notes.values()].filter(({ at }) => at === note.at)
  const far = (each: PageNote): number => Math.abs(each.step - step)
  return together.reduce((nearest, each) => (far(each) < far(nearest) ? each : nearest), note)
}

/** Below the lowest ink of the staff near x; `reach` in spaces to either side. */
const lowestInk = (staff: PageStaff, x: number, reach: number): number =>
  Math.max(
    staff.bottom,
    ...staff.ink
      .filter((ink) => ink.x0 <= x + reach * staff.space && ink.x1 >= x - reach * staff.space)
      .map((ink) => ink.y1),
  )

const highestInk = (staff: PageStaff, from: number, to: number): number =>
  Math.min(
    staff.top,
    ...staff.ink.filter((ink) => ink.x0 <= to && ink.x1 >= from).map((ink) => ink.y0),
  )

/** The row of ticks lies this far below the staff, at least and at most, in spaces. */
const row = { least: 1.7, most: 4.5 } as const

/** The foot of all that is printed of a line. */
export const lowestSign = ({ staves }: Page): number =>
  Math.max(...staves.map(({ bottom, ink }) => Math.max(bottom, ...ink.map(({ y1 }) => y1))))

/** The rows under a staff are level, except that none runs through a note, stem or beam. */
const rowSpot = (note: PageNote, line: number): Spot => {
  const { staff } = note
  const { space, bottom, ink } = staff
  const lowest = Math.max(bottom, ...ink.map(({ y1 }) => y1)) + 0.9 * space
  const level = Math.min(Math.max(bottom + row.least * space, lowest), bottom + row.most * space)
  const free = lowestInk(staff, note.x, 1.1) + 0.9 * space
  return { x: note.x, y: Math.max(level, free) + line * 1.25 * space, space }
}

/** The ticks of a chord stand side by side, the lowest note's first. */
const tickSpot = (page: Page, note: PageNote): Spot => {
  const chord = notesOfOnset(page, note).toSorted((a, b) => a.step - b.step)
  const place = chord.findIndex(({ id }) => id === note.id) - (chord.length - 1) / 2
  const spot = rowSpot(chord[0] ?? note, 0)
  return { ...spot, x: spot.x + place * 0.95 * spot.space }
}

const aboveSpot = (note: PageNote, from: number, to: number): Spot => {
  const { space } = note.staff
  const top = highestInk(note.staff, note.x + from * space, note.x + to * space)
  return { x: note.x, y: top - 0.6 * space, space }
}

/** On the top line, left of the onset with its accidentals. */
const beforeSpot = (page: Page, note: PageNote, distance: number): Spot => {
  const left = Math.min(...notesOfOnset(page, note).map((n) => n.left))
  const { space, top } = note.staff
  return { x: left - distance * space, y: top, space }
}

/** From 1.3 spaces; 100 ms add one and a half, and more than 3.5 would reach the next note. */
const arrowLength = (size: number): number => Math.min(3.5, 1.3 + (Math.abs(size) / 100) * 1.5)

/** Lowest and highest staff step of a five-line staff as seen from one note on it. */
const stepAt = (note: PageNote, y: number): number =>
  Math.round(note.step + (note.y - y) / (note.staff.space / 2))

/** The head or cross of a played key at its true place, with accidental and ledger lines where needed. */
const playedStrokes = (
  page: Page,
  note: PageNote,
  key: Key,
  shape: (spot: Spot) => Stroke[],
  isInstead: boolean,
): Stroke[] => {
  const { step, alter } = spell(key, note.signature)
  const { space, top, bottom } = note.staff
  const read = note.inForce.get(step) ?? alterInSignature(step, note.signature.fifths)
  const y = note.y - (step - note.step) * (space / 2)
  const hasAccidental = read !== alter
  const x = playedX(page, note, y, hasAccidental, isInstead)
  const spot = { x, y, space }
  return [
    ...shape(spot),
    ...(hasAccidental ? accidentalStrokes(accidentalSpot(note.staff, spot), alter) : []),
    ...ledgers(stepAt(note, bottom), stepAt(note, top), step).map((line) =>
      ledgerStroke({ x, y: note.y - (line - note.step) * (space / 2), space }),
    ),
  ]
}

/**
 * Left of the head as in print; where it would touch what is printed there, above it, as editors put
 * the accidentals that they add.
 */
const accidentalSpot = ({ ink }: PageStaff, { x, y, space }: Spot): Spot => {
  const beside = { x: x - 0.95 * space, y, space }
  const above = { x, y: y - 1.45 * space, space }
  const isFree = (spot: Spot): boolean =>
    !ink.some(
      ({ x0, x1, y0, y1 }) =>
        x0 < spot.x + 0.55 * space &&
        x1 > spot.x - 0.4 * space &&
        y0 < spot.y + 0.7 * space &&
        y1 > spot.y - 1.3 * space,
    )
  return isFree(beside) || !isFree(above) ? beside : above
}

/** The steps of the ledger lines for a head at `step` of a staff from `low` to `high`. */
export const ledgers = (low: number, high: number, step: number): number[] => {
  const lines: number[] = []
  for (let line = low - 2; line >= step; line -= 2) lines.push(line)
  for (let line = high + 2; line <= step; line += 2) lines.push(line)
  return lines
}

/**
 * Above or below the ring where there is room; else to the right of it, or to the left; else, where
 * heads stand close, halfway to the next one, so that neither head is covered.
 */
const playedX = (
  page: Page,
  note: PageNote,
  y: number,
  hasAccidental: boolean,
  isInstead: boolean,
): number => {
  const { space } = note.staff
  const aside = note.half + (isInstead ? 1.1 : 1) * space + (hasAccidental ? 0.75 * space : 0)
  const level = [...page.notes.values()].filter(
    (other) => other.staff === note.staff && Math.abs(other.y - y) <= 0.8 * space,
  )
  const gap = (to: number): number => (to - note.x) / 2
  const next = Math.min(...level.map(({ x }) => x).filter((x) => x > note.x + 0.5 * space))
  const before = Math.max(...level.map(({ x }) => x).filter((x) => x < note.x - 0.5 * space))
  const isClear = Math.abs(y - note.y) >= 1.5 * space
  const places = [
    ...(isInstead && isClear ? [note.x] : []),
    note.x + aside,
    ...(isInstead ? [note.left - 1.1 * space] : []),
    note.x + gap(next),
    ...(isInstead ? [note.x + gap(before)] : []),
  ].filter(Number.isFinite)
  const room = (x: number): number => Math.min(...level.map((other) => Math.abs(other.x - x)))
  const roomiest = places.toSorted((a, b) => room(b) - room(a))[0]
  return places.find((x) => room(x) > space) ?? roomiest ?? note.x
}

const orderStrokes = (page: Page, ids: readonly [string, string]): Stroke[] => {
  const notes = ids.flatMap((id) => page.notes.get(id) ?? []).toSorted((a, b) => a.x - b.x)
  const [one, two] = notes
  if (!one || !two || one.staff !== two.staff)
    return one ? hookStrokes(aboveSpot(one, -3, 0.4)) : []
  const { space } = one.staff
  const y = highestInk(one.staff, one.x - space, two.x + space) - 1.7 * space
  return exchangeStrokes({ x: one.x, y, space }, (two.x - one.x) / space)
}

const spreadStrokes = (page: Page, ids: readonly string[]): Stroke[] => {
  const notes = ids.flatMap((id) => page.notes.get(id) ?? [])
  const [first] = notes
  if (!first) return []
  const { space } = first.staff
  const left = Math.min(...notes.flatMap((n) => notesOfOnset(page, n)).map((n) => n.left))
  const top = Math.min(...notes.map((n) => n.y)) - 0.7 * space
  const bottom = Math.max(...notes.map((n) => n.y)) + 0.7 * space
  return rolledStroke({ x: left - 0.75 * space, y: top, space }, (bottom - top) / space)
}

const driftStrokes = (
  page: Page,
  { from, to, faster, under }: Extract<PencilMark, { readonly shape: 'drift' }>,
): Stroke[] => {
  const first = page.notes.get(from)
  if (!first) return []
  const last = page.notes.get(to)
  const { space } = first.staff
  const end = last && last.staff === first.staff ? last.x : first.staff.right - space
  const low = lowestInk(first.staff, (first.x + end) / 2, (end - first.x) / 2 / space)
  const y =
    under === undefined
      ? Math.max(rowSpot(first, 0).y, low + 0.9 * space) + 2.4 * space
      : lowestSign(page) + under * space
  const width = Math.max(3, (end - first.x) / space)
  return slantStrokes({ x: first.x, y, space }, width, faster ? 1 : -1)
}
