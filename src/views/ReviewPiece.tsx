import { useState } from 'react'
import type { OnePieceReview } from '@/app/reviewing'
import { formatRoute } from '@/app/route'
import type { Score } from '@/music/music'
import type { PieceId } from '@/music/units'
import type { ChunkState } from '@/review/chunkStates'
import type { ChunkFigures } from '@/review/pieceReview'
import { ReviewBars } from './ReviewBars'
import { ReviewClean } from './ReviewClean'
import { ChunkName, FlawKinds } from './ReviewParts'
import { RungPlot } from './ReviewRungs'
import {
  amountWords,
  chunkWords,
  curveWords,
  dateWords,
  keyWords,
  shareWords,
  stateWords,
  tempoWords,
} from './reviewWords'
import { plural } from './words'

/** What needs work first. */
const states: readonly ChunkState[] = ['slipped', 'secure', 'kept', 'practised']

/** All practice of one piece. */
export const ReviewPiece = ({
  id,
  review,
}: {
  readonly id: PieceId
  readonly review: OnePieceReview
}) => {
  const { score } = review
  return (
    <>
      {!score && (
        <p className="notice">
          The score of this piece is not on this machine, only the record of its practice. Bring its
          file in on the page <a href={formatRoute({ kind: 'pieces' })}>Pieces</a>, and the record
          will find it.
        </p>
      )}
      <ReviewClean figures={review} periods={review.periods} trend={review.trend} />
      <section aria-labelledby="chunks">
        <h2 id="chunks">How far each chunk has come</h2>
        <p>{countStates(review.chunks)}</p>
        <p className="soft">
          Trend: whether flaws become fewer with practice, since the tempo last reached a new
          height.
        </p>
        {states.map((state) => (
          <ChunksIn
            key={state}
            state={state}
            id={id}
            score={score}
            chunks={review.chunks.filter((chunk) => chunk.state === state)}
          />
        ))}
      </section>
      <OverDays chunks={review.chunks} score={score} />
      <ReviewBars id={id} review={review} />
      <FlawKinds flaws={review.flaws} />
      <PlayedFor review={review} />
      <ColdChecks review={review} />
      <p className="soft amount">{amountWords(review)}</p>
    </>
  )
}

const countStates = (chunks: readonly ChunkFigures[]): string => {
  const count = (state: ChunkState): number => chunks.filter((each) => each.state === state).length
  return `${plural(chunks.length, 'chunk')}: ${states.map((state) => `${count(state)} ${state}`).join(', ')}.`
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
  const last = chunk.days.at(-1)
  return (
    <tr data-chunk={chunk.chunk}>
      <th scope="row">
        <ChunkName id={id} chunk={chunk} score={score} />
      </th>
      <td data-label="Clean share">{shareWords(chunk.share)}</td>
      <td data-label="Longest streak">{chunk.longestStreak}</td>
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
}: Pick<OnePieceReview, 'chunks'> & { readonly score: Score | undefined }) => {
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
      <RungPlot chunk={chunk} name={chunkWords(chunk, score)} />
      <p className="soft plot-key">
        A line is the tempi of a day, its stroke across the last one; the bars below are the longest
        streaks.
      </p>
    </section>
  )
}

const PlayedFor = ({ review: { substitutions, score } }: { readonly review: OnePieceReview }) =>
  substitutions.length === 0 ? null : (
    <section aria-labelledby="played-for">
      <h2 id="played-for">Which key was played for which</h2>
      <table className="narrow">
        <thead>
          <tr>
            <th scope="col">Written</th>
            <th scope="col">Played</th>
            <th scope="col" className="number">
              Times
            </th>
          </tr>
        </thead>
        <tbody>
          {substitutions.slice(0, 12).map(({ written, played, times }) => (
            <tr key={`${written} ${played}`}>
              <td>{keyWords(written, score)}</td>
              <td>{keyWords(played, score)}</td>
              <td className="number">{times}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {substitutions.length > 12 && (
        <p className="soft">The twelve most frequent of {substitutions.length}.</p>
      )}
    </section>
  )

const verdictWords = { clean: 'clean', flawed: 'flawed', brokenOff: 'broken off' } as const

const ColdChecks = ({
  review: { coldChecks, chunks, score },
}: {
  readonly review: OnePieceReview
}) => {
  if (coldChecks.length === 0) return null
  const passed = coldChecks.filter(({ verdict }) => verdict === 'clean').length
  return (
    <section aria-labelledby="cold">
      <h2 id="cold">Cold, on a later day</h2>
      <p>
        {passed} of {coldChecks.length} cold repetitions of what had been secure or kept{' '}
        {passed === 1 ? 'was' : 'were'} clean.
      </p>
      <div className="scroll">
        <table className="stack">
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Chunk</th>
              <th scope="col">Days since</th>
              <th scope="col">Verdict</th>
              <th scope="col">Now</th>
            </tr>
          </thead>
          <tbody>
            {coldChecks
              .toReversed()
              .slice(0, 20)
              .map(({ chunk, day, atEpochMs, daysSince, verdict, after }) => (
                <tr key={`${chunk} ${atEpochMs}`}>
                  <th scope="row">{dateWords(day)}</th>
                  <td data-label="Chunk">
                    {chunkWords(
                      chunks.find((each) => each.chunk === chunk),
                      score,
                    )}
                  </td>
                  <td data-label="Days since">{daysSince}</td>
                  <td data-label="Verdict">{verdictWords[verdict]}</td>
                  <td data-label="Now">{after}</td>
                </tr>
              ))}
          </tbody>
        </table>
      </div>
      {coldChecks.length > 20 && <p className="soft">The latest 20 of {coldChecks.length}.</p>}
    </section>
  )
}
