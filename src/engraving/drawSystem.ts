import type { VerovioToolkit } from 'verovio/esm'
import { finish, load, measure, options, spaceAtFullScale, type Box, type Drawing } from './draw'
import { writeMei } from './mei'
import { lowestSign } from './marks'
import { readPage } from './page'
import { roomUnder, type WeighedMark } from './pencilMark'
import { pencilMarkup } from './pencilMarkup'
import type { Stretch } from './stretch'

/** A system of the whole piece: as wide as the page, at a size that all systems share. */
export interface SystemBox extends Box {
  /** The staff space in CSS pixels. */
  readonly space: number
}

/** Music is set so much closer than it would like to stand; what needs more room becomes smaller. */
const closest = 1.2

/** Two rows of marks stand under the line, clear of its lowest sign; CSS pixels. */
const roomForMarks = 22

/** The last line of a piece is not pulled apart when it fills less than this of the page. */
const leastFull = 0.55

/** Engraves bars as one system of the given width; what is a little too long for it is set closer. */
export const drawSystem = (
  toolkit: VerovioToolkit,
  stretch: Stretch,
  { width, space }: SystemBox,
  marks: readonly WeighedMark[] = [],
): Drawing => {
  const written = writeMei(stretch)
  // Only a pencil needs to know more of the notes than where they stand.
  const mei = marks.length > 0 ? written : { ...written, notes: new Map() }
  const scale = space / spaceAtFullScale
  const under = roomUnder(marks.map(({ mark }) => mark)) * spaceAtFullScale
  const layout = {
    ...options(stretch.hands.length > 1),
    // The brace stands left of the staves.
    pageMarginLeft: 45,
    pageMarginTop: 20,
    pageMarginBottom: Math.round(Math.max(roomForMarks / scale, under)),
    adjustPageWidth: false,
    pageWidth: Math.max(100, Math.floor(width / scale)),
    pageHeight: 60_000,
    minLastJustification: stretch.system?.isLast ? leastFull : 0,
  }
  toolkit.setOptions({ ...layout, breaks: 'auto' })
  load(toolkit, mei)
  const drawing = finish(toolkit, mei, scale)
  if (drawing.svg.split('class="system"').length <= 2) return marked(drawing, marks)
  // Too much for one line: closer together rather than a bar alone. Without any encoded break the
  // engraver would break as it likes again.
  const oneLine = { ...mei, mei: mei.mei.replace('<section>', '<section><sb/>') }
  const wanted = measure(toolkit, mei, layout).width * scale
  const smaller = scale * Math.min(1, (closest * width) / wanted)
  const pageWidth = Math.max(100, Math.floor(width / smaller))
  toolkit.setOptions({ ...layout, pageWidth, breaks: 'encoded' })
  load(toolkit, oneLine)
  return marked(finish(toolkit, mei, smaller), marks)
}

const marked = (drawing: Drawing, marks: readonly WeighedMark[]): Drawing => {
  if (marks.length === 0) return withoutIds(drawing)
  const page = readPage(drawing.svg)
  const lowest = (lowestSign(page) + page.above) / page.height
  return { ...withoutIds(drawing), pencil: pencilMarkup(page, marks), lowest }
}

/**
 * Many lines stand on one page, perhaps beside a larger drawing of the same notes: no note and no sign
 * may have the same id twice. The shapes of the signs (E050-…, by their place in SMuFL) keep theirs:
 * they are the same in all drawings.
 */
const withoutIds = (drawing: Drawing): Drawing => ({
  ...drawing,
  svg: drawing.svg
    .replace(/<g id="([^"]+)" class="note"/g, '<g data-note="$1" class="note"')
    .replace(/<g id="(?!E[0-9A-F]{3}-)[^"]*"/g, '<g'),
})
