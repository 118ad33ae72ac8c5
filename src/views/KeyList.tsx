import { useEffect, type RefObject } from 'react'
import { isFree, reachOf, type DrillCommand } from '@/app/commandKeys'
import type { Key } from '@/music/units'
import { useApp, useSelected } from './context'
import { bindingWord } from './words'

/** Every key of a drill. The letters are the computer's piano keys. */
const keys: readonly (readonly [key: string, words: string, command?: DrillCommand])[] = [
  ['Space', 'metronome; in a pause: go on', 'metronome'],
  ['Enter', 'hear it', 'hear'],
  ['0', 'again, from the beginning', 'again'],
  ['.', 'pause, and go on', 'goOn'],
  ['→', 'next', 'next'],
  ['←', 'back', 'back'],
  ['↑ ↓', 'faster, slower'],
  ['1 2 3', 'at a problem: one of the exercises against it'],
  ['4', 'clicks between the beats: none, two, three, four to a beat'],
  ['5', 'two bars of clicks, two silent, in turns'],
  ['9', 'the notebook; the drill waits meanwhile'],
  ['Backspace', 'take back what the coach decided last'],
  ['Esc', 'end the session'],
  ['?', 'this list'],
]

/** What two of them mean in today's plan. */
const itemKeys: Readonly<Record<string, string>> = {
  '→': 'the next item of today; what was not played is left for another day',
  '←': 'play the next item first, this one after it',
}

/** Opens by `?`, and by whoever holds the dialog. */
export const KeyList = ({
  played,
  isItem,
  dialog,
}: {
  /** The keys of what is drilled. */
  readonly played: readonly Key[]
  /** It is an item of today. */
  readonly isItem: boolean
  readonly dialog: RefObject<HTMLDialogElement | null>
}) => {
  const app = useApp()
  const commands = useSelected(app.settings, (state) => state.commands)
  useEffect(() => {
    const press = ({ key, target }: KeyboardEvent): void => {
      const isTyping = target instanceof Element && target.closest('input, select, textarea')
      const other = document.querySelector('dialog[open]')
      if (key !== '?' || isTyping || (other && other !== dialog.current)) return
      if (dialog.current?.open) dialog.current.close()
      else dialog.current?.showModal()
    }
    window.addEventListener('keydown', press)
    return () => window.removeEventListener('keydown', press)
  }, [dialog])
  const reach = reachOf(played)
  return (
    <dialog ref={dialog} className="key-list" aria-labelledby="key-list">
      <h2 id="key-list">Keys</h2>
      <table>
        <tbody>
          {keys.map(([key, words, command]) => {
            const bound = command && commands[command]
            return (
              <tr key={key}>
                <th scope="row">
                  {key.split(' ').map((each) => (
                    <kbd key={each}>{each}</kbd>
                  ))}
                </th>
                <td>
                  {(isItem && itemKeys[key]) || words}
                  {bound && (
                    <span className="soft">
                      {' '}
                      · {bindingWord(bound)}
                      {isFree(bound, reach) ? '' : ', which here belongs to the passage and plays'}
                    </span>
                  )}
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
      <p className="soft">
        Letters play: the computer’s keyboard is a small piano. Keys of the instrument and its
        pedals can mean a command too: see Options.
      </p>
      <button type="button" onClick={() => dialog.current?.close()}>
        Close <kbd>Esc</kbd>
      </button>
    </dialog>
  )
}
