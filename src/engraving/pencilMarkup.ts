import { strokesOf } from './marks'
import { readPage } from './page'
import type { WeighedMark, Weight } from './pencilMark'

/** Against the usual width of a mark. Told apart at the smallest size at which notes are read. */
const pressed: Readonly<Record<Weight, number>> = { light: 0.8, middle: 1.5, heavy: 2.4 }

/**
 * Marks on an engraved line as the text of an SVG group, for lines that come and go by the hundred;
 * one line that stands has a pencil (pencil.ts). Its colours are the page's: `.pencil-flaw`.
 */
export const pencilMarkup = (svg: string, marks: readonly WeighedMark[]): string => {
  const page = readPage(svg)
  const space = page.staves[0]?.space ?? 1
  const drawn = marks.map(({ mark, weight }) => {
    const paths = strokesOf(mark, page).map(({ path, width, dotted }) => {
      const thick = Math.round(width * pressed[weight] * space)
      // Dots of the usual pencil touch when it is pressed: they stand farther apart.
      const dots = dotted ? ` stroke-dasharray="0 ${Math.round(0.3 * space + thick)}"` : ''
      return `<path d="${path}" stroke-width="${thick}"${dots}/>`
    })
    return `<g class="pencil-flaw" data-shape="${mark.shape}" data-weight="${weight}">${paths.join('')}</g>`
  })
  return `<g class="pencil" fill="none" stroke-linecap="round" stroke-linejoin="round">${drawn.join('')}</g>`
}
