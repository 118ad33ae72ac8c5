import { useEffect } from 'react'
import { drillCommands } from '@/app/commandKeys'
import { optionsText } from '@/text/options'
import { Check } from './Choice'
import { useApp, useSelected } from './context'
import { bindingWord, commandWords } from './words'

/** Which key outside the passage, or which pedal, means which command; learnt by pressing. */
export const CommandKeys = () => {
  const app = useApp()
  const { commands, damperCommands } = useSelected(app.settings, (state) => state)
  const waiting = useSelected(app.learning.store, (state) => state.command)
  useEffect(() => () => app.learning.cancel(), [app])
  const words = optionsText.fromInstrument
  return (
    <div className="command-keys">
      <p className="soft">{words.how}</p>
      <ul>
        {drillCommands.map((command) => {
          const bound = commands[command]
          const isWaiting = waiting === command
          return (
            <li key={command}>
              <span>{commandWords[command]}</span>
              <button
                type="button"
                aria-pressed={isWaiting}
                onClick={() => app.learning.learn(command)}
              >
                <span className="unseen">{commandWords[command]}: </span>
                {isWaiting ? words.pressNow : bound ? bindingWord(bound) : words.pressOne}
              </button>
              <button
                type="button"
                className="plain"
                aria-label={words.noKey(commandWords[command])}
                disabled={!bound}
                onClick={() => app.learning.forget(command)}
              >
                ×
              </button>
            </li>
          )
        })}
      </ul>
      <Check
        label={words.damper}
        checked={damperCommands}
        onChange={(allowed) => app.changeSettings({ damperCommands: allowed })}
      />
    </div>
  )
}
