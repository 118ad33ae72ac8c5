import type { Hand, Note } from '@/music/music'
import { nameKey, type Signature } from '@/music/spelling'
import type { Change, CorrectedPiece } from '@/app/handCorrections'
import { handWords } from './words'
import { plural } from '@/text/plural'

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
  <div className="row hand-word" role="group" aria-label="Correct the hands">
    <span className="soft">
      The file does not tell the hands: they are inferred. If {about} is not right:
    </span>
    <button type="button" onClick={() => onSay('left')}>
      left hand <kbd>L</kbd>
    </button>
    <button type="button" onClick={() => onSay('right')}>
      right hand <kbd>R</kbd>
    </button>
    <button type="button" disabled={!canUndo} onClick={onUndo}>
      undo <kbd>⌫</kbd>
    </button>
  </div>
)

/** What has been done, for the status line. */
export const describeChange = (change: Change | undefined, hand: Hand): string => {
  if (!change) return 'The file says which hand plays there, and that stays.'
  const done = `${plural(change.notes, 'note')}: ${handWords[hand]}.`
  return change.problem === undefined ? done : `${done} ${change.problem}`
}

/** What became of the corrections of an older edition: 'Of your 3 corrections of the hands, 2 hold here; …' */
export const describeCarried = ({
  carried,
  inPart,
  told,
  dropped,
  problem,
}: NonNullable<CorrectedPiece['carriedHands']>): string => {
  const all = carried + told + dropped
  const are = (n: number): string => `${n} ${n === 1 ? 'is' : 'are'}`
  const some = inPart === 0 ? '' : ` (${inPart} for some of the notes only)`
  const parts = [
    `${carried} ${carried === 1 ? 'holds' : 'hold'} here${some}`,
    ...(told > 0 ? [`${are(told)} not needed, since this file tells those hands`] : []),
    ...(dropped > 0 ? [`${are(dropped)} dropped, since the notes are not in this edition`] : []),
  ]
  const sentence = `Of your ${plural(all, 'correction')} of the hands, ${parts.join('; ')}.`
  return problem === undefined ? sentence : `${sentence} ${problem}`
}

/** 'D4, right hand, inferred' */
export const describeNote = (
  { key, hand, handFrom, fingers = [] }: Note,
  signature: Signature,
): string => {
  const digits = fingers.length > 0 ? `, finger ${fingers.join(', then ')}` : ''
  return `${nameKey(key, signature)}, ${handWords[hand]}${fromWords[handFrom]}${digits}`
}

const fromWords: Readonly<Record<Note['handFrom'], string>> = {
  file: '',
  inferred: ', inferred',
  person: ', by your word',
}
