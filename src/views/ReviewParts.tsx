import { formatRoute } from '@/app/route'
import type { Score } from '@/music/music'
import type { PieceId } from '@/music/units'
import type { Asked } from '@/review/asked'
import type { Figures, OverruleCount } from '@/review/joinSums'
import type { ChunkFigures } from '@/review/pieceReview'
import { overruleWords } from './Decisions'
import { useReviewed, useReviewedRoutes } from './reviewed'
import { amountWords, chunkWords, grouped } from './reviewWords'
import { flawWords } from './words'

/** Its place in words; in one's own record it leads to its drill, where the piece is at hand. */
export const ChunkName = ({
  id,
  chunk,
  score,
}: {
  readonly id: PieceId
  readonly chunk: ChunkFigures | undefined
  readonly score: Score | undefined
}) => {
  const { student } = useReviewed()
  const drill = chunk?.drill
  if (!drill || !score || student) return chunkWords(chunk, score)
  const { place, form } = drill
  return (
    <a href={formatRoute({ kind: 'practice', piece: id, place, form })}>
      {chunkWords(chunk, score)}
    </a>
  )
}

/** A number, and the way down to the repetitions that it counts. */
export const Followed = ({ n, asked }: { readonly n: number; readonly asked: Asked }) => {
  const routes = useReviewedRoutes()
  return n === 0 ? '0' : <a href={routes.repetitions(asked)}>{grouped(n)}</a>
}

/** What it comes to in repetitions, time and days; it leads to them, day by day. */
export const Amount = ({
  figures,
  asked,
}: {
  readonly figures: Parameters<typeof amountWords>[0]
  readonly asked: Asked
}) => (
  <p className="soft amount">
    <a href={useReviewedRoutes().repetitions(asked)}>{amountWords(figures)}</a>
  </p>
)

/** What the person decided otherwise than the coach, and how often. */
export const Overruled = ({
  overruled,
  asked,
}: {
  readonly overruled: readonly OverruleCount[]
  readonly asked: Asked
}) => {
  const { student } = useReviewed()
  const routes = useReviewedRoutes()
  if (overruled.length === 0) return null
  return (
    <section aria-labelledby="overruled">
      <h2 id="overruled">What {student?.name ?? 'you'} decided otherwise</h2>
      <ul className="flaws">
        {overruled.map(({ what, times }) => (
          <li key={what}>
            {overruleWords[what]},{' '}
            <a href={routes.repetitions({ ...asked, overruled: what })}>
              {times === 1 ? 'once' : `${times} times`}
            </a>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** Each kind with a bar as long as it is frequent. */
export const FlawKinds = ({ flaws, asked }: Pick<Figures, 'flaws'> & { readonly asked: Asked }) => {
  const most = flaws[0]?.times ?? 1
  if (flaws.length === 0) return null
  return (
    <section aria-labelledby="kinds">
      <h2 id="kinds">What kind of flaw</h2>
      <table className="kinds">
        <thead>
          <tr>
            <th scope="col">Flaw</th>
            <th scope="col" className="number">
              Times
            </th>
            <td aria-hidden="true" />
          </tr>
        </thead>
        <tbody>
          {flaws.map(({ kind, times }) => (
            <tr key={kind}>
              <th scope="row">{flawWords[kind]}</th>
              <td className="number">
                <Followed n={times} asked={{ ...asked, flaw: kind }} />
              </td>
              <td className="kind-bar" aria-hidden="true">
                <svg viewBox="0 0 100 10" preserveAspectRatio="none">
                  <rect className="plot-bar" width={(times / most) * 100} height="10" />
                </svg>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
