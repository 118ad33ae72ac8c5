/** One figure of a benchmark. It fails where it exceeds its budget. */
export interface Measure {
  readonly name: string
  readonly value: number
  readonly unit: string
  readonly budget?: number
}
