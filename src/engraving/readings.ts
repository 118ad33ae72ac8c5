import { beatQuarters } from '@/music/beat'
import type { Hand, Note, Score } from '@/music/music'
import { signatureAt, spell } from '@/music/spelling'
import type { Tick } from '@/music/units'
import { ledgerLines, readingCost, type Clef } from './clefs'
import { legato } from './lengths'
import { spelledAs } from './spelledAs'

/** How the notes of a staff are read from an onset on. */
export interface Reading {
  readonly at: Tick
  readonly clef: Clef
  /** So many octaves higher than they are written: 1 under 8va, 2 under 15ma, -1 over 8vb. */
  readonly octaves: number
}

export type Readings = Readonly<Record<Hand, readonly Reading[]>>

/**
 * Clefs and octave lines of a whole piece, from its notes alone: few ledger lines, few changes.
 * The first reading of a hand holds from the beginning. Found once for each score.
 */
export const readingsOf = (score: Score): Readings => {
  const known = found.get(score)
  if (known) return known
  const readings = { left: readHand(score, 'left'), right: readHand(score, 'right') }
  found.set(score, readings)
  return readings
}

const found = new WeakMap<Score, Readings>()

// Costs on the scale of ledger lines: three of them cost 6, four 12, five 16 (clefs.ts). One onset
// alone, however high, never pays for an octave line or for a clef and the way back.
const cost = {
  /** Of a new clef: at a bar line, or on a beat inside the bar; nowhere else. */
  clef: { atBar: 14, onBeat: 20 },
  /** While a note of the staff is held, a new clef is read less well. */
  heldClef: 8,
  /** Each onset in the clef of the other hand. */
  foreign: 0.4,
  line: 20,
  /** Under the line even notes without ledger lines ask for a thought: nearly as much as three of them. */
  underLine: 5.5,
  /** The second octave is rarer in print. */
  underSecond: 16,
  /** Other notes of the staff that the line drives far to the other side. */
  drivenOut: 20,
  /** An octave line begins and ends on a beat rather than between two. */
  offBeat: 4,
  /** What is held would stand under the line with one head and before it with the other. */
  heldLine: 60,
} as const

type State = Omit<Reading, 'at'>

/** Lines stand above the treble staff and below the bass staff alone. */
const states: readonly State[] = [
  { clef: 'treble', octaves: 0 },
  { clef: 'treble', octaves: 1 },
  { clef: 'treble', octaves: 2 },
  { clef: 'bass', octaves: 0 },
  { clef: 'bass', octaves: -1 },
]

/** All that a hand strikes at one place. */
interface Onset {
  readonly at: Tick
  readonly low: number
  readonly high: number
  readonly isFirstInBar: boolean
  readonly isOnBeat: boolean
  /** A note from before sounds on, more than legato asks. */
  readonly isHeld: boolean
  /** Silence of a bar or more stands before it: no line spans it. */
  readonly isAfterSilence: boolean
}

interface Way {
  readonly price: number
  /** The state before, by its index. */
  readonly from: number
}

/** The cheapest way through all onsets (dynamic programming). */
const readHand = (score: Score, hand: Hand): readonly Reading[] => {
  const onsets = onsetsOf(score, hand)
  const table: Way[][] = []
  for (const onset of onsets) {
    const before = table.at(-1)
    table.push(states.map((state) => cheapest(state, onset, hand, before)))
  }
  const backward: State[] = []
  let index = least(table.at(-1)?.map(({ price }) => price) ?? [])
  for (const ways of table.toReversed()) {
    backward.push(states[index] ?? homeOf(hand))
    index = ways[index]?.from ?? index
  }
  return changesOf(onsets, backward.toReversed(), hand)
}

const homeOf = (hand: Hand): State => ({
  clef: hand === 'right' ? 'treble' : 'bass',
  octaves: 0,
})

const cheapest = (
  state: State,
  onset: Onset,
  hand: Hand,
  before: readonly Way[] | undefined,
): Way => {
  const here = costHere(state, onset, hand)
  if (!before) return { price: here + openingCost(state, hand), from: 0 }
  const prices = before.map(({ price }, i) => price + changeCost(states[i] ?? state, state, onset))
  const from = least(prices, states.indexOf(state))
  return { price: here + (prices[from] ?? Infinity), from }
}

/** A piece begins in the clef of the hand unless it stays in the other. */
const openingCost = ({ clef, octaves }: State, hand: Hand): number =>
  (clef === homeOf(hand).clef ? 0 : cost.clef.atBar) + (octaves === 0 ? 0 : cost.line)

const costHere = ({ clef, octaves }: State, { low, high }: Onset, hand: Hand): number => {
  const foreign = clef === homeOf(hand).clef ? 0 : cost.foreign
  if (octaves === 0) return readingCost(low, high, clef) + foreign
  const lowered = 7 * octaves
  const inner = octaves > 0 ? low : high
  const needed = ledgerLines(inner - lowered, clef)
  const isDrivenOut = needed > 1 && needed > ledgerLines(inner, clef)
  return (
    readingCost(low - lowered, high - lowered, clef) +
    (isDrivenOut ? cost.drivenOut : 0) +
    (octaves === 2 ? cost.underSecond : cost.underLine) +
    foreign
  )
}

const changeCost = (from: State, to: State, onset: Onset): number => {
  let price = beginsLine(from, to, onset) ? cost.line : 0
  if (from.clef !== to.clef) {
    if (!onset.isFirstInBar && !onset.isOnBeat) return Infinity
    price += onset.isFirstInBar ? cost.clef.atBar : cost.clef.onBeat
    if (onset.isHeld) price += cost.heldClef
  }
  if (from.octaves !== to.octaves) {
    if (!onset.isOnBeat) price += cost.offBeat
    if (onset.isHeld) price += cost.heldLine
  }
  return price
}

const beginsLine = (from: State, to: State, { isAfterSilence }: Onset): boolean =>
  to.octaves !== 0 && (from.octaves !== to.octaves || isAfterSilence)

/** The index of the least price; `preferred` where none is less. */
const least = (prices: readonly number[], preferred = 0): number => {
  const price = Math.min(...prices)
  return prices[preferred] === price ? preferred : Math.max(0, prices.indexOf(price))
}

const changesOf = (
  onsets: readonly Onset[],
  chosen: readonly State[],
  hand: Hand,
): readonly Reading[] =>
  onsets.flatMap((onset, i): readonly Reading[] => {
    const now = chosen[i] ?? homeOf(hand)
    const before = chosen[i - 1]
    const isSame =
      before?.clef === now.clef && before.octaves === now.octaves && !beginsLine(before, now, onset)
    return isSame ? [] : [{ at: onset.at, ...now }]
  })

/** Chords that are played not quite together are one onset: a twelfth of a quarter is 42 ms at 120. */
const together = 1 / 12

const onsetsOf = (score: Score, hand: Hand): readonly Onset[] => {
  const groups: Note[][] = []
  for (const note of score.notes) {
    if (note.hand !== hand || note.grace) continue
    const group = groups.at(-1)
    const first = group?.[0]
    if (first && note.start - first.start < together * score.ticksPerQuarter) group?.push(note)
    else groups.push([note])
  }
  let soundsUntil = 0
  return groups.flatMap((notes, i): readonly Onset[] => {
    const [first] = notes
    if (!first) return []
    const onset = onsetOf(score, [first, ...notes], groups[i - 1]?.[0], soundsUntil)
    soundsUntil = Math.max(soundsUntil, ...notes.map((note) => note.start + note.length))
    return [onset]
  })
}

const onsetOf = (
  score: Score,
  notes: readonly [Note, ...Note[]],
  before: Note | undefined,
  soundsUntil: number,
): Onset => {
  const [{ start, barIndex }] = notes
  const signature = signatureAt(score.keys, start)
  const steps = notes.map((note) => (spelledAs(note) ?? spell(note.key, signature)).step)
  const shortest = Math.min(...notes.map((note) => note.length))
  const barLength = score.bars[barIndex]?.length ?? 4 * score.ticksPerQuarter
  return {
    at: start,
    low: Math.min(...steps),
    high: Math.max(...steps),
    isFirstInBar: before?.barIndex !== barIndex,
    isOnBeat: isOnBeat(score, start, barIndex),
    isHeld: soundsUntil - start > legato * shortest,
    isAfterSilence: start - soundsUntil >= barLength,
  }
}

const isOnBeat = ({ bars, ticksPerQuarter }: Score, start: Tick, barIndex: number): boolean => {
  const bar = bars[barIndex]
  if (!bar) return false
  const full = (bar.time.beats * 4 * ticksPerQuarter) / bar.time.beatType
  const lacking = bar.number === 0 ? Math.max(0, full - bar.length) : 0
  const beats = (start - bar.start + lacking) / (beatQuarters(bar.time) * ticksPerQuarter)
  return Math.abs(beats - Math.round(beats)) * beatQuarters(bar.time) < together
}
