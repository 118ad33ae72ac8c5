import type { Act, Open, Reading, Step, Strike } from './reading'
import { keepWithin } from './thresholds'

/** Where new readings are gathered; dearer ones than `atMost` are not worth making. */
export interface Harvest {
  readonly readings: Reading[]
  atMost: number
}

export const gather = (harvest: Harvest, reading: Reading): void => {
  if (reading.cost > harvest.atMost) return
  harvest.readings.push(reading)
  harvest.atMost = Math.min(harvest.atMost, reading.cost + keepWithin)
}

/** The same repetition, one step on, the top onset as before. */
export const goOn = (
  from: Reading,
  cost: number,
  open: readonly Open[],
  step: Step,
  echoAt: Reading['echoAt'],
): Reading => ({
  cost,
  top: from.top,
  low: from.low,
  open,
  pace: from.pace,
  echoAt,
  calmAt: undefined,
  step,
  cuts: from.cuts,
})

export const stepOf = (
  from: Reading,
  strike: Strike,
  act: Act,
  onset: number,
  note: number,
  late: boolean,
  top: number,
): Step => ({ before: from.step, strike, act, onset, note, late, top, back: false })
