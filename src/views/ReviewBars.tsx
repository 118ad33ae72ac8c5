import { useId, useState, type ReactNode } from 'react'
import type { OnePieceReview } from '@/app/reviewing'
import type { Score } from '@/music/music'
import type { PieceId } from '@/music/units'
import type { Asked } from '@/review/asked'
import type { NoteFlaw } from '@/review/flawBars'
import { reviewText } from '@/text/review'
import { FlawMusic } from './FlawMusic'
import { phrase } from './phrase'
import { ChunkName, Followed } from './ReviewParts'
import { useReviewedRoutes } from './reviewed'
import { flawTimes, locatedWords } from './reviewWords'

/** So many bars are listed at first. */
const firstBars = 8

/** Where in the score the flaws are: on the notation, and bar by bar. */
export const ReviewBars = ({
  id,
  review,
  asked,
}: {
  readonly id: PieceId
  readonly review: Pick<OnePieceReview, 'score' | 'bars' | 'chunks'>
  readonly asked: Asked
}) => {
  const { score, bars, chunks } = review
  const heading = useId()
  const [isWhole, setWhole] = useState(false)
  if (!score || bars.length === 0) return null
  const { columns, where } = reviewText
  const [most] = bars
  const times = bars.reduce((sum, bar) => sum + bar.times, 0)
  const all = <Followed n={times} asked={{ ...asked, verdict: 'flawed' }} />
  return (
    <section aria-labelledby={heading} className="where">
      <h2 id={heading}>{where.title}</h2>
      <p>
        {phrase(
          most && bars.length > 1
            ? where.most<ReactNode>(
                times,
                all,
                bars.length,
                most.bar.number,
                <Followed n={most.times} asked={{ ...asked, bar: most.barIndex }} />,
              )
            : where.all<ReactNode>(times, all, bars.length),
        )}
      </p>
      <FlawMusic score={score} bars={bars} asked={asked} />
      <div className="scroll">
        <table className="bar-table stack">
          <caption>{where.barByBar}</caption>
          <thead>
            <tr>
              <th scope="col">{columns.bar}</th>
              <th scope="col" className="number">
                {columns.flaws}
              </th>
              <th scope="col">{columns.notes}</th>
              <th scope="col">{columns.chunk}</th>
            </tr>
          </thead>
          <tbody>
            {(isWhole ? bars : bars.slice(0, firstBars)).map((bar) => (
              <tr key={bar.barIndex}>
                <th scope="row" data-label={columns.bar}>
                  {bar.bar.number}
                </th>
                <td className="number" data-label={columns.flaws}>
                  <Followed n={bar.times} asked={{ ...asked, bar: bar.barIndex }} />
                </td>
                <td data-label={columns.notes}>
                  <Notes
                    score={score}
                    notes={isWhole ? bar.notes : bar.notes.slice(0, 3)}
                    asked={asked}
                  />
                </td>
                <td data-label={columns.chunk}>
                  <ChunkName
                    id={id}
                    score={score}
                    chunk={chunks.find(({ chunk }) => chunk === bar.chunk)}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {!isWhole && (bars.length > firstBars || bars.some(({ notes }) => notes.length > 3)) && (
        <button type="button" className="no-print" onClick={() => setWhole(true)}>
          {where.showNotes(bars.length)}
        </button>
      )}
    </section>
  )
}

/** Each leads to the repetitions in which that went wrong there. */
const Notes = ({
  score,
  notes,
  asked,
}: {
  readonly score: Score
  readonly notes: readonly NoteFlaw[]
  readonly asked: Asked
}) => {
  const routes = useReviewedRoutes()
  return (
    <ul className="in-a-row">
      {notes.map(({ kind, times, note, until }) => {
        const at = { note, ...(until === undefined ? {} : { until }) }
        return (
          <li key={`${note} ${until} ${kind}`}>
            <a href={routes.repetitions({ ...asked, ...at, flaw: kind })}>
              {locatedWords(at, score)}: {flawTimes(kind, times)}
            </a>
          </li>
        )
      })}
    </ul>
  )
}
