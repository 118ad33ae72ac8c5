/**
 * The same picture in few elements: a page of music has thousands of signs, and a browser that must
 * lay out each of them does not scroll evenly. All glyphs of a drawing become one path, all straight
 * lines of one width another; groups that only name things go. What is `added` is drawn last, as it is.
 */
export const flatten = (svg: string, added = ''): string => {
  const glyphs = glyphsOf(svg)
  const outlines: string[] = []
  const lines = new Map<string, string[]>()
  const body = svg
    .replace(/<defs>[\s\S]*?<\/defs>/, '')
    .replace(glyphUse, (whole, name: string, x: string, y: string, sx: string, sy: string) => {
      const outline = glyphs.get(name)
      if (!outline) return whole
      outlines.push(placed(outline, Number(x), Number(y), Number(sx), -Number(sy)))
      return ''
    })
    .replace(straightLine, (_, d: string, width: string) => {
      lines.set(width, [...(lines.get(width) ?? []), d])
      return ''
    })
  const merged = [
    ...[...lines].map(([width, all]) => `<path d="${all.join('')}" stroke-width="${width}"/>`),
    `<path d="${outlines.join('')}" stroke="none"/>`,
  ].join('')
  // A glyph of another make stays as it is, with all definitions.
  if (body.includes('<use ')) return putLast(svg, added)
  return putLast(withoutNames(body), merged + added)
}

const putLast = (svg: string, what: string): string => {
  const end = svg.lastIndexOf('</g>')
  return svg.slice(0, end) + what + svg.slice(end)
}

type Segment = readonly [command: string, ...numbers: number[]]

/** The outlines of the glyphs by their names, with y upward, as fonts have it. */
const glyphsOf = (svg: string): ReadonlyMap<string, readonly Segment[]> => {
  const glyphs = new Map<string, readonly Segment[]>()
  for (const [, name = '', d = ''] of svg.matchAll(glyphDefinition)) {
    const segments = [...d.matchAll(/([a-z])([^a-z]*)/gi)].map(
      ([, command = '', numbers = '']): Segment => [
        command,
        ...(numbers.match(/-?\d*\.?\d+/g) ?? []).map(Number),
      ],
    )
    if (segments.every(([command]) => 'mlcshvz'.includes(command.toLowerCase())))
      glyphs.set(name, segments)
  }
  return glyphs
}

const glyphDefinition = /<g id="([^"]+)"><path transform="scale\(1,-1\)" d="([^"]*)"\/><\/g>/g
const glyphUse =
  /<use href="#([^"]+)" transform="translate\((-?[\d.]+), (-?[\d.]+)\) scale\((-?[\d.]+), (-?[\d.]+)\)"\s*\/>/g
const straightLine =
  /<path d="(M-?[\d.]+ -?[\d.]+ L-?[\d.]+ -?[\d.]+)" stroke-width="([\d.]+)"\s*\/>/g

/** Small letters of a path go on from where it is, and are scaled alone. */
const placed = (
  segments: readonly Segment[],
  x: number,
  y: number,
  sx: number,
  sy: number,
): string =>
  segments
    .map(([command, ...numbers]) => {
      const isRelative = command === command.toLowerCase()
      const across = (n: number): number => round(n * sx + (isRelative ? 0 : x))
      const down = (n: number): number => round(n * sy + (isRelative ? 0 : y))
      const kind = command.toLowerCase()
      const moved = numbers.map((n, i) =>
        kind === 'v' || (kind !== 'h' && i % 2 === 1) ? down(n) : across(n),
      )
      return command + moved.join(' ')
    })
    .join('')

const round = (n: number): number => Math.round(n * 10) / 10

/** Groups that carry no transform and no look of their own only name what is in them. */
const withoutNames = (svg: string): string => {
  const kept: boolean[] = []
  return svg
    .replace(/ id="[^"]*"/g, '')
    .replace(/<g\b[^>]*?(\/?)>|<\/g>/g, (tag, selfClosing: string | undefined) => {
      if (tag === '</g>') return kept.pop() === false ? '' : tag
      const isPlain = !/\s(transform|fill|stroke|opacity|style|visibility|stroke-\w+)=/.test(tag)
      if (selfClosing) return ''
      kept.push(!isPlain)
      return isPlain ? '' : tag
    })
}
