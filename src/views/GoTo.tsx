import { useEffect, useLayoutEffect, useRef } from 'react'
import { formatRoute, type Route } from '@/app/route'
import { keysText } from '@/text/keys'
import { useApp } from './context'

/** The pages that stand for themselves, each with its letter. */
const pages = [
  ['P', 'pieces'],
  ['T', 'today'],
  ['S', 'summary'],
  ['R', 'review'],
  ['N', 'notebook'],
  ['U', 'students'],
  ['C', 'journal'],
] as const satisfies readonly (readonly [letter: string, kind: Route['kind']])[]

/** Another page by its letter. It opens when it is mounted; Esc closes it. */
export const GoTo = ({ onClose }: { readonly onClose: () => void }) => {
  const app = useApp()
  const dialog = useRef<HTMLDialogElement>(null)
  useLayoutEffect(() => {
    const shown = dialog.current
    shown?.showModal()
    return () => shown?.close()
  }, [])
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.repeat) return
      // No letter is a piano key here.
      if (/^\p{L}$/u.test(event.key)) event.stopPropagation()
      const [, kind] = pages.find(([letter]) => letter === event.key.toUpperCase()) ?? []
      if (!kind) return
      event.preventDefault()
      app.go({ kind })
      onClose()
    }
    window.addEventListener('keydown', press, { capture: true })
    return () => window.removeEventListener('keydown', press, { capture: true })
  }, [app, onClose])
  return (
    <dialog ref={dialog} className="key-list" aria-labelledby="go-to" onClose={onClose}>
      <h2 id="go-to">{keysText.goTo.title}</h2>
      <table>
        <tbody>
          {pages.map(([letter, kind]) => (
            <tr key={kind}>
              <th scope="row">
                <kbd>{letter}</kbd>
              </th>
              <td>
                <a href={formatRoute({ kind })} onClick={onClose}>
                  {keysText.goTo.pages[kind]}
                </a>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <button type="button" onClick={onClose}>
        {keysText.close} <kbd>{keysText.names.escape}</kbd>
      </button>
    </dialog>
  )
}
