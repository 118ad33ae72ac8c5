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

/** The keys of a page that is read, not played; `?` lists them. Letters are no piano keys there. */
export const PageKeys = ({ keys }: { readonly keys: readonly PageKey[] }) => {
  const dialog = useRef<HTMLDialogElement>(null)
  const toggle = (): void => toggleKeyDialog(dialog)
  useKeysByName({
    ...Object.fromEntries(
      keys.flatMap(({ key, run }) =>
        run ? [[key, () => dialog.current?.open || run()] as const] : [],
      ),
    ),
    '?': toggle,
  })
  return (
    <>
      <button type="button" className="plain no-print" onClick={toggle} aria-label={keysText.title}>
        {keysText.title} <kbd>?</kbd>
      </button>
      <KeyDialog
        dialog={dialog}
        rows={keys.map(({ shown, words }) => ({ keys: [shown], words }))}
      />
    </>
  )
}
