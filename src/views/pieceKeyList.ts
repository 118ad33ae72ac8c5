import { keysText } from '@/text/keys'
import { pieceText } from '@/text/piece'
import type { PageKey } from './PageKeys'

/** The keys of the page of a piece; each is heard where it does something. */
export const pieceKeyList = ({
  build,
  watch,
}: {
  readonly build: () => void
  readonly watch: () => void
}): readonly PageKey[] => [
  { key: 'enter', shown: keysText.names.enter, words: pieceText.keys.start },
  { key: 'b', shown: 'B', words: pieceText.keys.build, run: build },
  { key: 'v', shown: 'V', words: pieceText.keys.watch, run: watch },
  ...shown.map(([key, sign]) => ({ key, shown: sign, words: pieceText.keys[key] })),
]

const shown = [
  ['arrows', '← →'],
  ['picks', '↑ ↓'],
  ['digits', '1 – 5'],
  ['away', '⌫'],
  ['hands', 'L R'],
  ['propose', 'P'],
  ['spots', 'S'],
  ['spotWord', 'A X'],
  ['spotRank', 'U D'],
  ['notebook', '9'],
  ['weeks', 'W'],
  ['size', '+ −'],
] as const
