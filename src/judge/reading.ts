import type { Key, Ms } from '@/music/units'
import { isWritten, lackCost, type Ground, type GroundOnset } from './ground'
import { breakOffAtSlipCost, breakOffCost, noTryCost, settle, slipCost } from './thresholds'

/** A key struck. `number` counts all strikes of the drill. */
export interface Strike {
  readonly number: number
  readonly key: Key
  readonly at: Ms
  readonly velocity: number
}

/**
 * How a reading takes one strike: a written note; a foreign key at an onset; the same key or chord
 * again; an allowed auxiliary note; a key that belongs to no repetition.
 */
export type Act = 'note' | 'foreign' | 'echo' | 'auxiliary' | 'stray'

/** The last decision of a reading, linked to the one before; a repetition's first step has none before. */
export interface Step {
  readonly before: Step | undefined
  readonly strike: Strike
  readonly act: Act
  readonly onset: number
  /** Index of the note in its onset where `act` is 'note', else -1. */
  readonly note: number
  /** Came after an onset that is written later. */
  readonly late: boolean
  /** The highest onset touched after this step. */
  readonly top: number
  /** Went back inside the chunk with this strike. */
  readonly back: boolean
}

/** An onset whose notes may still come. */
export interface Open {
  /** One bit for each note struck. */
  readonly mask: number
  readonly struck: number
  /** Foreign keys at this onset, not counting echoes. */
  readonly foreign: number
  /** First strike; undefined while untouched. */
  readonly at: Ms | undefined
  /** It came after an onset written later, and that slip is counted. */
  readonly late: boolean
  /** What its odd timing has cost so far: a chord torn apart is odd once, not once a note. */
  readonly odd: number
}

/** Where a repetition ends and what follows begins; not yet sure while other readings differ. */
export interface Cut {
  /** The first strike after the cut. */
  readonly strike: number
  /** A repetition begins with that strike, or it is a stray. */
  readonly begins: boolean
  /** What came before the cut, and the state it ended in. */
  readonly past: Reading
}

/** One way of reading all that was played so far. The cheapest is believed. */
export interface Reading {
  readonly cost: number
  /** The highest onset touched; -1 between repetitions. */
  readonly top: number
  /** Onsets below were left by going back: their notes are not waited for. */
  readonly low: number
  /** The onset at `top` first, then those before it. */
  readonly open: readonly Open[]
  /** Milliseconds a tick; 0 while unknown. */
  readonly pace: number
  /** When the last echo was struck. */
  readonly echoAt: Ms | undefined
  /** Between repetitions: until then a key is rather an extra one of the repetition that ended. */
  readonly calmAt: Ms | undefined
  readonly step: Step | undefined
  readonly cuts: readonly Cut[]
}

export const untouched: Open = {
  mask: 0,
  struck: 0,
  foreign: 0,
  at: undefined,
  late: false,
  odd: 0,
}

/** An onset begun with one of its notes, or with a foreign key. */
export const begunWith = (note: number, at: Ms): Open => ({
  ...untouched,
  at,
  mask: 1 << note,
  struck: 1,
})
export const begunWrong = (at: Ms): Open => ({ ...untouched, at, foreign: 1 })

export const idleReading = (pace: number): Reading => ({
  cost: 0,
  top: -1,
  low: 0,
  open: [],
  pace,
  echoAt: undefined,
  calmAt: undefined,
  step: undefined,
  cuts: [],
})

export const isIdle = (reading: Reading): boolean => reading.top < 0

export const onsetAt = (ground: Ground, index: number): GroundOnset => {
  const onset = ground.onsets[index]
  if (!onset) throw new Error(`no onset ${index}`)
  return onset
}

/**
 * What an onset costs as it stands. A foreign key and a lacking note of one onset are one slip, a
 * wrong note. Notes of the top onset may still come, so what lacks there is not due yet.
 */
export const dueCost = (onset: GroundOnset, open: Open, isTop: boolean): number => {
  const lacking = onset.keys.length - open.struck
  const paired = Math.min(open.foreign, lacking)
  return lackCost(isTop ? paired : lacking) + slipCost * (open.foreign - paired)
}

/** How many onsets are wholly lacking after the top one. */
export const onsetsLeft = (ground: Ground, reading: Reading): number => ground.last - reading.top

/** What it costs if nothing more comes: lacking notes, or breaking off. */
export const closingCost = (ground: Ground, reading: Reading): number => {
  const open = reading.open[0]
  if (!open) return 0
  const breakOff = endsOnSlip(ground, reading) ? breakOffAtSlipCost : breakOffCost
  if (isBrokenOff(ground, reading)) {
    const isNothing = reading.top === 0 && open.foreign === 0 && reading.echoAt === undefined
    return isNothing ? noTryCost : breakOff
  }
  const onset = onsetAt(ground, reading.top)
  const top = dueCost(onset, open, false) - dueCost(onset, open, true)
  return reading.top === ground.last
    ? top
    : top + Math.min(breakOff, lackCost(onsetAt(ground, ground.last).keys.length))
}

/** A wrong key at the top onset, unless after a pause it was rather another try at the beginning. */
export const endsOnSlip = (ground: Ground, { open: [top], step }: Reading): boolean => {
  if (!top || !step || top.foreign === 0) return false
  const pause = step.before ? step.strike.at - step.before.strike.at : 0
  return pause < settle || !isWritten(onsetAt(ground, 0), step.strike.key)
}

/** Stopped before the end. When no more than the last onset lacks, it is missing instead. */
export const isBrokenOff = (ground: Ground, reading: Reading): boolean =>
  onsetsLeft(ground, reading) > 1

/** Every note of the last onset was struck. */
export const isComplete = (ground: Ground, reading: Reading): boolean =>
  reading.top === ground.last &&
  reading.open[0]?.struck === onsetAt(ground, ground.last).keys.length
