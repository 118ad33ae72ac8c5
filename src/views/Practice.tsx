import { useCallback, useMemo, useRef } from 'react'
import { isOnce } from '@/app/dayRun'
import { notebookPlace } from '@/app/notebookPlace'
import type { Practising, Sheet } from '@/app/practising'
import { isTooBig, trialGoal } from '@/app/practiceState'
import { formatBeats } from '@/music/beat'
import { withFingers, type Fingers } from '@/music/fingers'
import type { Tempo } from '@/music/units'
import { drillText } from '@/text/drill'
import { useApp, useSelected } from './context'
import { DayLine } from './DayLine'
import { KeyboardStrip } from './KeyboardStrip'
import { KeyList } from './KeyList'
import { Message } from './Message'
import { Notation } from './Notation'
import { notesInWords } from './notesInWords'
import { NotebookOver } from './NotebookOver'
import { PassageLine } from './PassageLine'
import { PracticeControls } from './PracticeControls'
import { Remedies } from './Remedies'
import { useShortcuts } from './shortcuts'
import { Strokes } from './Strokes'
import { TempoScale } from './TempoScale'
import { Tray } from './Tray'
import { useFollowing } from './useFollowing'
import { useNotebookKey } from './useNotebook'
import { usePencil } from './usePencil'
import { beatWord, formatBars, formWords, handWords } from './words'

/** The drill: notation with pencil marks, the tray, the tempo scale, the strokes, the keys. */
export const Practice = ({ practising: chosen }: { readonly practising: Practising }) => {
  const app = useApp()
  const practising = useSelected(app.practice.store, (state) => state?.desk) ?? chosen
  const { piece, form, time, bars, keys, next, item } = practising
  const onPencil = usePencil(practising)
  const list = useRef<HTMLDialogElement>(null)
  const { open, ...notebook } = useNotebookKey(app.practice.hold)
  const notes = useRef<HTMLDivElement>(null)
  useFollowing(notes)
  useShortcuts()
  const beat = useCallback((tempo: Tempo) => formatBeats(tempo, time), [time])
  const showFingers = useSelected(app.settings, (state) => state.showFingers)
  // Against a problem of the fingering its digits are what one looks at.
  const withDigits = showFingers || practising.remedy?.kind === 'fingering'
  const stretch = useMemo(() => stretchOf(practising, withDigits), [practising, withDigits])
  const coming = next ?? item?.next
  const ahead = useMemo(
    () => coming?.sheet && stretchOf(coming.sheet, showFingers),
    [coming, showFingers],
  )
  const inForm = form === 'asWritten' ? '' : `, ${formWords[form]}`
  const where = `${formatBars(bars.first, bars.last)}, ${handWords[practising.chunk.hand]}${inForm}`
  return (
    <main className="practice" data-item={item?.item.kind}>
      <div className="practice-head">
        <div>
          <h1>
            {piece.title} <span className="soft">{where}</span>
          </h1>
          {item && <DayLine item={item} />}
        </div>
        <PassageLine practising={practising} />
      </div>
      <div className="practice-notes" ref={notes}>
        <Notation
          caller="practice"
          stretch={stretch}
          ahead={ahead}
          label={`${piece.title}, ${where}. ${notesInWords(practising.chunk, practising.signature)}`}
          onPencil={onPencil}
        />
      </div>
      <Message />
      <Count isOnce={item !== undefined && isOnce(item.item)} />
      <Ladder beat={beat} word={beatWord(time)} />
      <div className="practice-keys">
        <KeyboardStrip keys={keys} />
      </div>
      <PracticeControls
        keys={keys}
        isItem={item !== undefined}
        time={time}
        onKeys={() => list.current?.showModal()}
        onNotebook={open}
      />
      <KeyList played={keys} isItem={item !== undefined} dialog={list} />
      <NotebookOver piece={piece} here={notebookPlace(piece, practising.written)} {...notebook} />
    </main>
  )
}

const noFingers: Fingers = new Map()

const stretchOf = ({ score, chunk }: Sheet, withDigits: boolean) => ({
  score: withDigits ? score : withFingers(score, noFingers),
  start: chunk.start,
  end: chunk.end,
  hand: chunk.hand,
})

const Count = ({
  isOnce,
}: {
  /** There is nothing to count: it is played once. */
  readonly isOnce: boolean
}) => {
  const app = useApp()
  const coach = useSelected(app.practice.store, (state) => state?.coach)
  const stopped = useSelected(
    app.practice.store,
    (state) => state !== undefined && (state.problem !== undefined || isTooBig(state)),
  )
  if (!coach) return null
  const { trial, streak, streakGoal } = coach
  return (
    <div className="practice-count" data-stopped={stopped}>
      {stopped ? (
        <Remedies />
      ) : trial ? (
        <Tray streak={trial.clean} goal={trialGoal} />
      ) : (
        !isOnce && <Tray streak={streak} goal={streakGoal} />
      )}
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
        <span className="soft">{drillText.played}</span>{' '}
        <b>{played === undefined ? '–' : beat(played)}</b>
        <span className="unit soft">{drillText.aMinute(word)}</span>
      </p>
    </div>
  )
}
