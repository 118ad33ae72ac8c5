/** Deutsch: 1 -> '1 Takt', 3 -> '3 Takte'. */
export const counted = (n: number, one: string, many: string): string =>
  `${n} ${n === 1 ? one : many}`
