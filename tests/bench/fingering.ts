import { fingerHand } from '@/fingering/fingering'
import type { HandNote } from '@/fingering/grips'
import { noteCosts, positionCosts, stepCosts, sumOf, type Touch } from '@/fingering/rules'
import { spansOf } from '@/fingering/spans'
import type { Hand } from '@/music/music'
import { isBlackKey } from '@/music/pitch'
import { key, noteId, tick } from '@/music/units'
import type { Measure } from './measure'

/** A long piece fingered, how the work grows with its length, and a search that tries all fingers. */
export const benchFingering = (): readonly Measure[] => {
  const piece = least(() => fingerPiece(5000), 7)
  const quarter = least(() => fingerPiece(1250), 7)
  const ours = least(() => fingerLine(fragment), 50)
  const naive = least(() => tryAll(fragment), 3)
  return [
    { name: 'fingering: 5,000 notes, both hands', value: piece, unit: 'ms', budget: 1000 },
    {
      name: 'fingering: four times the notes',
      value: piece / quarter,
      unit: 'times the work',
      budget: 8,
    },
    { name: 'fingering: seven notes', value: ours, unit: 'ms' },
    { name: 'trying all fingers of seven notes', value: naive, unit: 'ms' },
    {
      name: 'fingering against trying all',
      value: ours / naive,
      unit: 'times',
      budget: 1 / 20,
    },
  ]
}

/** Fragment D of Parncutt et al. 1997. */
const fragment = [61, 65, 63, 66, 65, 68, 66]

const least = (work: () => number, runs: number): number => {
  let best = Infinity
  for (let run = 0; run < runs; run++) {
    const before = performance.now()
    if (!(work() > 0)) throw new Error('a fingering costs something')
    best = Math.min(best, performance.now() - before)
  }
  return best
}

/** Half of the notes in each hand: runs, broken chords, thirds and leaps by rule. */
const fingerPiece = (count: number): number => {
  const cost = (hand: Hand, middle: number): number =>
    fingerHand(writePart(count / 2, hand, middle), { hand, ticksPerQuarter: 480 }).best?.cost ?? NaN
  return cost('right', 67) + cost('left', 43)
}

const writePart = (count: number, hand: Hand, middle: number): HandNote[] => {
  const notes: HandNote[] = []
  for (let i = 0; notes.length < count; i++) {
    const place = middle + (((i * 7) % 17) - 8) * (Math.floor(i / 64) % 2) + ((i * (i % 5)) % 11)
    const keys = i % 6 === 0 ? [place, place + 4] : [place]
    for (const k of keys)
      notes.push({
        id: noteId(`n${i}k${k}`),
        key: key(k),
        start: tick(i * 120),
        length: tick(120),
        hand,
      })
  }
  return notes.slice(0, count)
}

const fingerLine = (keys: readonly number[]): number => {
  const notes = keys.map((k, i): HandNote => ({
    id: noteId(`n${i}k${k}`),
    key: key(k),
    start: tick(i * 480),
    length: tick(480),
    hand: 'right',
  }))
  return fingerHand(notes, { hand: 'right', ticksPerQuarter: 480 }).best?.cost ?? NaN
}

/** The least cost of all rows of fingers, each weighed by the rules from its beginning. */
const tryAll = (keys: readonly number[]): number => {
  const spans = spansOf('medium')
  const fingers = [1, 2, 3, 4, 5] as const
  let best = Infinity
  const go = (touches: readonly Touch[]): void => {
    const next = keys[touches.length]
    if (next !== undefined) {
      for (const finger of fingers)
        go([...touches, { finger, place: next, black: isBlackKey(key(next)) }])
      return
    }
    let cost = 0
    for (const [i, three] of touches.entries()) {
      const [one, two] = [touches[i - 2], touches[i - 1]]
      cost += sumOf(noteCosts(three))
      if (two) cost += sumOf(stepCosts(two, three, spans))
      if (one && two) cost += sumOf(positionCosts(one, two, three, spans))
    }
    best = Math.min(best, cost)
  }
  go([])
  return best
}
