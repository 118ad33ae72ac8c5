import { useId, useState } from 'react'
import type { OnePieceReview } from '@/app/reviewing'
import type { Score } from '@/music/music'
import type { PieceId } from '@/music/units'
import type { Asked } from '@/review/asked'
import type { NoteFlaw } from '@/review/flawBars'
import { FlawMusic } from './FlawMusic'
import { ChunkName, Followed } from './ReviewParts'
import { useReviewedRoutes } from './reviewed'
import { flawTimes, locatedWords } from './reviewWords'
import { plural } from '@/text/plural'

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
  const [most] = bars
  const times = bars.reduce((sum, bar) => sum + bar.times, 0)
  return (
    <section aria-labelledby={heading} className="where">
      <h2 id={heading}>Where the flaws are</h2>
      <p>
        {plural(times, 'flaw')} in {plural(bars.length, 'bar')}
        {most && bars.length > 1 && `, most of them in bar ${most.bar.number}: ${most.times}`}.
      </p>
      <FlawMusic score={score} bars={bars} asked={asked} />
      <div className="scroll">
        <table className="bar-table">
          <caption>Bar by bar, those with most flaws first</caption>
          <thead>
            <tr>
              <th scope="col">Bar</th>
              <th scope="col" className="number">
                Flaws
              </th>
              <th scope="col">At which notes</th>
              <th scope="col">Chunk</th>
            </tr>
          </thead>
          <tbody>
            {(isWhole ? bars : bars.slice(0, firstBars)).map((bar) => (
              <tr key={bar.barIndex}>
                <th scope="row">{bar.bar.number}</th>
                <td className="number">
                  <Followed n={bar.times} asked={{ ...asked, bar: bar.barIndex }} />
                </td>
                <td>
                  <Notes
                    score={score}
                    notes={isWhole ? bar.notes : bar.notes.slice(0, 3)}
                    asked={asked}
                  />
                </td>
                <td>
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
          Show every note of {plural(bars.length, 'bar')}
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
