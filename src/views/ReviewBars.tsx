import { useMemo } from 'react'
import type { OnePieceReview } from '@/app/reviewing'
import type { Pencil } from '@/engraving/pencil'
import type { PieceId } from '@/music/units'
import type { Score } from '@/music/music'
import type { BarFlaws, NoteFlaw } from '@/review/flawBars'
import { flawMarks } from './flawMarks'
import { Notation } from './Notation'
import { ChunkName } from './ReviewParts'
import { flawTimes, keyWords } from './reviewWords'
import { plural } from './words'

/** So many bars are shown as notation, and so many more in the list. */
const drawnBars = 3
const listedBars = 12

/** Where in the score the flaws are: the bars with most on the notation, the others as a list. */
export const ReviewBars = ({
  id,
  review,
}: {
  readonly id: PieceId
  readonly review: OnePieceReview
}) => {
  const { score, bars } = review
  if (!score || bars.length === 0) return null
  return (
    <section aria-labelledby="where">
      <h2 id="where">Where the flaws are</h2>
      <p className="soft">
        The bars with most flaws, with the marks of a drill: a ring around a note for which another
        key was struck, with the head of the key most often played in its place; dotted where the
        note was missing.
      </p>
      <ol className="hard-bars">
        {bars.slice(0, drawnBars).map((bar) => (
          <li key={bar.barIndex}>
            <HardBar score={score} bar={bar} review={review} />
            <p>
              <ChunkName
                id={id}
                score={score}
                chunk={review.chunks.find(({ chunk }) => chunk === bar.chunk)}
              />
            </p>
          </li>
        ))}
      </ol>
      <div className="scroll">
        <table className="bar-table">
          <thead>
            <tr>
              <th scope="col">Bar</th>
              <th scope="col" className="number">
                Flaws
              </th>
              <th scope="col">Most of them</th>
            </tr>
          </thead>
          <tbody>
            {bars.slice(0, listedBars).map((bar) => (
              <tr key={bar.barIndex}>
                <th scope="row">{bar.bar.number}</th>
                <td className="number">{bar.times}</td>
                <td>{bar.notes.slice(0, 2).map(noteWords(score)).join('; ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {bars.length > listedBars && (
        <p className="soft">
          The {listedBars} bars with most flaws of {plural(bars.length, 'bar')} with any.
        </p>
      )}
    </section>
  )
}

const noteWords =
  (score: Score) =>
  ({ note, kind, times }: NoteFlaw): string => {
    const written = score.notes.find(({ id }) => id === note)
    const name = written ? `${keyWords(written.key, score, written.start)}: ` : ''
    return `${name}${flawTimes(kind, times)}`
  }

const HardBar = ({
  score,
  bar,
  review,
}: {
  readonly score: Score
  readonly bar: BarFlaws
  readonly review: OnePieceReview
}) => {
  const end = score.bars[bar.barIndex + 1]?.start ?? score.end
  const stretch = { score, start: bar.bar.start, end, hand: 'both' } as const
  const marks = useMemo(() => flawMarks(score, bar, review), [score, bar, review])
  const onPencil = useMemo(
    () => (pencil: Pencil | undefined) => {
      for (const [slot, mark] of marks) pencil?.put(slot, mark)
    },
    [marks],
  )
  const words = bar.notes.slice(0, 3).map(noteWords(score)).join('; ')
  const label = `Bar ${bar.bar.number}, ${plural(bar.times, 'flaw')}: ${words}`
  return (
    <figure>
      <div className="preview">
        <Notation
          stretch={stretch}
          label={label}
          caller={`review ${bar.barIndex}`}
          onPencil={onPencil}
        />
      </div>
      <figcaption>{label}.</figcaption>
    </figure>
  )
}
