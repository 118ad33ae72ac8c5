import type { FingeredPiece } from '@/app/fingerings'
import { fingers } from '@/music/fingers'
import type { Finger, Note } from '@/music/music'
import { useApp } from './context'
import { noteBeside, passageWith, type Passage } from './passageKeys'
import { useKeysByName } from './pieceKeys'

/** What can be done with the note that is picked. */
export interface Digits {
  readonly write: (finger: Finger) => void
  readonly takeAway: () => void
  readonly go: (by: 1 | -1) => void
}

/** The digits 1 to 5 on the picked note, each going on to the next note of the hand; Backspace takes one away. */
export const useDigitKeys = (
  piece: FingeredPiece,
  note: Note | undefined,
  passage: Passage,
  onGo: (to: Note, passage: Passage) => void,
): Digits | undefined => {
  const app = useApp()
  const { score } = piece
  const go = (by: 1 | -1): void => {
    const beside = noteBeside(score, note?.id, by)
    if (beside) onGo(beside, passageWith(score, passage, beside))
  }
  const put = (at: Note, own: readonly Finger[]): void =>
    void app.fingerings.write(piece, new Map([[at.id, own]]))
  const write = (finger: Finger): void => {
    if (!note) return
    put(note, [finger])
    go(1)
  }
  /** As in a text: where nothing stands, what stands before. */
  const takeAway = (): void => {
    const before = noteBeside(score, note?.id, -1)
    const at = note?.fingers?.length ? note : before
    if (at?.fingers?.length) put(at, [])
    if (at && at !== note) go(-1)
  }
  const keys = fingers.map((finger) => [`${finger}`, () => write(finger)] as const)
  useKeysByName(note ? { ...Object.fromEntries(keys), backspace: takeAway } : {})
  return note && { write, takeAway, go }
}
