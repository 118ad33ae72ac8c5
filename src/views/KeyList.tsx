import { useEffect, type RefObject } from 'react'
import { isFree, reachOf, type Bindings, type DrillCommand } from '@/app/commandKeys'
import type { Key } from '@/music/units'
import { keysText } from '@/text/keys'
import { useApp, useSelected } from './context'
import { KeyDialog, toggleKeyDialog, type KeyRow } from './KeyDialog'
import { bindingWord } from './words'

/** The keys of a drill. Opens by `?`, and by whoever holds the dialog. */
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
      toggleKeyDialog(dialog)
    }
    window.addEventListener('keydown', press)
    return () => window.removeEventListener('keydown', press)
  }, [dialog])
  return (
    <KeyDialog
      dialog={dialog}
      rows={rowsOf(isItem, (command) => boundWords(commands, command, played))}
      note={keysText.letters}
    />
  )
}

const rowsOf = (isItem: boolean, bound: (command: DrillCommand) => string): readonly KeyRow[] => {
  const { drill, today, names } = keysText
  const row = (keys: readonly string[], what: string, command?: DrillCommand): KeyRow => ({
    keys,
    words: (
      <>
        {what}
        {command && <span className="soft">{bound(command)}</span>}
      </>
    ),
  })
  return [
    row([names.space], drill.metronome, 'metronome'),
    row([names.enter], drill.hear, 'hear'),
    row(['0'], drill.again, 'again'),
    row(['.'], drill.goOn, 'goOn'),
    row(['→'], isItem ? today.next : drill.next, 'next'),
    row(['←'], isItem ? today.back : drill.back, 'back'),
    row(['↑', '↓'], drill.tempo),
    row(['1', '2', '3'], drill.remedies),
    row(['4'], drill.perBeat),
    row(['5'], drill.silentBars),
    row(['8'], drill.simulated),
    row(['9'], drill.notebook),
    row([names.backspace], drill.undo),
    row([names.escape], drill.end),
    row([','], keysText.options),
  ]
}

/** The key or pedal of the instrument that means the same. */
const boundWords = (commands: Bindings, command: DrillCommand, played: readonly Key[]): string => {
  const bound = commands[command]
  return bound ? keysText.bound(bindingWord(bound), isFree(bound, reachOf(played))) : ''
}
