import type { Hand } from '@/music/music'
import { followHands } from './followHands'
import { weighHabits } from './habits'
import { groupOnsets, type Onsets, type OpenNote } from './onsets'
import { waysToShare } from './ways'

/**
 * The hand of each note, of notes sorted by start and key: of each onset the lower ones for the left,
 * the others for the right. First by the notes alone, then once more with the piece's habits.
 */
export const splitHands = (
  notes: readonly OpenNote[],
  ticksPerQuarter: number,
): readonly Hand[] => {
  const onsets = groupOnsets(notes, ticksPerQuarter)
  const ways = waysToShare(onsets)
  const middle = middleOf(onsets)
  const first = followHands(onsets, ways, middle, { paths: 2, giveUp: 1 })
  const weight = weighHabits(onsets, ways, first)
  const taken = followHands(onsets, { ...ways, weight }, middle, { paths: 4, giveUp: 1.5 })

  const hands: Hand[] = notes.map(() => 'right')
  for (let onset = 0; onset < onsets.count; onset++) {
    const from = onsets.first[onset] ?? 0
    const to = onsets.first[onset + 1] ?? 0
    const way = taken[onset] ?? 0
    for (let note = from; note < to; note++) {
      const isLeft =
        way < 0 ? (onsets.keys[note] ?? 0) < middle : note < from + (ways.lower[way] ?? 0)
      if (isLeft) hands[onsets.numbers[note] ?? 0] = 'left'
    }
  }
  return hands
}

/**
 * The key that divides the piece: the mean; but about middle C for a line that one hand could play,
 * within two octaves and without a chord beyond an octave.
 */
const middleOf = ({ count, first, keys }: Onsets): number => {
  let chord = 0
  let sum = 0
  let lowest = Infinity
  let highest = -Infinity
  for (let onset = 0; onset < count; onset++) {
    const from = first[onset] ?? 0
    const to = first[onset + 1] ?? 0
    const bottom = keys[from] ?? 0
    const top = keys[to - 1] ?? 0
    chord = Math.max(chord, top - bottom)
    lowest = Math.min(lowest, bottom)
    highest = Math.max(highest, top)
    for (let note = from; note < to; note++) sum += keys[note] ?? 0
  }
  return highest - lowest < lineRange && chord <= octave ? aboveMiddleC : sum / keys.length
}

const octave = 12
const lineRange = 24
const aboveMiddleC = 62
