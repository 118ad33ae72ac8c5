import type { Key } from '@/music/units'
import {
  nothingPressed,
  reachOf,
  readCommand,
  type Bindings,
  type DrillCommand,
} from './commandKeys'
import type { Instrument } from './instrument'
import type { Stop } from './ports'

/** Where nothing is drilled: the keys and pedals that mean a command, outside the keys of a passage. */
export const listenForCommands = (
  instrument: Instrument,
  bindings: () => Bindings,
  keys: readonly Key[],
  run: (command: DrillCommand) => void,
): Stop => {
  let pressed = nothingPressed
  const reach = reachOf(keys)
  return instrument.listen((event, who) => {
    if (who !== 'person') return
    const [next, meaning] = readCommand(pressed, event, bindings(), reach)
    pressed = next
    if (meaning.kind === 'command') run(meaning.command)
  })
}
