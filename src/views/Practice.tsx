import { useCallback, useEffect, useRef, type PointerEvent } from 'react'
import type { Pencil } from '@/engraving/pencil'
import type { Said } from '@/app/practice'
import type { Practising } from '@/app/practising'
import type { Repetition } from '@/judge/repetition'
import { formatBeats } from '@/music/beat'
import { tick, type Tempo } from '@/music/units'
import { useApp, useSelected } from './context'
import { KeyboardStrip } from './KeyboardStrip'
import { Notation } from './Notation'
import { pencilMark } from './pencilMarks'
import { Strokes } from './Strokes'
import { TempoScale } from './TempoScale'
import { Tray } from './Tray'
import { beatWord, describeRepetition, formatBars, handWords } from './words'

/** The drill: notation with pencil marks, the tray, the tempo scale, the strokes, the keys. */
export const Practice = ({ practising }: { readonly practising: Practising }) => {
  const app = useApp()
  const { chunk, score, time, bars } = practising
  const onPencil = usePencil(practising)
  useShortcuts()
  const beat = useCallback((tempo: Tempo) => formatBeats(tempo, time), [time])
  const where = `${formatBars(bars.first, bars.last)}, ${handWords[chunk.hand]}`
  return (
    <main className="practice">
      <h1 className="practice-head">
        {score.title} <span className="soft">{where}</span>
      </h1>
      <div className="practice-notes">
        <Notation
          caller="practice"
          stretch={{ score, start: chunk.start, end: tick(chunk.end), hand: chunk.hand }}
          label={`${score.title}, ${where}`}
          onPencil={onPencil}
        />
      </div>
      <Message />
      <Count />
      <Ladder beat={beat} word={beatWord(time)} />
      <div className="practice-keys">
        <KeyboardStrip chunk={chunk} screen={app.screenKeys} watchKeys={app.instrument.watchKeys} />
      </div>
      <Controls />
    </main>
  )
}

/** Puts each finding on the notation as it comes, past React; draws all again when the notation is new. */
const usePencil = ({ chunk }: Practising): ((pencil: Pencil | undefined) => void) => {
  const app = useApp()
  const pencil = useRef<Pencil>(undefined)
  const redraw = useCallback(() => {
    pencil.current?.clear()
    for (const [slot, mark] of app.practice.marks.now()) {
      const drawn = pencilMark(mark, chunk)
      if (drawn) pencil.current?.put(slot, drawn)
    }
  }, [app, chunk])
  useEffect(
    () =>
      app.practice.marks.watch((change) => {
        if (change.kind === 'all') return redraw()
        const drawn = change.kind === 'mark' ? pencilMark(change.mark, chunk) : undefined
        if (drawn) pencil.current?.put(change.slot, drawn)
        else pencil.current?.erase(change.slot)
      }),
    [app, chunk, redraw],
  )
  return useCallback(
    (opened) => {
      pencil.current = opened
      redraw()
    },
    [redraw],
  )
}

/** One sentence at a time: what the coach asks, or the last verdict. It keeps its place when empty. */
const Message = () => {
  const app = useApp()
  const said = useSelected(app.practice.store, (state) => state?.said)
  const paused = useSelected(app.practice.store, (state) => state?.coach.paused)
  const last = useSelected(app.practice.store, (state) => state?.last)
  const simulated = useSelected(app.practice.store, (state) => state?.simulated)
  return (
    <div
      className="practice-message"
      data-said={said?.kind ?? last?.verdict ?? 'ready'}
      data-paused={paused !== undefined}
    >
      <p role="status" aria-live="polite">
        {simulated && <span className="soft">Simulated player, nothing is recorded. </span>}
        {sentenceOf(said, last)}
      </p>
      {paused && (
        <button type="button" onPointerDown={keepFocus} onClick={() => app.practice.goOn()}>
          Go on <kbd>Space</kbd>
        </button>
      )}
    </div>
  )
}

const sentenceOf = (said: Said | undefined, last: Repetition | undefined): string => {
  switch (said?.kind) {
    case 'reason':
      return said.sentence
    case 'secure':
      return 'Secure for today: the streak is met at the goal tempo.'
    case 'stray':
      return 'That key begins nothing here.'
    case undefined:
      return last
        ? describeRepetition(last)
        : 'Play when you are ready: the first key begins a repetition.'
  }
}

const Count = () => {
  const app = useApp()
  const coach = useSelected(app.practice.store, (state) => state?.coach)
  if (!coach) return null
  return (
    <div className="practice-count">
      <Tray streak={coach.streak} goal={coach.streakGoal} />
      <Strokes verdicts={coach.recent} />
    </div>
  )
}

const Ladder = ({
  beat,
  word,
}: {
  readonly beat: (tempo: Tempo) => string
  readonly word: string
}) => {
  const app = useApp()
  const coach = useSelected(app.practice.store, (state) => state?.coach)
  const played = useSelected(app.practice.store, (state) => state?.last?.figures.tempo)
  if (!coach) return null
  const goal = coach.rungs.at(-1) ?? coach.rung
  return (
    <div className="practice-tempo">
      <TempoScale rungs={coach.rungs} rung={coach.rung} goal={goal} beat={beat} />
      <p className="played">
        <span className="soft">played</span> <b>{played === undefined ? '–' : beat(played)}</b>
        <span className="unit soft">{word} a minute</span>
      </p>
    </div>
  )
}

const Controls = () => {
  const app = useApp()
  const metronome = useSelected(app.practice.store, (state) => state?.metronome ?? 'off')
  const hearing = useSelected(app.practice.store, (state) => state?.hearing ?? false)
  const simulated = useSelected(app.practice.store, (state) => state?.simulated ?? false)
  return (
    <div className="practice-controls" onPointerDown={keepFocus}>
      <button
        type="button"
        aria-pressed={metronome !== 'off'}
        onClick={() => void app.practice.toggleMetronome()}
      >
        Metronome <kbd>Space</kbd>
      </button>
      <button type="button" aria-pressed={hearing} onClick={() => void app.practice.hear()}>
        Hear it <kbd>Enter</kbd>
      </button>
      <button type="button" onClick={() => app.practice.lower()}>
        Slower <kbd>↓</kbd>
      </button>
      <button type="button" onClick={() => app.practice.raise()}>
        Faster <kbd>↑</kbd>
      </button>
      <button type="button" onClick={() => app.neighbour(-1)}>
        <kbd>←</kbd> Previous
      </button>
      <button type="button" onClick={() => app.neighbour(1)}>
        Next <kbd>→</kbd>
      </button>
      <button
        type="button"
        aria-pressed={simulated}
        onClick={() => void app.practice.toggleSimulated()}
      >
        Simulated player
      </button>
      <SoundNote />
      <button type="button" onClick={() => app.endSession()}>
        End <kbd>Esc</kbd>
      </button>
    </div>
  )
}

/** Why nothing sounds, or not yet. */
const SoundNote = () => {
  const app = useApp()
  const sound = useSelected(app.sound, (state) => state)
  switch (sound.kind) {
    case 'asleep':
    case 'ready':
      return null
    case 'off':
      return <p className="sound-note soft">Sound is off: see Options.</p>
    case 'blocked':
      return <p className="sound-note soft">The browser holds the sound back: click once more.</p>
    case 'loading':
      return (
        <p className="sound-note soft">
          Fetching the piano: {sound.loaded} of {sound.wanted}
        </p>
      )
    case 'failed':
      return <p className="sound-note soft">{sound.message}</p>
  }
}

/** Space, Enter, arrows and escape; letters belong to the computer's piano keys. */
const useShortcuts = (): void => {
  const app = useApp()
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      const run = event.repeat || isTyping(event.target) ? undefined : actionOf(event.code)
      if (!run) return
      event.preventDefault()
      run()
    }
    const actionOf = (code: string): (() => void) | undefined => {
      switch (code) {
        case 'Space':
          return () => app.practice.goOnOrMetronome()
        case 'Enter':
          return () => void app.practice.hear()
        case 'ArrowUp':
          return () => app.practice.raise()
        case 'ArrowDown':
          return () => app.practice.lower()
        case 'ArrowLeft':
          return () => app.neighbour(-1)
        case 'ArrowRight':
          return () => app.neighbour(1)
        case 'Escape':
          return () => app.endSession()
        default:
          return undefined
      }
    }
    window.addEventListener('keydown', press)
    return () => window.removeEventListener('keydown', press)
  }, [app])
}

/** A click leaves the focus where it was, so that Space and Enter go on meaning the same. */
const keepFocus = (event: PointerEvent): void => event.preventDefault()

/** Where Space and Enter already mean something. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof Element &&
  target.closest('input, select, textarea, button, a, summary') !== null
