/** One figure of a benchmark. It fails where it exceeds its budget. */
export interface Measure {
  readonly name: string
  readonly value: number
  readonly unit: string
  readonly budget?: number
}

/** The median time of one run in milliseconds; the first runs, before the code is compiled, don't count. */
export const timeOf = (work: () => unknown, runs: number): number => {
  for (let i = 0; i < 3; i++) work()
  const times = Array.from({ length: runs }, () => {
    const before = performance.now()
    work()
    return performance.now() - before
  })
  return median(times)
}

export const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN
