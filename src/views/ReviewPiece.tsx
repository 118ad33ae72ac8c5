import { useMemo, useState } from 'react'
import type { OnePieceReview } from '@/app/reviewing'
import { formatRoute } from '@/app/route'
import type { Score } from '@/music/music'
import type { PieceId } from '@/music/units'
import type { Asked } from '@/review/asked'
import type { ChunkState } from '@/review/chunkStates'
import type { ChunkFigures } from '@/review/pieceReview'
import { NotebookPrinted } from './NotebookPrinted'
import { ReviewBars } from './ReviewBars'
import { ReviewClean } from './ReviewClean'
import { ColdChecks } from './ReviewCold'
import { PlayedFor } from './ReviewKeys'
import { Amount, ChunkName, FlawKinds, Followed, Overruled } from './ReviewParts'
import { RungPlot } from './ReviewRungs'
import { useReviewedRoutes } from './reviewed'
import {
  chunkWords,
  curveWords,
  dateWords,
  shareWords,
  stateOrder,
  statesWords,
  stateWords,
  tempoWords,
} from './reviewWords'

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
          The score of this piece is not on this machine, only the record of its practice. Bring its
          file in on the page <a href={formatRoute({ kind: 'pieces' })}>Pieces</a>, and the record
          will find it.
        </p>
      )}
      <ReviewClean figures={review} periods={review.periods} trend={review.trend} asked={asked} />
      <section aria-labelledby="chunks">
        <h2 id="chunks">How far each chunk has come</h2>
        <p>{statesWords(review.states)}</p>
        <p className="soft">
          Trend: whether flaws become fewer with practice, since the tempo last reached a new
          height.
        </p>
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
  const sorted = chunks.toSorted((a, b) => (lastDay(a) < lastDay(b) ? 1 : -1))
  return (
    <>
      <div className="scroll">
        <table className="chunk-table stack">
          <caption>{stateWords[state]}</caption>
          <thead>
            <tr>
              <th scope="col">Chunk</th>
              <th scope="col">Clean share</th>
              <th scope="col">Longest streak</th>
              <th scope="col">Tempo</th>
              <th scope="col">Trend</th>
              <th scope="col">Last</th>
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
          Show all {sorted.length}
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
  const routes = useReviewedRoutes()
  const last = chunk.days.at(-1)
  return (
    <tr data-chunk={chunk.chunk}>
      <th scope="row">
        <ChunkName id={id} chunk={chunk} score={score} />
      </th>
      <td data-label="Clean share">
        <a href={routes.repetitions({ piece: id, chunk: chunk.chunk })}>
          {shareWords(chunk.share) === '–' ? 'broken off' : shareWords(chunk.share)}
        </a>
      </td>
      <td data-label="Longest streak">
        <Followed n={chunk.longestStreak} asked={{ piece: id, chunk: chunk.chunk, streak: true }} />
      </td>
      <td data-label="Tempo">
        {last && tempoWords(last.lastRung, chunk)}
        {chunk.drill && ` of ${tempoWords(chunk.drill.goalTempo, chunk)}`}
      </td>
      <td data-label="Trend">{chunk.curve ? curveWords[chunk.curve.verdict] : 'too few days'}</td>
      <td data-label="Last">{last && dateWords(last.day)}</td>
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
      <h2 id="over-days">Tempo and streaks, day by day</h2>
      <label className="row no-print">
        Chunk
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
      <p className="soft plot-key">
        A line is the tempi of a day, its stroke across the last one; the bars below are the longest
        streaks.
      </p>
    </section>
  )
}
