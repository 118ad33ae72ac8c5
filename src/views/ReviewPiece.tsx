import { useMemo, useState, type ReactNode } from 'react'
import type { OnePieceReview } from '@/app/reviewing'
import { formatRoute } from '@/app/route'
import type { Score } from '@/music/music'
import type { PieceId } from '@/music/units'
import type { Asked } from '@/review/asked'
import type { ChunkState } from '@/review/chunkStates'
import type { ChunkFigures } from '@/review/pieceReview'
import { reviewText } from '@/text/review'
import { NotebookPrinted } from './NotebookPrinted'
import { ReviewBars } from './ReviewBars'
import { ReviewClean } from './ReviewClean'
import { ColdChecks } from './ReviewCold'
import { PlayedFor } from './ReviewKeys'
import { phrase } from './phrase'
import {
  Amount,
  ChunkName,
  FlawKinds,
  Followed,
  MadeOf,
  OnDay,
  Overruled,
  Share,
  States,
} from './ReviewParts'
import { Rung, RungPlot } from './ReviewRungs'
import { chunkWords, stateOrder, tempoWords } from './reviewWords'

/** All practice of one piece. */
export const ReviewPiece = ({
  id,
  review,
}: {
  readonly id: PieceId
  readonly review: OnePieceReview
}) => {
  const { score } = review
  const asked = useMemo(() => ({ piece: id }), [id])
  return (
    <>
      {!score && (
        <p className="notice">
          {phrase(
            reviewText.noScore<ReactNode>((words) => (
              <a href={formatRoute({ kind: 'pieces' })}>{words}</a>
            )),
          )}
        </p>
      )}
      <ReviewClean figures={review} periods={review.periods} trend={review.trend} asked={asked} />
      <section aria-labelledby="chunks">
        <h2 id="chunks">{reviewText.chunks.each}</h2>
        <p>
          <States states={review.states} asked={asked} />
        </p>
        <p className="soft">{reviewText.chunks.trend}</p>
        {stateOrder.map((state) => (
          <ChunksIn
            key={state}
            state={state}
            id={id}
            score={score}
            chunks={review.chunks.filter((chunk) => chunk.state === state)}
          />
        ))}
      </section>
      <OverDays chunks={review.chunks} score={score} asked={asked} />
      <ReviewBars id={id} review={review} asked={asked} />
      <FlawKinds flaws={review.flaws} asked={asked} />
      <PlayedFor substitutions={review.substitutions} score={score} asked={asked} />
      <ColdChecks review={review} asked={asked} />
      <Overruled overruled={review.overruled} asked={asked} />
      <NotebookPrinted id={id} entries={review.notebook} />
      <Amount figures={review} asked={asked} />
    </>
  )
}

/** So many are shown at first; what was played last comes first. */
const firstRows = 10

const ChunksIn = ({
  state,
  id,
  chunks,
  score,
}: {
  readonly state: ChunkState
  readonly id: PieceId
  readonly chunks: readonly ChunkFigures[]
  readonly score: Score | undefined
}) => {
  const [whole, setWhole] = useState(false)
  if (chunks.length === 0) return null
  const { columns } = reviewText
  const sorted = chunks.toSorted((a, b) => (lastDay(a) < lastDay(b) ? 1 : -1))
  return (
    <>
      <div className="scroll">
        <table className="chunk-table stack">
          <caption>{reviewText.states.captions[state]}</caption>
          <thead>
            <tr>
              <th scope="col">{columns.chunk}</th>
              <th scope="col">{columns.cleanShare}</th>
              <th scope="col">{columns.longestStreak}</th>
              <th scope="col">{columns.tempo}</th>
              <th scope="col">{columns.trend}</th>
              <th scope="col">{columns.last}</th>
            </tr>
          </thead>
          <tbody>
            {(whole ? sorted : sorted.slice(0, firstRows)).map((chunk) => (
              <ChunkRow key={chunk.chunk} id={id} chunk={chunk} score={score} />
            ))}
          </tbody>
        </table>
      </div>
      {!whole && sorted.length > firstRows && (
        <button type="button" className="no-print" onClick={() => setWhole(true)}>
          {reviewText.showAll(sorted.length)}
        </button>
      )}
    </>
  )
}

const lastDay = ({ days }: ChunkFigures): string => days.at(-1)?.day ?? ''

const ChunkRow = ({
  id,
  chunk,
  score,
}: {
  readonly id: PieceId
  readonly chunk: ChunkFigures
  readonly score: Score | undefined
}) => {
  const last = chunk.days.at(-1)
  const asked: Asked = { piece: id, chunk: chunk.chunk }
  const { columns, chunks: words } = reviewText
  const rung = last && <Rung chunk={chunk} day={last.day} rung={last.lastRung} asked={asked} />
  return (
    <tr data-chunk={chunk.chunk}>
      <th scope="row">
        <ChunkName id={id} chunk={chunk} score={score} />
      </th>
      <td data-label={columns.cleanShare}>
        {chunk.share ? (
          <Share share={chunk.share} asked={asked} />
        ) : (
          <MadeOf asked={asked}>{words.brokenOff}</MadeOf>
        )}
      </td>
      <td data-label={columns.longestStreak}>
        <Followed n={chunk.longestStreak} asked={{ ...asked, streak: true }} />
      </td>
      <td className="one-line" data-label={columns.tempo}>
        {chunk.drill
          ? phrase(words.tempo<ReactNode>(rung, tempoWords(chunk.drill.goalTempo, chunk)))
          : rung}
      </td>
      <td data-label={columns.trend}>
        {chunk.curve ? words.curves[chunk.curve.verdict] : words.tooFewDays}
      </td>
      <td data-label={columns.last}>{last && <OnDay day={last.day} asked={asked} />}</td>
    </tr>
  )
}

const OverDays = ({
  chunks,
  score,
  asked,
}: Pick<OnePieceReview, 'chunks'> & {
  readonly score: Score | undefined
  readonly asked: Asked
}) => {
  const most = chunks.toSorted((a, b) => b.repetitions - a.repetitions)
  const [chosen, choose] = useState(most[0]?.chunk)
  const chunk = most.find((each) => each.chunk === chosen)
  if (!chunk) return null
  return (
    <section aria-labelledby="over-days">
      <h2 id="over-days">{reviewText.rungs.title}</h2>
      <label className="row no-print">
        {reviewText.rungs.chunk}
        <select
          className="chunk-choice"
          value={chunk.chunk}
          onChange={({ target }) => choose(most.find((each) => each.chunk === target.value)?.chunk)}
        >
          {most.map((each) => (
            <option key={each.chunk} value={each.chunk}>
              {chunkWords(each, score)}
            </option>
          ))}
        </select>
      </label>
      <RungPlot chunk={chunk} name={chunkWords(chunk, score)} asked={asked} />
      <p className="soft plot-key">{reviewText.rungs.key}</p>
    </section>
  )
}
