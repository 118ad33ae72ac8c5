import { useRef } from 'react'
import { keysText } from '@/text/keys'
import { KeyDialog, toggleKeyDialog } from './KeyDialog'
import { useKeysByName } from './pieceKeys'

/** What a key of a page does, beside its name on the list. */
export interface PageKey {
  /** As the browser names it, in small letters: 'p', 'arrowleft'. */
  readonly key: string
  readonly shown: string
  readonly words: string
  /** Absent where the page itself hears it, since what has the focus may have a use for it. */
  readonly run?: () => void
}

/** The keys of a page; `?` lists them. Letters are no piano keys, unless the page is played. */
export const PageKeys = ({
  keys,
  isPlayed = false,
}: {
  readonly keys: readonly PageKey[]
  readonly isPlayed?: boolean
}) => {
  const dialog = useRef<HTMLDialogElement>(null)
  const toggle = (): void => {
    const over = document.querySelector('dialog[open]')
    if (!over || over === dialog.current) toggleKeyDialog(dialog)
  }
  const actions = keys.flatMap(({ key, run }) => (run ? [[key, run] as const] : []))
  useKeysByName({ ...Object.fromEntries(actions), '?': toggle }, isPlayed)
  return (
    <>
      <button type="button" className="plain no-print" onClick={toggle} aria-label={keysText.title}>
        {keysText.title} <kbd>?</kbd>
      </button>
      <KeyDialog
        dialog={dialog}
        rows={[
          ...keys.map(({ shown, words }) => ({ keys: [shown], words })),
          ...(isPlayed ? [] : [{ keys: ['G'], words: keysText.anotherPage }]),
          { keys: [','], words: keysText.options },
        ]}
      />
    </>
  )
}
