/** A stream of random numbers from a seed: the same seed, the same playing. */
export interface Random {
  /** Evenly from 0 up to, not including, 1. */
  readonly uniform: () => number
  /** Normally distributed around 0 with standard deviation 1, cut at ±2 so that no outlier is a slip. */
  readonly normal: () => number
  /** One of the list. */
  readonly pick: <T>(list: readonly [T, ...T[]]) => T
}

/**
 * Mulberry32 (Tommy Ettinger, 2017, public domain): a 32-bit counter through two rounds of mixing.
 * Normal numbers by the Box-Muller transform (1958).
 */
export const createRandom = (seed: number): Random => {
  let counter = seed >>> 0
  const uniform = (): number => {
    counter = (counter + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(counter ^ (counter >>> 15), counter | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
  const normal = (): number => {
    const far = Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
    return Math.abs(far) > 2 ? normal() : far
  }
  return {
    uniform,
    normal,
    pick: ([first, ...rest]) =>
      [first, ...rest][Math.floor(uniform() * (rest.length + 1))] ?? first,
  }
}
