import type { Hand, Note } from '@/music/music'
import { nameKey, type Signature } from '@/music/spelling'
import type { Change } from '@/app/handCorrections'
import { handWords, plural } from './words'

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

/** 'D4, right hand, inferred' */
export const describeNote = ({ key, hand, handFrom }: Note, signature: Signature): string =>
  `${nameKey(key, signature)}, ${handWords[hand]}${fromWords[handFrom]}`

const fromWords: Readonly<Record<Note['handFrom'], string>> = {
  file: '',
  inferred: ', inferred',
  person: ', by your word',
}
