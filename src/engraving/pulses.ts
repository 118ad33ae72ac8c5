import type { Metre } from './metre'

/** The unit inside which one division holds. */
export interface Pulse {
  readonly start: number
  readonly length: number
  /** Counted from the bar line; even ones may open a group of two. */
  readonly index: number
  readonly metre: Metre
}

export interface Grid extends Pulse {
  /** Into how many equal steps the pulse is divided. */
  readonly division: number
}

export const pulsesOf = (metre: Metre): Pulse[] => {
  const pulses: Pulse[] = []
  const first = metre.start - metre.lacking
  for (let at = first; at < metre.end; at += metre.pulse) {
    const start = Math.max(at, metre.start)
    const length = Math.min(at + metre.pulse, metre.end) - start
    const index = Math.round((at - first) / metre.pulse)
    if (length > 0) pulses.push({ start, length, index, metre })
  }
  return pulses
}
