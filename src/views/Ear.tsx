import { clicksPerBeat, type Settings } from '@/app/settings'
import { useApp, useSelected } from './context'
import { perBeatWord } from './words'

/** What is heard, and how loud. */
export const Ear = () => {
  const app = useApp()
  const settings = useSelected(app.settings, (state) => state)
  const outputs = useSelected(app.instrument.store, (state) => state.outputs)
  const change = (part: Partial<Settings>): void => app.changeSettings(part)
  return (
    <>
      <Volume
        name="Metronome"
        value={settings.metronomeVolume}
        onChange={(metronomeVolume) => change({ metronomeVolume })}
      />
      <Volume
        name="Piano of “Hear it”"
        value={settings.pianoVolume}
        onChange={(pianoVolume) => change({ pianoVolume })}
      />
      <label>
        “Hear it” sounds on
        <select
          value={settings.output}
          onChange={({ target: { value } }) =>
            change({
              output: value,
              outputName: outputs.find(({ id }) => id === value)?.name ?? '',
            })
          }
        >
          <option value="">the piano of the program</option>
          {outputs.map(({ id, name, connected }) => (
            <option key={id} value={id}>
              {name}
              {connected ? '' : ' (unplugged)'}
            </option>
          ))}
          {settings.output !== '' && !outputs.some(({ id }) => id === settings.output) && (
            <option value={settings.output}>{settings.outputName} (not there)</option>
          )}
        </select>
      </label>
      {settings.output !== '' && (
        <p className="soft credit">
          By cable the notes sound some milliseconds after they are sent, one millisecond more for
          each note of a chord; by wireless it may be tens. You are never judged against it, and
          what the instrument sends back of it is not taken for your playing.
        </p>
      )}
      <label>
        Clicks to a beat
        <select
          value={settings.perBeat}
          onChange={({ target }) =>
            change({ perBeat: clicksPerBeat.find((n) => n === Number(target.value)) ?? 1 })
          }
        >
          {clicksPerBeat.map((n) => (
            <option key={n} value={n}>
              {n}: {perBeatWord(n, { beats: 4, beatType: 4 })}
            </option>
          ))}
        </select>
      </label>
      <label className="check">
        <input
          type="checkbox"
          checked={settings.silentBars}
          onChange={({ target }) => change({ silentBars: target.checked })}
        />
        Two bars of clicks, two silent: does your pulse hold?
      </label>
    </>
  )
}

const Volume = ({
  name,
  value,
  onChange,
}: {
  readonly name: string
  readonly value: number
  readonly onChange: (value: number) => void
}) => (
  <label>
    {name}, how loud
    <input
      type="range"
      min={0}
      max={1}
      step={0.1}
      value={value}
      aria-valuetext={`${Math.round(value * 100)} %`}
      onChange={({ target }) => onChange(Number(target.value))}
    />
  </label>
)
