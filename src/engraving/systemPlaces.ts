import { noteId, type NoteId } from '@/music/units'

/** Where things stand in the drawing of one line; shares of its width and height, 0 to 1. */
export interface SystemPlaces {
  readonly bars: readonly { readonly left: number; readonly right: number }[]
  /** The middle of each head. */
  readonly notes: ReadonlyMap<NoteId, { readonly x: number; readonly y: number }>
  /** The first line of the upper staff and the last one of the lower. */
  readonly top: number
  readonly bottom: number
  /** A staff space, as a share of the height. */
  readonly space: number
}

/** Reads the text of a line that `drawSystem` drew; asks the page for no layout. */
export const readSystemPlaces = (svg: string): SystemPlaces => {
  const [, width = 1, height = 1] = numbersOf(viewBox.exec(svg))
  const [, shiftX = 0, shiftY = 0] = numbersOf(margin.exec(svg))
  // The music is drawn at ten times the size of the outer drawing.
  const x = (inside: number): number => (inside + shiftX) / (10 * width)
  const y = (inside: number): number => (inside + shiftY) / (10 * height)
  const bars: { left: number; right: number }[] = []
  let top = 1
  let bottom = 0
  for (const measure of svg.split('class="measure"').slice(1)) {
    const lines = [...measure.matchAll(staffLine)].map(numbersOf)
    const [, left = 0, , right = 0] = lines[0] ?? []
    bars.push({ left: x(left), right: x(right) })
    for (const [, , at = 0] of lines) {
      top = Math.min(top, y(at))
      bottom = Math.max(bottom, y(at))
    }
  }
  const notes = new Map<NoteId, { readonly x: number; readonly y: number }>()
  for (const [, id = '', headX, headY] of svg.matchAll(noteHead))
    notes.set(noteId(id), { x: x(Number(headX) + halfHead), y: y(Number(headY)) })
  return { bars, notes, top, bottom, space: unitsASpace / (10 * height) }
}

const numbersOf = (found: RegExpExecArray | RegExpMatchArray | null): number[] =>
  [...(found ?? [])].map(Number)

const unitsASpace = 180
/** Half the width of a head. */
const halfHead = 110

const viewBox = /viewBox="0 0 ([\d.]+) ([\d.]+)"/
const margin = /class="page-margin" transform="translate\((-?\d+), (-?\d+)\)"/
/** Staff lines are level and go from edge to edge of their bar, first in it. */
const staffLine = /<path d="M(-?\d+) (-?\d+) L(-?\d+) \2" stroke-width="13"/g
const noteHead =
  /data-note="([^"]+)" class="note"[^>]*>(?:<g class="accid">.*?<\/g>)?<g class="notehead"><use href="[^"]*" transform="translate\((-?\d+), (-?\d+)\)/g
