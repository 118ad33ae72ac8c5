import { hands, type Finger, type Hand, type Score } from '@/music/music'
import type { Tick } from '@/music/units'
import type { PositionChanges } from './lane'

/**
 * Where each hand moves to a new position, by the fingers that stand with the notes: where the thumb
 * passes under or a finger over it, or one finger goes on to another key. C4 1, D4 2, E4 3, F4 1 of the
 * right hand -> at the F. Chords and notes without fingers say nothing. Common practice, no source.
 */
export const positionChangesOf = (score: Score): PositionChanges =>
  Object.fromEntries(hands.map((hand) => [hand, changesOf(score, hand)]))

const changesOf = ({ notes }: Score, hand: Hand): readonly Tick[] => {
  const own = notes.filter((note) => note.hand === hand && !note.grace)
  const isAlone = (i: number): boolean =>
    own[i]?.start !== own[i - 1]?.start && own[i]?.start !== own[i + 1]?.start
  return own.flatMap((note, i) => {
    const before = own[i - 1]
    const from = before?.fingers?.at(-1)
    const to = note.fingers?.[0]
    if (!before || from === undefined || to === undefined) return []
    if (!isAlone(i) || !isAlone(i - 1)) return []
    return isMove(note.key - before.key, from, to, hand) ? [note.start] : []
  })
}

/** Within a position the fingers follow the keys: upwards the right hand's numbers rise, the left hand's fall. */
const isMove = (upwards: number, from: Finger, to: Finger, hand: Hand): boolean => {
  const along = (to - from) * (hand === 'right' ? 1 : -1)
  return upwards !== 0 && along * upwards <= 0
}
