import { lazy, Suspense } from 'react'
import { formatRoute } from '@/app/route'
import {
  farthestTranspose,
  languageChoices,
  standardChoices,
  streakGoals,
  themes,
  type Settings,
} from '@/app/settings'
import { useApp, useSelected } from './context'
import { Sheet } from './Sheet'
import { describeLag, standardWords } from './words'

/** Comes when the page stands: it is not what one opens first. */
const CommandKeys = lazy(async () => ({ default: (await import('./CommandKeys')).CommandKeys }))
const HandSpan = lazy(async () => ({ default: (await import('./HandSpan')).HandSpan }))

const Ear = lazy(async () => ({ default: (await import('./Ear')).Ear }))

const themeWords = { auto: 'as the machine', light: 'day', dark: 'evening' } as const

/** Each language in its own words, for who reads no other. */
const languageWords = { auto: 'as the machine', en: 'English', de: 'Deutsch' } as const

/** What is chosen once: how strict, how many, which keyboard, how it looks. */
export const Options = () => {
  const app = useApp()
  const settings = useSelected(app.settings, (state) => state)
  const midi = useSelected(app.instrument.store, (state) => state.midi)
  const change = (part: Partial<Settings>): void => app.changeSettings(part)
  const keeping = useSelected(app.records.copies, (state) => state.keeping)
  const inputs = midi.kind === 'ready' ? midi.inputs : []
  return (
    <Sheet word="Options">
      <label>
        Judge
        <select
          value={settings.standard}
          onChange={(event) => change({ standard: chosen(standardChoices, event.target.value) })}
        >
          {standardChoices.map((standard) => (
            <option key={standard} value={standard}>
              {standardWords[standard]}
            </option>
          ))}
        </select>
      </label>
      <label>
        Streak goal
        <select
          value={settings.streakGoal}
          onChange={(event) => change({ streakGoal: Number(event.target.value) })}
        >
          {streakGoals.map((goal) => (
            <option key={goal}>{goal}</option>
          ))}
        </select>
      </label>
      <label className="check">
        <input
          type="checkbox"
          checked={settings.trial}
          onChange={(event) => change({ trial: event.target.checked })}
        />
        Find the start tempo by a short trial
      </label>
      <label className="check">
        <input
          type="checkbox"
          checked={settings.forgiveBrushed}
          onChange={(event) => change({ forgiveBrushed: event.target.checked })}
        />
        Forgive brushed keys
      </label>
      <label>
        Keyboard
        <select
          value={settings.input}
          onChange={({ target }) =>
            change({
              input: target.value,
              inputName: inputs.find((input) => input.id === target.value)?.name ?? '',
            })
          }
        >
          <option value="all">all that are connected</option>
          {inputs.map((input) => (
            <option key={input.id} value={input.id}>
              {input.name}
              {input.connected ? '' : ' (unplugged)'}
            </option>
          ))}
        </select>
      </label>
      <label>
        Transpose, semitones
        <input
          type="number"
          min={-farthestTranspose}
          max={farthestTranspose}
          value={settings.transpose}
          onChange={(event) => change({ transpose: Math.round(Number(event.target.value)) })}
        />
      </label>
      <label className="check">
        <input
          type="checkbox"
          checked={settings.sound}
          onChange={(event) => change({ sound: event.target.checked })}
        />
        Sound
      </label>
      <Suspense fallback={null}>
        <Ear />
      </Suspense>
      <p data-lag={settings.lagMs}>
        Lag against the click: {describeLag(settings.lagMs)}.{' '}
        <a href={formatRoute({ kind: 'tapTest' })}>Measure the lag …</a>
      </p>
      <label>
        Page
        <select
          value={settings.theme}
          onChange={(event) => change({ theme: chosen(themes, event.target.value) })}
        >
          {themes.map((theme) => (
            <option key={theme} value={theme}>
              {themeWords[theme]}
            </option>
          ))}
        </select>
      </label>
      <label>
        Language
        <select
          value={settings.language}
          onChange={(event) => change({ language: chosen(languageChoices, event.target.value) })}
        >
          {languageChoices.map((language) => (
            <option key={language} value={language}>
              {languageWords[language]}
            </option>
          ))}
        </select>
      </label>
      <label className="check">
        <input
          type="checkbox"
          checked={settings.showFingers}
          onChange={(event) => change({ showFingers: event.target.checked })}
        />
        Fingering over the notes of a drill
      </label>
      <Suspense fallback={null}>
        <HandSpan />
        <CommandKeys />
      </Suspense>
      <p className="soft credit">
        Stop at once when anything hurts, tingles or goes numb, and see a doctor if it lasts. This
        is general advice, not medical advice; a teacher beside you knows more than any program.
      </p>
      {keeping && <p className="soft credit">{keeping.words}</p>}
      <p className="soft credit">
        {app.credits} <a href={formatRoute({ kind: 'licences' })}>All licences</a>
      </p>
    </Sheet>
  )
}

const chosen = <T extends string>(all: readonly [T, ...T[]], value: string): T =>
  all.find((each) => each === value) ?? all[0]
