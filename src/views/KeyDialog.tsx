import { useId, type ReactNode, type RefObject } from 'react'
import { keysText } from '@/text/keys'

/** What one key does, or a few that belong together. */
export interface KeyRow {
  readonly keys: readonly string[]
  readonly words: ReactNode
}

/** The list of keys that lies over a page; `?`, which opens it, is its last line. */
export const KeyDialog = ({
  dialog,
  rows,
  note,
}: {
  readonly dialog: RefObject<HTMLDialogElement | null>
  readonly rows: readonly KeyRow[]
  readonly note?: string
}) => {
  const title = useId()
  return (
    <dialog ref={dialog} className="key-list" aria-labelledby={title}>
      <h2 id={title}>{keysText.title}</h2>
      <table>
        <tbody>
          {[...rows, { keys: ['?'], words: keysText.thisList }].map(({ keys, words }) => (
            <tr key={keys.join(' ')}>
              <th scope="row">
                {keys.map((each) => (
                  <kbd key={each}>{each}</kbd>
                ))}
              </th>
              <td>{words}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {note !== undefined && <p className="soft">{note}</p>}
      <button type="button" onClick={() => dialog.current?.close()}>
        {keysText.close} <kbd>{keysText.names.escape}</kbd>
      </button>
    </dialog>
  )
}

/** Opens the list, or closes it. */
export const toggleKeyDialog = ({ current }: RefObject<HTMLDialogElement | null>): void => {
  if (current?.open) current.close()
  else current?.showModal()
}
