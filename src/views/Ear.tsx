import { clicksPerBeat } from '@/app/settings'
import { musicText } from '@/text/music'
import { optionsText } from '@/text/options'
import { Check, Choice } from './Choice'
import { useApp, useSelected } from './context'
import { PortChoice } from './PortChoice'
import { perBeatWord } from './words'

/** What is heard, and how loud. */
export const Ear = () => {
  const app = useApp()
  const settings = useSelected(app.settings, (state) => state)
  const outputs = useSelected(app.instrument.store, (state) => state.outputs)
  const change = app.changeSettings
  return (
    <>
      <Check
        label={optionsText.sound}
        checked={settings.sound}
        onChange={(sound) => change({ sound })}
      />
      <Volume
        label={optionsText.volumes.metronome}
        value={settings.metronomeVolume}
        onChange={(metronomeVolume) => change({ metronomeVolume })}
      />
      <Volume
        label={optionsText.volumes.signals}
        value={settings.signalVolume}
        onChange={(signalVolume) => change({ signalVolume })}
      />
      <Volume
        label={optionsText.volumes.piano}
        value={settings.pianoVolume}
        onChange={(pianoVolume) => change({ pianoVolume })}
      />
      <PortChoice
        label={optionsText.hearOn}
        ports={outputs}
        chosen={{ id: settings.output, name: settings.outputName }}
        otherwise={['', optionsText.ownPiano]}
        onChange={(output, outputName) => change({ output, outputName })}
      />
      {settings.output !== '' && <p className="soft credit">{optionsText.aboutCable}</p>}
      <Choice
        label={optionsText.clicks}
        value={settings.perBeat}
        among={clicksPerBeat.map((n) => [
          n,
          optionsText.clicksAre(n, perBeatWord(n, { beats: 4, beatType: 4 })),
        ])}
        onChange={(perBeat) => change({ perBeat })}
      />
      <Check
        label={optionsText.silentBars}
        checked={settings.silentBars}
        onChange={(silentBars) => change({ silentBars })}
      />
    </>
  )
}

const Volume = ({
  label,
  value,
  onChange,
}: {
  readonly label: string
  readonly value: number
  readonly onChange: (value: number) => void
}) => (
  <label>
    {label}
    <input
      type="range"
      min={0}
      max={1}
      step={0.1}
      value={value}
      aria-valuetext={musicText.percent(Math.round(value * 100))}
      onChange={({ target }) => onChange(Number(target.value))}
    />
  </label>
)
