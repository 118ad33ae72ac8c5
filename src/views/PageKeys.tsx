import { useRef } from 'react'
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
  const toggle = (): void => {
    if (dialog.current?.open) dialog.current.close()
    else dialog.current?.showModal()
  }
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
      <button type="button" className="plain no-print" onClick={toggle} aria-label="Keys">
        Keys <kbd>?</kbd>
      </button>
      <dialog ref={dialog} className="key-list" aria-labelledby="page-keys">
        <h2 id="page-keys">Keys</h2>
        <table>
          <tbody>
            {[...keys, { key: '?', shown: '?', words: 'this list' }].map(
              ({ key, shown, words }) => (
                <tr key={key}>
                  <th scope="row">
                    <kbd>{shown}</kbd>
                  </th>
                  <td>{words}</td>
                </tr>
              ),
            )}
          </tbody>
        </table>
        <button type="button" onClick={toggle}>
          Close <kbd>Esc</kbd>
        </button>
      </dialog>
    </>
  )
}
