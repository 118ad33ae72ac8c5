import { useCallback, useMemo, useRef } from 'react'
import type { Practising } from '@/app/practising'
import { formatBeats } from '@/music/beat'
import type { Tempo } from '@/music/units'
import { useApp, useSelected } from './context'
import { KeyList } from './KeyList'
import { KeyboardStrip } from './KeyboardStrip'
import { Message } from './Message'
import { Notation } from './Notation'
import { PracticeControls } from './PracticeControls'
import { useShortcuts } from './shortcuts'
import { Strokes } from './Strokes'
import { TempoScale } from './TempoScale'
import { Tray } from './Tray'
import { usePencil } from './usePencil'
import { beatWord, formatBars, handWords } from './words'

/** The drill: notation with pencil marks, the tray, the tempo scale, the strokes, the keys. */
export const Practice = ({ practising }: { readonly practising: Practising }) => {
  const { chunk, score, time, bars } = practising
  const onPencil = usePencil(practising)
  useShortcuts()
  const keys = useRef<HTMLDialogElement>(null)
  const beat = useCallback((tempo: Tempo) => formatBeats(tempo, time), [time])
  const { next } = practising
  const ahead = useMemo(
    () => next && { score, start: next.chunk.start, end: next.chunk.end, hand: next.chunk.hand },
    [next, score],
  )
  const where = `${formatBars(bars.first, bars.last)}, ${handWords[chunk.hand]}`
  return (
    <main className="practice">
      <h1 className="practice-head">
        {score.title} <span className="soft">{where}</span>
      </h1>
      <div className="practice-notes">
        <Notation
          caller="practice"
          stretch={{ score, start: chunk.start, end: chunk.end, hand: chunk.hand }}
          ahead={ahead}
          label={`${score.title}, ${where}`}
          onPencil={onPencil}
        />
      </div>
      <Message practising={practising} />
      <Count />
      <Ladder beat={beat} word={beatWord(time)} />
      <div className="practice-keys">
        <KeyboardStrip
          keys={chunk.onsets.flatMap((onset) => onset.notes.map((note) => note.key))}
        />
      </div>
      <PracticeControls chunk={chunk} onKeys={() => keys.current?.showModal()} />
      <KeyList chunk={chunk} dialog={keys} />
    </main>
  )
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
