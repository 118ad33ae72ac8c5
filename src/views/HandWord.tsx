import type { Hand, Note } from '@/music/music'
import { nameKey, type Signature } from '@/music/spelling'
import type { Change, CorrectedPiece } from '@/app/handCorrections'
import { pieceText } from '@/text/piece'
import { handWords } from './words'

/** Where the file does not tell the hands: the two keys that do, and the one that takes it back. */
export const HandWord = ({
  about,
  canUndo,
  onSay,
  onUndo,
}: {
  /** Which notes it would be about, as 'bar 3' or 'D4'. */
  readonly about: string
  readonly canUndo: boolean
  readonly onSay: (hand: Hand) => void
  readonly onUndo: () => void
}) => (
  <div className="row hand-word" role="group" aria-label={pieceText.hands.label}>
    <span className="soft">{pieceText.hands.inferred(about)}</span>
    <button type="button" onClick={() => onSay('left')}>
      {handWords.left} <kbd>L</kbd>
    </button>
    <button type="button" onClick={() => onSay('right')}>
      {handWords.right} <kbd>R</kbd>
    </button>
    <button type="button" disabled={!canUndo} onClick={onUndo}>
      {pieceText.hands.undo} <kbd>⌫</kbd>
    </button>
  </div>
)

/** What has been done, for the status line. */
export const describeChange = (change: Change | undefined, hand: Hand): string => {
  if (!change) return pieceText.hands.ofFile
  const done = pieceText.hands.changed(change.notes, handWords[hand])
  return change.problem === undefined ? done : `${done} ${change.problem}`
}

/** What became of the corrections of an older edition: 'Of your 3 corrections of the hands, 2 hold here; …' */
export const describeCarried = ({
  problem,
  ...carried
}: NonNullable<CorrectedPiece['carriedHands']>): string => {
  const sentence = pieceText.hands.carried(carried)
  return problem === undefined ? sentence : `${sentence} ${problem}`
}

/** 'D4, right hand, inferred' */
export const describeNote = (
  { key, hand, handFrom, fingers = [] }: Note,
  signature: Signature,
): string => {
  const digits = fingers.length > 0 ? pieceText.note.fingers(fingers.map(String)) : ''
  return `${nameKey(key, signature)}, ${handWords[hand]}${pieceText.note.from[handFrom]}${digits}`
}
