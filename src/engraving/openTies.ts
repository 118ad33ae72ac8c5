/** A tie that comes in from the line before or goes on to the next one. */
export interface OpenTie {
  /** The id of the head. */
  readonly id: string
  readonly side: 'before' | 'after'
}

/** In the drawing's units, 180 to a staff space. */
const space = 180
const length = 1.9 * space
const gap = 0.2 * space
const height = 0.5 * space
const thickness = 0.17 * space
/** SMuFL: U+E0A2 is the whole notehead, wider than the others. */
const headWidth = { whole: 1.7 * space * 0.72, other: 1.2 * space } as const

/** Draws ties with one head: the engraver leaves them out where the other head is not on its page. */
export const drawOpenTies = (svg: string, ties: readonly OpenTie[]): string =>
  ties.reduce((drawn, tie) => drawOpenTie(drawn, tie), svg)

const drawOpenTie = (svg: string, { id, side }: OpenTie): string => {
  const begin = svg.indexOf(`<g id="${id}" class="note"`)
  if (begin < 0) return svg
  const head = noteHead.exec(svg.slice(begin, begin + 800))
  if (!head) return svg
  const [text, glyph = '', x = '', y = ''] = head
  const at = begin + head.index + text.length
  const width = glyph === 'E0A2' ? headWidth.whole : headWidth.other
  const from = side === 'after' ? Number(x) + width + gap : Number(x) - gap - length
  const [, foot = 0, tip = 0] = stem.exec(svg.slice(at, at + 120)) ?? []
  const way = Number(tip) < Number(foot) ? 1 : -1
  return svg.slice(0, at) + curve(from, Number(y), way) + svg.slice(at)
}

const noteHead =
  /<g class="notehead"><use href="#(E0A.)[^"]*" transform="translate\((-?\d+), (-?\d+)\)[^>]*\/><\/g>/

/** Where the stem of the note begins and ends; a chord has one stem for all, and its ties lie above. */
const stem = /^<g [^>]*class="stem"><path d="M-?\d+ (-?\d+) L-?\d+ (-?\d+)"/

/** A lens, above the head or below it. */
const curve = (from: number, y: number, way: 1 | -1): string => {
  const to = from + length
  const base = y + way * 0.35 * space
  const [left, right] = [from + length / 4, to - length / 4]
  const [outer, inner] = [base + way * height, base + way * (height - thickness)]
  return `<path class="open-tie" stroke-width="9" d="M${from} ${base} C${left} ${outer} ${right} ${outer} ${to} ${base} C${right} ${inner} ${left} ${inner} ${from} ${base}Z"/>`
}
