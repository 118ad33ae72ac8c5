import { strokesOf } from './marks'
import type { Page } from './page'
import { dotGap, pressed, type WeighedMark } from './pencilMark'

/**
 * Marks on an engraved line as the text of an SVG group, for lines that come and go by the hundred;
 * one line that stands has a pencil (pencil.ts). Its colours are the page's: `.pencil-flaw`.
 */
export const pencilMarkup = (page: Page, marks: readonly WeighedMark[]): string => {
  const space = page.staves[0]?.space ?? 1
  const drawn = marks.map(({ mark, weight }) => {
    const paths = strokesOf(mark, page).map(({ path, width, dotted }) => {
      const thick = width * pressed[weight]
      const dots = dotted ? ` stroke-dasharray="0 ${Math.round(dotGap(thick) * space)}"` : ''
      return `<path d="${path}" stroke-width="${Math.round(thick * space)}"${dots}/>`
    })
    return `<g class="pencil-flaw" data-shape="${mark.shape}" data-weight="${weight}">${paths.join('')}</g>`
  })
  return `<g class="pencil" fill="none" stroke-linecap="round" stroke-linejoin="round">${drawn.join('')}</g>`
}
