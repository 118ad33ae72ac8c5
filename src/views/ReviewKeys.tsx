import { useId, useState } from 'react'
import type { Substitution } from '@/journal/flawCounts'
import type { Score } from '@/music/music'
import type { Asked } from '@/review/asked'
import { reviewText } from '@/text/review'
import { Followed } from './ReviewParts'
import { keyWords } from './reviewWords'

/** So many are shown at first. */
const firstRows = 8

/** Which key was struck in place of which. */
export const PlayedFor = ({
  substitutions,
  score,
  asked,
}: {
  readonly substitutions: readonly Substitution[]
  /** Tells how keys are named; in C major where there is none. */
  readonly score: Score | undefined
  readonly asked: Asked
}) => {
  const id = useId()
  const [isWhole, setWhole] = useState(false)
  if (substitutions.length === 0) return null
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{reviewText.keysPlayed.title}</h2>
      <table className="narrow">
        <thead>
          <tr>
            <th scope="col">{reviewText.columns.written}</th>
            <th scope="col">{reviewText.columns.played}</th>
            <th scope="col" className="number">
              {reviewText.columns.times}
            </th>
          </tr>
        </thead>
        <tbody>
          {(isWhole ? substitutions : substitutions.slice(0, firstRows)).map(
            ({ written, played, times }) => (
              <tr key={`${written} ${played}`}>
                <td>{keyWords(written, score)}</td>
                <td>{keyWords(played, score)}</td>
                <td className="number">
                  <Followed n={times} asked={{ ...asked, written, played }} />
                </td>
              </tr>
            ),
          )}
        </tbody>
      </table>
      {!isWhole && substitutions.length > firstRows && (
        <button type="button" className="no-print" onClick={() => setWhole(true)}>
          {reviewText.showAll(substitutions.length)}
        </button>
      )}
    </section>
  )
}
