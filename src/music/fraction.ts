/** The greatest common divisor, by Euclid; a loop, since every note of a piece asks for it. */
const divisor = (a: number, b: number): number => {
  let greater = a
  let lesser = b
  while (lesser !== 0) {
    const rest = greater % lesser
    greater = lesser
    lesser = rest
  }
  return greater
}

/** `ticks` of `ticksPerQuarter` as a reduced fraction of quarter notes: (720, 480) -> '3_2', (960, 480) -> '2'. */
export const formatFraction = (ticks: number, ticksPerQuarter: number): string => {
  const d = divisor(Math.abs(ticks), ticksPerQuarter)
  return ticksPerQuarter === d ? `${ticks / d}` : `${ticks / d}_${ticksPerQuarter / d}`
}

/** The inverse: ('3_2', 480) -> 720; `undefined` when it is no fraction or falls between two ticks. */
export const parseFraction = (text: string, ticksPerQuarter: number): number | undefined => {
  const [, numerator, denominator] = /^(\d+)(?:_([1-9]\d*))?$/.exec(text) ?? []
  if (numerator === undefined) return undefined
  const ticks = (Number(numerator) * ticksPerQuarter) / Number(denominator ?? 1)
  return Number.isSafeInteger(ticks) ? ticks : undefined
}
