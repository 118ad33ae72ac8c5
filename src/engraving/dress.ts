import type { NotePlace } from './mei'

interface Size {
  readonly width: number
  readonly height: number
}

/** In the drawing's units, 180 to a staff space: bar numbers, the only text, stay smaller than the notes. */
const barNumberSize = '260px'

/**
 * Makes the engraver's SVG a part of our page: ink is the page's own colour, no style sheet inside
 * (a strict content policy may refuse it), no description, and each note carries what a pencil needs.
 */
export const dressSvg = (
  svg: string,
  { width, height }: Size,
  notes: ReadonlyMap<string, NotePlace>,
): string =>
  svg
    .replace(/<\?xml[^>]*>/, '')
    .replace(/<desc>[^<]*<\/desc>/, '')
    .replace(/<style[^>]*>[\s\S]*?<\/style>/, '')
    .replace(/color="black" font-family="[^"]*"/, 'fill="currentColor" stroke="currentColor"')
    .replaceAll('<text ', '<text stroke="none" ')
    .replaceAll('font-size="324px"', `font-size="${barNumberSize}"`)
    .replace(
      /<svg /,
      `<svg width="${width}" height="${height}" aria-hidden="true" focusable="false" `,
    )
    .replace(/<g id="([^"]+)" class="note"/g, (whole, id: string) => {
      const place = notes.get(id)
      return place ? `${whole}${attributes(place)}` : whole
    })

const attributes = ({ at, step, fifths, mode, inForce }: NotePlace): string => {
  const accidentals = inForce.map(([line, alter]) => `${line}:${alter}`).join(' ')
  return ` data-at="${at}" data-step="${step}" data-key="${fifths} ${mode}" data-accidentals="${accidentals}"`
}
