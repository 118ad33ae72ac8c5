import { useMemo } from 'react'
import type { CorrectedPiece, Region } from '@/app/handCorrections'
import type { Hand, Note, Score } from '@/music/music'
import { pieceText } from '@/text/piece'
import { useApp } from './context'
import { describeChange } from './HandWord'
import type { Passage } from './passageKeys'
import { useKeysByName } from './pieceKeys'

/** L, R and Backspace; `undefined` where the file tells every hand. */
export const useHandKeys = (
  piece: CorrectedPiece,
  { from, to }: Passage,
  note: Note | undefined,
  say: (words: string) => void,
) => {
  const app = useApp()
  const { score, corrections } = piece
  const isOpen = useMemo(() => score.notes.some(({ handFrom }) => handFrom !== 'file'), [score])
  const onSay = (hand: Hand): void => {
    const region = note
      ? { from: note.start, to: note.start, keys: [note.key] }
      : regionOf(score, from, to)
    if (!region) return
    void app.hands.add(score.id, region, hand).then((change) => say(describeChange(change, hand)))
  }
  const onUndo = (): void => {
    const last = corrections.at(-1)
    if (last) void app.hands.undo(score.id).then(() => say(pieceText.hands.undone))
  }
  useKeysByName(
    isOpen
      ? {
          l: () => onSay('left'),
          r: () => onSay('right'),
          // On a note it takes the digit away.
          ...(note ? {} : { backspace: onUndo }),
        }
      : {},
  )
  return isOpen ? { canUndo: corrections.length > 0, onSay, onUndo } : undefined
}

/** From the first onset of the bars to the last. */
const regionOf = ({ notes }: Score, from: number, to: number): Region | undefined => {
  const inside = notes.filter(({ barIndex }) => barIndex >= from && barIndex <= to)
  const [first, last] = [inside[0], inside.at(-1)]
  return first && last && { from: first.start, to: last.start }
}
