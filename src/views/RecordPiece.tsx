import { useEffect, useState } from 'react'
import { keysFor, type Recorder, type RecorderChoice, type RecorderState } from '@/app/recorder'
import { formatRoute } from '@/app/route'
import { beatBounds, formatBeats, parseBeats } from '@/music/beat'
import { handChoices, type TimeSignature } from '@/music/music'
import { tempo } from '@/music/units'
import { keysText } from '@/text/keys'
import { musicText } from '@/text/music'
import { readingText } from '@/text/reading'
import { tell } from '@/text/told'
import { writeText } from '@/text/write'
import { useApp, useSelected } from './context'
import { FragmentNotation } from './FragmentNotation'
import { KeyboardStrip } from './KeyboardStrip'
import { PageKeys } from './PageKeys'
import { keepFocus, useKeys } from './shortcuts'
import { SoundNote } from './SoundNote'
import { beatWord, handWords } from './words'
import './pieces.css'

/** A fragment is played in: what is counted is chosen, the metronome counts in, and the notes are shown. */
export const RecordPiece = () => {
  const app = useApp()
  const [recorder, setRecorder] = useState<Recorder>()
  useEffect(() => {
    let current = true
    let opened: Recorder | undefined
    void app.openRecorder().then((made) => {
      opened = made
      if (current) setRecorder(made)
    })
    return () => {
      current = false
      opened?.reset()
    }
  }, [app])
  return (
    <main className="page record">
      <h1>{writeText.recording.title}</h1>
      {recorder ? <Recording recorder={recorder} /> : <p className="soft">{writeText.opening}</p>}
    </main>
  )
}

const Recording = ({ recorder }: { readonly recorder: Recorder }) => {
  const app = useApp()
  const state = useSelected(recorder.store, (now) => now)
  const [choice, setChoice] = useState<RecorderChoice>({
    time: { beats: 4, beatType: 4 },
    tempo: tempo(72),
    grid: 'eighths',
    hand: 'right',
  })
  const [title, setTitle] = useState('')
  const toggle = (): void => void recorder.toggle(choice)
  useKeys({ Space: toggle })
  const running = isRunning(state)
  const keep = (): void => {
    const file = recorder.file(title)
    if (file) void app.addFile(file)
  }
  return (
    <>
      <p>{writeText.recording.how}</p>
      <Choices choice={choice} disabled={running} onChange={setChoice} />
      <p className="record-message" role="status" aria-live="polite" data-state={state.kind}>
        {describe(state)}
      </p>
      <FragmentNotation
        score={state.kind === 'done' ? state.score : undefined}
        empty={running ? writeText.recording.afterStop : writeText.recording.empty}
      />
      <div className="row" onPointerDown={(event) => isField(event.target) || keepFocus(event)}>
        <button type="button" className={state.kind === 'done' ? '' : 'primary'} onClick={toggle}>
          {toggleWord(state)} <kbd>{keysText.names.space}</kbd>
        </button>
        {state.kind === 'done' && (
          <>
            <label className="row tight title">
              {writeText.titleField}
              <input
                className="wide"
                value={title}
                maxLength={200}
                placeholder={writeText.untitled}
                onChange={({ target }) => setTitle(target.value)}
              />
            </label>
            <button type="button" className="primary" onClick={keep}>
              {writeText.keep}
            </button>
          </>
        )}
        <a className="button" href={formatRoute({ kind: 'pieces' })}>
          {writeText.backToPieces}
        </a>
        <PageKeys
          isPlayed
          keys={[{ key: 'space', shown: keysText.names.space, words: keysText.record }]}
        />
        <SoundNote />
      </div>
      <KeyboardStrip keys={keysFor(choice.hand)} />
    </>
  )
}

const isField = (target: EventTarget): boolean =>
  target instanceof Element && target.closest('input, label') !== null

const isRunning = ({ kind }: RecorderState): boolean =>
  kind === 'starting' || kind === 'countIn' || kind === 'recording'

const describe = (state: RecorderState): string => {
  const { states } = writeText.recording
  switch (state.kind) {
    case 'ready':
    case 'starting':
    case 'silent':
    case 'countIn':
    case 'nothing':
    case 'done':
      return states[state.kind]
    case 'recording':
      return state.strikes === 0 ? states.play : states.recording
    case 'failed':
      return tell(readingText.problems, state.reason)
  }
}

const toggleWord = (state: RecorderState): string => {
  if (isRunning(state)) return writeText.recording.stop
  return state.kind === 'done' ? writeText.recording.again : writeText.recording.record
}

const times: readonly TimeSignature[] = [
  [2, 4],
  [3, 4],
  [4, 4],
  [5, 4],
  [2, 2],
  [3, 8],
  [6, 8],
  [9, 8],
  [12, 8],
].map(([beats = 4, beatType = 4]) => ({ beats, beatType }))

const Choices = ({
  choice,
  disabled,
  onChange,
}: {
  readonly choice: RecorderChoice
  readonly disabled: boolean
  readonly onChange: (choice: RecorderChoice) => void
}) => {
  const { time, grid, hand } = choice
  const [beats, setBeats] = useState(formatBeats(choice.tempo, time))
  const counted = (text: string, at: TimeSignature): Partial<RecorderChoice> => {
    const quarters = parseBeats(text, at)
    return quarters === undefined ? {} : { tempo: quarters }
  }
  return (
    <fieldset className="row choose" disabled={disabled}>
      <legend className="unseen">{writeText.recording.counted}</legend>
      <label className="row tight">
        {writeText.recording.time}
        <select
          value={`${time.beats}/${time.beatType}`}
          onChange={({ target }) => {
            const next = times.find((each) => `${each.beats}/${each.beatType}` === target.value)
            if (next) onChange({ ...choice, time: next, ...counted(beats, next) })
          }}
        >
          {times.map((each) => (
            <option key={`${each.beats}/${each.beatType}`}>
              {each.beats}/{each.beatType}
            </option>
          ))}
        </select>
      </label>
      <label className="row tight">
        {writeText.recording.tempo}
        <input
          type="number"
          min={beatBounds.slowest}
          max={beatBounds.fastest}
          value={beats}
          onChange={({ target }) => {
            setBeats(target.value)
            onChange({ ...choice, ...counted(target.value, time) })
          }}
        />
        <span className="soft">{musicText.aMinute(beatWord(time))}</span>
      </label>
      <label className="row tight">
        {writeText.recording.smallest}
        <select
          value={grid}
          onChange={({ target }) => {
            const next = grids.find((each) => each === target.value)
            if (next) onChange({ ...choice, grid: next })
          }}
        >
          {grids.map((each) => (
            <option key={each} value={each}>
              {writeText.recording.grids[each]}
            </option>
          ))}
        </select>
      </label>
      <label className="row tight">
        {writeText.recording.playedBy}
        <select
          value={hand}
          onChange={({ target }) => {
            const next = handChoices.find((each) => each === target.value)
            if (next) onChange({ ...choice, hand: next })
          }}
        >
          {handChoices.map((each) => (
            <option key={each} value={each}>
              {handWords[each]}
            </option>
          ))}
        </select>
      </label>
    </fieldset>
  )
}

const grids: readonly RecorderChoice['grid'][] = ['eighths', 'triplets', 'sixteenths']
