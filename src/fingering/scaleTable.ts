import type { Finger, Hand } from '@/music/music'

/** The kinds of runs that have a usual fingering, in the order in which they are tried. */
export const runKinds = [
  'major',
  'harmonicMinor',
  'melodicMinor',
  'naturalMinor',
  'majorTriad',
  'minorTriad',
  'chromatic',
] as const
export type RunKind = (typeof runKinds)[number]

/** Semitones of one octave upward from the tonic. */
export const runSteps: Readonly<Record<RunKind, readonly number[]>> = {
  major: [0, 2, 4, 5, 7, 9, 11],
  harmonicMinor: [0, 2, 3, 5, 7, 8, 11],
  melodicMinor: [0, 2, 3, 5, 7, 9, 11],
  naturalMinor: [0, 2, 3, 5, 7, 8, 10],
  majorTriad: [0, 4, 7],
  minorTriad: [0, 3, 7],
  chromatic: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11],
}

/**
 * Two octaves upward from each tonic, C to B, right hand and left. Major scales and broken chords are
 * those of Beringer & Dunhill, "Manual of Scales, Arpeggios and Broken Chords", 1900 (that of B major
 * is common practice), minor scales common practice. Editions differ in the first and last digits of
 * runs from black keys. Downward is the same backwards.
 */
const twoOctaves: Readonly<
  Record<Exclude<RunKind, 'chromatic'>, readonly (readonly [right: string, left: string])[]>
> = {
  major: [
    ['123123412312345', '543213214321321'],
    ['231234123123412', '321432132143213'],
    ['123123412312345', '543213214321321'],
    ['312341231234123', '321432132143213'],
    ['123123412312345', '543213214321321'],
    ['123412312341234', '543213214321321'],
    ['234123123412312', '432132143213214'],
    ['123123412312345', '543213214321321'],
    ['341231234123123', '321432132143213'],
    ['123123412312345', '543213214321321'],
    ['212312341231234', '321432132143213'],
    ['123123412312345', '432143213214321'],
  ],
  harmonicMinor: [
    ['123123412312345', '543213214321321'],
    ['341231234123123', '321432132143213'],
    ['123123412312345', '543213214321321'],
    ['312341231234123', '214321321432132'],
    ['123123412312345', '543213214321321'],
    ['123412312341234', '543213214321321'],
    ['341231234123123', '432132143213214'],
    ['123123412312345', '543213214321321'],
    ['341231234123123', '321432132143213'],
    ['123123412312345', '543213214321321'],
    ['412312341231234', '213214321321432'],
    ['123123412312345', '432143213214321'],
  ],
  melodicMinor: [
    ['123123412312345', '543213214321321'],
    ['231234123123412', '321432132143213'],
    ['123123412312345', '543213214321321'],
    ['312341231234123', '214321321432132'],
    ['123123412312345', '543213214321321'],
    ['123412312341234', '543213214321321'],
    ['231234123123412', '432132143213214'],
    ['123123412312345', '543213214321321'],
    ['341231234123123', '321432132143213'],
    ['123123412312345', '543213214321321'],
    ['412312341231234', '213214321321432'],
    ['123123412312345', '432143213214321'],
  ],
  naturalMinor: [
    ['123123412312345', '543213214321321'],
    ['341231234123123', '321432132143213'],
    ['123123412312345', '543213214321321'],
    ['312341231234123', '214321321432132'],
    ['123123412312345', '543213214321321'],
    ['123412312341234', '543213214321321'],
    ['341231234123123', '432132143213214'],
    ['123123412312345', '543213214321321'],
    ['341231234123123', '321321432132143'],
    ['123123412312345', '543213214321321'],
    ['412312341231234', '213214321321432'],
    ['123123412312345', '432143213214321'],
  ],
  majorTriad: [
    ['1231235', '5421421'],
    ['2124124', '2142142'],
    ['1231235', '5321321'],
    ['2124124', '2142142'],
    ['1231235', '5321321'],
    ['1231235', '5421421'],
    ['1231235', '5321321'],
    ['1231235', '5421421'],
    ['2124124', '2142142'],
    ['1231235', '5321321'],
    ['2124124', '3213213'],
    ['1231235', '5321321'],
  ],
  minorTriad: [
    ['1231235', '5421421'],
    ['2124124', '2142142'],
    ['1231235', '5421421'],
    ['1231235', '5421421'],
    ['1231235', '5421421'],
    ['1231235', '5421421'],
    ['2124124', '3142142'],
    ['1231235', '5421421'],
    ['2124124', '2142142'],
    ['1231235', '5421421'],
    ['2312312', '3213213'],
    ['1231235', '5421421'],
  ],
}

/**
 * 3 on black keys, the thumb on white ones, 2 on the farther one of two white neighbours.
 * Common practice, no source.
 */
const chromatic: Readonly<Record<Hand, string>> = {
  right: '231312313131',
  left: '131321313132',
}

/** How a run is fingered that goes upward from its tonic. */
export interface RunDigits {
  readonly first: Finger
  /** In each later octave, from the tonic on. */
  readonly inner: readonly Finger[]
  /** On the tonic at the top. */
  readonly last: Finger
}

/** The usual digits of a run by its tonic, C = 0. C major, right hand: 1, 1231234, 5. */
export const runDigits = (kind: RunKind, tonic: number, hand: Hand): RunDigits => {
  const count = runSteps[kind].length
  const digits = kind === 'chromatic' ? fromC(tonic, hand) : fromTable(kind, tonic, hand)
  return {
    first: digitAt(digits, 0),
    inner: Array.from({ length: count }, (_, degree) =>
      digitAt(digits, degree === 0 ? count : degree),
    ),
    last: digitAt(digits, 2 * count),
  }
}

const fromTable = (kind: Exclude<RunKind, 'chromatic'>, tonic: number, hand: Hand): string =>
  twoOctaves[kind][tonic]?.[hand === 'right' ? 0 : 1] ?? ''

/** In a chromatic run each key has its digit, wherever the run begins. */
const fromC = (tonic: number, hand: Hand): string => {
  const octave = chromatic[hand].slice(tonic) + chromatic[hand].slice(0, tonic)
  return octave + octave + octave.slice(0, 1)
}

const digitAt = (digits: string, place: number): Finger => {
  const digit = fingers.find((finger) => `${finger}` === digits[place])
  if (!digit) throw new Error(`no digit at ${place} of “${digits}”`)
  return digit
}

const fingers: readonly Finger[] = [1, 2, 3, 4, 5]
