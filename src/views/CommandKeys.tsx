import { useEffect } from 'react'
import { drillCommands } from '@/app/commandKeys'
import { useApp, useSelected } from './context'
import { bindingWord, commandWords } from './words'

/** Which key outside the passage, or which pedal, means which command; learnt by pressing. */
export const CommandKeys = () => {
  const app = useApp()
  const { commands, damperCommands } = useSelected(app.settings, (state) => state)
  const waiting = useSelected(app.learning.store, (state) => state.command)
  useEffect(() => () => app.learning.cancel(), [app])
  return (
    <fieldset className="command-keys">
      <legend>From the instrument</legend>
      <p className="soft">
        A key far from the passage, or a pedal, can mean a command. Within a fourth of the passage’s
        keys a key only plays.
      </p>
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
                {isWaiting ? 'press it now …' : bound ? bindingWord(bound) : 'press a key for it'}
              </button>
              <button
                type="button"
                className="plain"
                aria-label={`${commandWords[command]}: no key`}
                disabled={!bound}
                onClick={() => app.learning.forget(command)}
              >
                ×
              </button>
            </li>
          )
        })}
      </ul>
      <label className="check">
        <input
          type="checkbox"
          checked={damperCommands}
          onChange={({ target }) => app.changeSettings({ damperCommands: target.checked })}
        />
        The damper pedal too
      </label>
    </fieldset>
  )
}
