import type { PageKey } from './PageKeys'

/** The keys of the page of a piece; each is heard where it does something. */
export const pieceKeyList: readonly PageKey[] = [
  { key: 'arrows', shown: '← →', words: 'in the music: the chosen bars; with Shift their end' },
  { key: 'picks', shown: '↑ ↓', words: 'in the music: pick a note; then ← → its neighbours' },
  { key: 'digits', shown: '1 – 5', words: 'the finger of the note that is picked, and on' },
  { key: 'away', shown: '⌫', words: 'take the digit away; without a note, the last word on hands' },
  { key: 'hands', shown: 'L R', words: 'left, right hand, where the file does not tell' },
  { key: 'propose', shown: 'P', words: 'propose a fingering' },
  { key: 'spots', shown: 'S', words: 'the hard spots; there ↑ ↓ from one to the next' },
  { key: 'spotWord', shown: 'A X', words: 'accept, reject the hard spot in focus' },
  { key: 'spotRank', shown: 'U D', words: 'move the hard spot in focus up, down' },
  { key: 'notebook', shown: '9', words: 'the notebook' },
  { key: 'weeks', shown: 'W', words: 'the weeks' },
  { key: 'size', shown: '+ −', words: 'larger, smaller notes' },
]
