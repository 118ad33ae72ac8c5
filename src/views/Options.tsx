import type { ReactNode } from 'react'
import { formatRoute } from '@/app/route'
import {
  farthestTranspose,
  languageChoices,
  standardChoices,
  streakGoals,
  themes,
} from '@/app/settings'
import { noteNamingChoices, scaleIn } from '@/text/noteNames'
import { optionsText } from '@/text/options'
import { shellText } from '@/text/shell'
import { Check, Choice } from './Choice'
import { CommandKeys } from './CommandKeys'
import { useApp, useLackingLanguage, useSelected } from './context'
import { Ear } from './Ear'
import { HandSpan } from './HandSpan'
import { PortChoice } from './PortChoice'
import { describeLag, standardWords } from './words'

/** What is chosen once: how strict, how many, which keyboard, how it looks. */
export const Options = () => {
  const app = useApp()
  const lagMs = useSelected(app.settings, (state) => state.lagMs)
  const keeping = useSelected(app.records.copies, (state) => state.keeping)
  const { groups } = optionsText
  return (
    <>
      <Group title={groups.drill}>
        <Drill />
      </Group>
      <Group title={groups.instrument}>
        <Keyboard />
        <HandSpan />
      </Group>
      <Group title={groups.hearing}>
        <Ear />
        <p data-lag={lagMs}>
          {optionsText.lag(describeLag(lagMs))}{' '}
          <a href={formatRoute({ kind: 'tapTest' })}>{optionsText.measureLag}</a>
        </p>
      </Group>
      <Group title={groups.page}>
        <Look />
      </Group>
      <Group title={groups.commands}>
        <CommandKeys />
      </Group>
      <p className="soft credit">{optionsText.health}</p>
      {keeping && <p className="soft credit">{keeping.words}</p>}
      <p className="soft credit">
        {shellText.licences.credits.join(' ')}{' '}
        <a href={formatRoute({ kind: 'licences' })}>{optionsText.licences}</a>
      </p>
    </>
  )
}

const Group = ({ title, children }: { readonly title: string; readonly children: ReactNode }) => (
  <fieldset className="choices">
    <legend>{title}</legend>
    {children}
  </fieldset>
)

const Drill = () => {
  const app = useApp()
  const settings = useSelected(app.settings, (state) => state)
  const change = app.changeSettings
  return (
    <>
      <Choice
        label={optionsText.judge}
        value={settings.standard}
        among={standardChoices.map((each) => [each, standardWords[each]])}
        onChange={(standard) => change({ standard })}
      />
      <Choice
        label={optionsText.streakGoal}
        value={settings.streakGoal}
        among={streakGoals.map((goal) => [goal, String(goal)])}
        onChange={(streakGoal) => change({ streakGoal })}
      />
      <Check
        label={optionsText.trial}
        checked={settings.trial}
        onChange={(trial) => change({ trial })}
      />
      <Check
        label={optionsText.forgiveBrushed}
        checked={settings.forgiveBrushed}
        onChange={(forgiveBrushed) => change({ forgiveBrushed })}
      />
      <Check
        label={optionsText.showFingers}
        checked={settings.showFingers}
        onChange={(showFingers) => change({ showFingers })}
      />
    </>
  )
}

const Keyboard = () => {
  const app = useApp()
  const settings = useSelected(app.settings, (state) => state)
  const midi = useSelected(app.instrument.store, (state) => state.midi)
  return (
    <>
      <PortChoice
        label={optionsText.keyboard}
        ports={midi.kind === 'ready' ? midi.inputs : []}
        chosen={{ id: settings.input, name: settings.inputName }}
        otherwise={['all', optionsText.allKeyboards]}
        onChange={(input, inputName) => app.changeSettings({ input, inputName })}
      />
      <label>
        {optionsText.transpose}
        <input
          type="number"
          min={-farthestTranspose}
          max={farthestTranspose}
          value={settings.transpose}
          onChange={({ target }) =>
            app.changeSettings({ transpose: Math.round(Number(target.value)) })
          }
        />
      </label>
    </>
  )
}

/** Colours and words. */
const Look = () => {
  const app = useApp()
  const settings = useSelected(app.settings, (state) => state)
  const lacking = useLackingLanguage()
  const change = app.changeSettings
  return (
    <>
      <Choice
        label={optionsText.page}
        value={settings.theme}
        among={themes.map((theme) => [theme, optionsText.themes[theme]])}
        onChange={(theme) => change({ theme })}
      />
      <Choice
        label={optionsText.language}
        value={settings.language}
        among={languageChoices.map((language) => [language, optionsText.languages[language]])}
        onChange={(language) => change({ language })}
      />
      {lacking && <p role="alert">{optionsText.languageLacks(optionsText.languages[lacking])}</p>}
      <Choice
        label={optionsText.noteNames}
        value={settings.noteNames}
        among={noteNamingChoices.map((naming) => [
          naming,
          naming === 'auto' ? optionsText.namesOfLanguage : scaleIn(naming),
        ])}
        onChange={(noteNames) => change({ noteNames })}
      />
    </>
  )
}
