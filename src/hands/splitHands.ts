import type { Hand } from '@/music/music'
import type { NoteId } from '@/music/units'
import { followHands } from './followHands'
import { weighHabits } from './habits'
import { groupOnsets, type Onsets, type OpenNote } from './onsets'
import { waysToShare } from './ways'

/**
 * Shares notes, sorted by start and key, between the hands: of each onset the lower ones for the left
 * hand, the others for the right. First by the notes alone, then once more with the piece's habits.
 */
export const splitHands = (
  notes: readonly OpenNote[],
  ticksPerQuarter: number,
): ReadonlyMap<NoteId, Hand> => {
  const onsets = groupOnsets(notes, ticksPerQuarter)
  const ways = waysToShare(onsets)
  const middle = middleOf(onsets)
  const first = followHands(onsets, ways, middle, { paths: 2, giveUp: 1 })
  const weight = weighHabits(onsets, ways, first)
  const taken = followHands(onsets, { ...ways, weight }, middle, { paths: 4, giveUp: 1.5 })

  const hands = new Map<NoteId, Hand>()
  let onset = 0
  for (const [note, id] of onsets.ids.entries()) {
    if (note === (onsets.first[onset + 1] ?? 0)) onset++
    const way = taken[onset] ?? 0
    const isLeft =
      way < 0
        ? (onsets.keys[note] ?? 0) < middle
        : note < (onsets.first[onset] ?? 0) + (ways.lower[way] ?? 0)
    hands.set(id, isLeft ? 'left' : 'right')
  }
  return hands
}

/**
 * The key that divides the piece: the mean; but about middle C for a line that one hand could play,
 * within two octaves and without a chord beyond an octave.
 */
const middleOf = ({ count, first, keys }: Onsets): number => {
  let chord = 0
  for (let i = 0; i < count; i++)
    chord = Math.max(chord, (keys[(first[i + 1] ?? 0) - 1] ?? 0) - (keys[first[i] ?? 0] ?? 0))
  let sum = 0
  let lowest = Infinity
  let highest = -Infinity
  for (const key of keys) {
    sum += key
    lowest = Math.min(lowest, key)
    highest = Math.max(highest, key)
  }
  return highest - lowest < lineRange && chord <= octave ? aboveMiddleC : sum / keys.length
}

const octave = 12
const lineRange = 24
const aboveMiddleC = 62
