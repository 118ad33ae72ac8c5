import { useEffect, useRef } from 'react'
import { formatRoute, type BuildUpPlan } from '@/app/route'
import { routeOf, type BuildUpStanding } from '@/app/buildUps'
import type { CorrectedPiece } from '@/app/handCorrections'
import { notebookPlace } from '@/app/notebookPlace'
import { barsOf, keysOf } from '@/app/practising'
import type { Exercise } from '@/exercises/buildUp'
import { formatBeats } from '@/music/beat'
import { handChoices } from '@/music/music'
import { buildUpText } from '@/text/buildUp'
import { keysText } from '@/text/keys'
import { useApp } from './context'
import { NotebookOver } from './NotebookOver'
import { PageKeys } from './PageKeys'
import { Stages } from './Stages'
import { useKeys } from './shortcuts'
import { useNotebookKey } from './useNotebook'
import { beatWord, formatBars, handWords } from './words'
import './buildUp.css'

/** The exercises from small groups to the whole passage: what is done, what is next, and why. */
export const BuildUp = ({
  piece,
  standing,
}: {
  readonly piece: CorrectedPiece
  readonly standing: BuildUpStanding
}) => {
  const app = useApp()
  const { score } = piece
  const { plan, passage, exercises, progress, goalTempo } = standing
  const { next, settled } = progress
  const bars = barsOf(score, passage)
  const { open, ...notebook } = useNotebookKey()
  const start = (exercise: Exercise | undefined): void => {
    if (exercise) app.begin(routeOf(score.id, plan, exercise))
  }
  const toPiece = (): void => app.go({ kind: 'piece', piece: score.id })
  useKeys({ Enter: () => start(next) })
  // One touch of the space bar or Enter, and it begins.
  const button = useRef<HTMLButtonElement>(null)
  useEffect(() => button.current?.focus(), [])
  useEffect(
    () =>
      // Who writes in the notebook does not begin an exercise.
      notebook.isOpen
        ? undefined
        : app.listenForCommands(keysOf(passage), (command) => {
            if (next && (command === 'next' || command === 'goOn' || command === 'again'))
              app.begin(routeOf(score.id, plan, next))
          }),
    [app, passage, next, score, plan, notebook.isOpen],
  )
  const change = (part: Partial<BuildUpPlan>): void =>
    app.buildUp(piece, { ...plan, ...part }, goalTempo)
  return (
    <main className="page page-build-up">
      <h1>
        {buildUpText.title} <span className="soft">{score.title}</span>
      </h1>
      <p className="build-up-sum">
        {bars &&
          buildUpText.what(
            formatBars(bars.first, bars.last),
            handWords[plan.passage.hand],
            formatBeats(goalTempo, bars.first.time),
            beatWord(bars.first.time),
          )}{' '}
        <b>
          {next
            ? buildUpText.left({
                done: settled.length,
                of: exercises.length,
                left: progress.left.length,
                minutes: Math.round(standing.minutes),
                isOwnPace: standing.isOwnPace,
              })
            : buildUpText.allDone(exercises.length)}
        </b>
      </p>
      <div className="row actions">
        <button
          ref={button}
          type="button"
          className="primary"
          disabled={!next}
          onClick={() => start(next)}
        >
          {settled.length > 0 ? buildUpText.goOn : buildUpText.start}{' '}
          <kbd>{keysText.names.enter}</kbd>
        </button>
        <a className="button" href={formatRoute({ kind: 'piece', piece: score.id })}>
          {buildUpText.toPiece} <kbd>P</kbd>
        </a>
        <button type="button" onClick={open}>
          {buildUpText.notebook} <kbd>9</kbd>
        </button>
        <PageKeys
          keys={[
            { key: 'enter', shown: keysText.names.enter, words: keysText.buildUp.next },
            { key: '9', shown: '9', words: keysText.buildUp.notebook },
            { key: 'p', shown: 'P', words: keysText.buildUp.piece, run: toPiece },
          ]}
        />
      </div>
      <div className="row build-up-choice">
        <label>
          {buildUpText.hands}
          <select
            value={plan.passage.hand}
            onChange={({ target }) => {
              const hand = handChoices.find((each) => each === target.value)
              if (hand) change({ passage: { ...plan.passage, hand } })
            }}
          >
            {handChoices.map((hand) => (
              <option key={hand} value={hand}>
                {handWords[hand]}
              </option>
            ))}
          </select>
        </label>
        <Choice
          all={['brisk', 'thorough']}
          words={buildUpText.thoroughness}
          chosen={plan.thoroughness}
          onChoose={(thoroughness) => change({ thoroughness })}
        />
        <Choice
          all={['forward', 'fromTheEnd']}
          words={buildUpText.direction}
          chosen={plan.direction}
          onChoose={(direction) => change({ direction })}
        />
      </div>
      <Stages {...{ score, standing }} onStart={start} />
      <NotebookOver piece={score} here={notebookPlace(score, passage)} {...notebook} />
    </main>
  )
}

/** A choice between two words. */
const Choice = <Word extends string>({
  all,
  words,
  chosen,
  onChoose,
}: {
  readonly all: readonly Word[]
  readonly words: Readonly<Record<Word | 'title', string>>
  readonly chosen: Word
  readonly onChoose: (word: Word) => void
}) => (
  <fieldset className="row tight">
    <legend>{words.title}</legend>
    {all.map((word) => (
      <label key={word} className="row tight">
        <input
          type="radio"
          name={all.join()}
          checked={chosen === word}
          onChange={() => onChoose(word)}
        />
        {words[word]}
      </label>
    ))}
  </fieldset>
)
