const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b))

/** `ticks` of `ticksPerQuarter` as a reduced fraction of quarter notes: (720, 480) -> '3_2', (960, 480) -> '2'. */
export const formatFraction = (ticks: number, ticksPerQuarter: number): string => {
  const d = divisor(Math.abs(ticks), ticksPerQuarter)
  return ticksPerQuarter === d ? `${ticks / d}` : `${ticks / d}_${ticksPerQuarter / d}`
}
