/**
 * The pencil's strokes, in staff spaces around their own middle; y grows downward. Every mark is
 * made of these, so that its shape alone tells what it means.
 */
export interface Stroke {
  /** SVG path data in the drawing's units. */
  readonly path: string
  /** Of a staff space. */
  readonly width: number
  readonly dotted?: true
}

type Point = readonly [number, number]

/** A place on the drawing and the staff space there. */
export interface Spot {
  readonly x: number
  readonly y: number
  readonly space: number
}

const usual = 0.2

const at = ({ x, y, space }: Spot, [dx, dy]: Point): string =>
  `${round(x + dx * space)} ${round(y + dy * space)}`

const round = (n: number): number => Math.round(n * 10) / 10

const line = (spot: Spot, points: readonly Point[], width = usual): Stroke => ({
  path: points.map((point, i) => `${i === 0 ? 'M' : 'L'}${at(spot, point)}`).join(''),
  width,
})

const curve = (
  spot: Spot,
  points: readonly [Point, Point, Point, Point],
  width = usual,
): Stroke => {
  const [from, one, two, to] = points
  return { path: `M${at(spot, from)}C${at(spot, one)} ${at(spot, two)} ${at(spot, to)}`, width }
}

export const tickStroke = (spot: Spot): Stroke[] => [
  {
    path: `M${at(spot, [-0.42, -0.02])}L${at(spot, [-0.1, 0.4])}Q${at(spot, [0.1, -0.2])} ${at(spot, [0.55, -0.6])}`,
    width: 0.24,
  },
]

/** A ring drawn in one turn from the upper right, whose end runs a little past its beginning. */
export const ringStroke = (spot: Spot, half: number): Stroke[] => {
  const rx = half / spot.space + 0.48
  const ry = 0.95
  const on = (degrees: number, size: number): Point => [
    size * rx * Math.cos((degrees * Math.PI) / 180),
    size * ry * Math.sin((degrees * Math.PI) / 180),
  ]
  const radii = `${round(rx * spot.space)} ${round(ry * spot.space)} 0`
  const path = `M${at(spot, on(-60, 1.02))}A${radii} 0 0 ${at(spot, on(-240, 1))}A${radii} 1 0 ${at(spot, on(-440, 1.08))}`
  return [{ path, width: 0.18 }]
}

export const dottedRing = (spot: Spot, half: number): Stroke[] => {
  const rx = round(half + 0.5 * spot.space)
  const ry = round(0.98 * spot.space)
  const path = `M${round(spot.x - rx)} ${spot.y}a${rx} ${ry} 0 1 1 ${2 * rx} 0a${rx} ${ry} 0 1 1 ${-2 * rx} 0`
  return [{ path, width: 0.24, dotted: true }]
}

/** A hollow head, smaller than print. */
export const hollowHead = (spot: Spot): Stroke[] => {
  const radius = `${round(0.5 * spot.space)} ${round(0.34 * spot.space)} -24`
  return [
    {
      path: `M${at(spot, [-0.45, 0.2])}A${radius} 1 1 ${at(spot, [0.45, -0.2])}A${radius} 1 1 ${at(spot, [-0.45, 0.2])}Z`,
      width: 0.17,
    },
  ]
}

export const crossStrokes = (spot: Spot): Stroke[] => [
  line(spot, [
    [-0.42, -0.42],
    [0.42, 0.42],
  ]),
  line(spot, [
    [-0.42, 0.42],
    [0.42, -0.42],
  ]),
]

export const ledgerStroke = (spot: Spot): Stroke =>
  line(
    spot,
    [
      [-0.8, 0],
      [0.8, 0],
    ],
    0.12,
  )

/** 1 sharp, -1 flat, 0 natural; its middle at the spot. */
export const accidentalStrokes = (spot: Spot, alter: number): Stroke[] => {
  if (alter < 0)
    return [
      {
        path: `M${at(spot, [-0.24, -1.2])}L${at(spot, [-0.24, 0.5])}C${at(spot, [0.1, 0.25])} ${at(spot, [0.45, -0.1])} ${at(spot, [0.25, -0.32])}C${at(spot, [0.1, -0.45])} ${at(spot, [-0.15, -0.3])} ${at(spot, [-0.24, -0.1])}`,
        width: 0.15,
      },
    ]
  const slanted = (y: number, half: number): Stroke =>
    line(
      spot,
      [
        [-half, y + 0.1],
        [half, y - 0.1],
      ],
      0.18,
    )
  const upright = (x: number, from: number, to: number): Stroke =>
    line(
      spot,
      [
        [x, from],
        [x, to],
      ],
      0.14,
    )
  return alter > 0
    ? [upright(-0.16, -0.8, 0.9), upright(0.16, -0.9, 0.8), slanted(-0.3, 0.38), slanted(0.3, 0.38)]
    : [
        upright(-0.2, -0.95, 0.45),
        upright(0.2, -0.45, 0.95),
        slanted(-0.32, 0.2),
        slanted(0.32, 0.2),
      ]
}

/** The strokes of a caesura; the spot is on the top line. */
export const caesuraStrokes = (spot: Spot): Stroke[] =>
  [-0.75, 0].map((x) =>
    line(
      spot,
      [
        [x, 0.8],
        [x + 0.6, -1.2],
      ],
      0.22,
    ),
  )

/** `length` in spaces; negative points against the direction of reading. */
export const arrowStrokes = (spot: Spot, length: number): Stroke[] => [
  line(spot, [
    [0, 0],
    [length, 0],
  ]),
  barbs(spot, [0, 0], [length, 0]),
]

/** The head of an arrow that comes from one point and ends in the other. */
const barbs = (spot: Spot, from: Point, tip: Point): Stroke => {
  const angle = Math.atan2(tip[1] - from[1], tip[0] - from[0])
  const barb = (turn: number): Point => [
    tip[0] - 0.62 * Math.cos(angle + turn),
    tip[1] - 0.62 * Math.sin(angle + turn),
  ]
  return line(spot, [barb(0.6), tip, barb(-0.6)])
}

/** The line of a rolled chord, from the spot downward over `height` spaces. */
export const rolledStroke = (spot: Spot, height: number): Stroke[] => {
  const waves = Math.max(2, Math.round(height))
  const half = height / waves / 2
  const turns = Array.from({ length: 2 * waves }, (_, i) => {
    const side = i % 2 === 0 ? 0.32 : -0.32
    return `Q${at(spot, [side, (i + 0.5) * half])} ${at(spot, [0, (i + 1) * half])}`
  })
  return [{ path: `M${at(spot, [0, 0])}${turns.join('')}`, width: 0.22 }]
}

/** A short wave, its middle at the spot. */
export const waveStroke = (spot: Spot): Stroke[] => {
  const turns = Array.from({ length: 4 }, (_, i) => {
    const side = i % 2 === 0 ? -0.55 : 0.55
    return `Q${at(spot, [-1.2 + (i + 0.5) * 0.6, side])} ${at(spot, [-1.2 + (i + 1) * 0.6, 0])}`
  })
  return [{ path: `M${at(spot, [-1.2, 0])}${turns.join('')}`, width: usual }]
}

/** The sign of exchange: two bowed arrows over `width` spaces, the spot between them at the left. */
export const exchangeStrokes = (spot: Spot, width: number): Stroke[] => [
  curve(spot, [
    [0, -0.3],
    [width * 0.25, -1.3],
    [width * 0.75, -1.3],
    [width, -0.3],
  ]),
  barbs(spot, [width * 0.82, -1], [width, -0.3]),
  curve(spot, [
    [width, 0.3],
    [width * 0.75, 1.3],
    [width * 0.25, 1.3],
    [0, 0.3],
  ]),
  barbs(spot, [width * 0.18, 1], [0, 0.3]),
]

/** A hook that rises at the spot and comes down again to its left. */
export const hookStrokes = (spot: Spot): Stroke[] => [
  curve(spot, [
    [0, 0],
    [0.3, -2.4],
    [-2.7, -2.4],
    [-2.6, -0.2],
  ]),
  barbs(spot, [-2.62, -1], [-2.6, -0.2]),
]

/** A long slanted line with a barb at its end: `rise` spaces upward over `width`. */
export const slantStrokes = (spot: Spot, width: number, rise: number): Stroke[] => [
  line(spot, [
    [0, rise / 2],
    [width, -rise / 2],
  ]),
  barbs(spot, [0, rise / 2], [width, -rise / 2]),
]
