/**
 * Which hand plays which note, where the file does not say it.
 *
 * A score says of each note's hand where the knowledge comes from (`handFrom`): 'file', which stays
 * as it is, or 'inferred', which `inferHands` decides from how the notes lie (splitHands.ts):
 *
 *   notes -> onsets.ts -> ways.ts, all ways to share each onset -> followHands.ts, the likeliest row of
 *   ways, by what handMemory.ts knows of each hand -> habits.ts, the same again with what the piece
 *   does as a rule. weights.ts says how much each thing counts, and how well all of it does.
 *
 * Within one onset hands never cross: the left one has the lower notes. One after another they may.
 *
 * Example: a file of one track, C3+C5 then E3+D5 -> the lower notes left, the upper ones right.
 */
import type { Score } from '@/music/music'
import { splitHands } from './splitHands'

/** The same score with its best guess where the file is silent; note ids and the piece's id stay. */
export const inferHands = (score: Score): Score => {
  const open = score.notes.filter((note) => note.handFrom === 'inferred')
  if (open.length === 0) return score
  const hands = splitHands(open, score.ticksPerQuarter)
  let next = 0
  const notes = score.notes.map((note) => {
    if (note.handFrom !== 'inferred') return note
    const hand = hands[next++] ?? note.hand
    return hand === note.hand ? note : { ...note, hand }
  })
  return { ...score, notes }
}
