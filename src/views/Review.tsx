import { useCallback, type ReactNode } from 'react'
import type { AllReview } from '@/app/reviewing'
import { formatRoute } from '@/app/route'
import type { PieceId } from '@/music/units'
import type { PieceFigures } from '@/review/allTime'
import { useApp, useSelected } from './context'
import { overruleWords } from './Decisions'
import { ReviewPiece } from './ReviewPiece'
import { ReviewClean } from './ReviewClean'
import { FlawKinds } from './ReviewParts'
import { amountWords, dateWords, shareWords } from './reviewWords'
import { useLoaded, type Loaded } from './useLoaded'
import './review.css'

/** What all practice comes to, or that of one piece: the clean share first, minutes last. */
export const Review = ({ piece }: { readonly piece: PieceId | undefined }) =>
  piece === undefined ? <ReviewAll /> : <ReviewOne piece={piece} />

const ReviewAll = () => {
  const app = useApp()
  const { loaded, again } = useLoaded(app.records.all)
  return (
    <main className="page review">
      <Head title="Review" piece={undefined} />
      <Opened loaded={loaded} again={again}>
        {(review) => (review.repetitions === 0 ? <Nothing /> : <AllTime review={review} />)}
      </Opened>
    </main>
  )
}

const ReviewOne = ({ piece }: { readonly piece: PieceId }) => {
  const app = useApp()
  const { loaded, again } = useLoaded(useCallback(() => app.records.piece(piece), [app, piece]))
  const title = loaded.kind === 'ready' ? loaded.value.title : undefined
  return (
    <main className="page review">
      <Head title={title ?? 'Review of a piece'} piece={piece} />
      <Opened loaded={loaded} again={again}>
        {(review) =>
          review.repetitions === 0 ? <Nothing /> : <ReviewPiece id={piece} review={review} />
        }
      </Opened>
    </main>
  )
}

const Head = ({
  title,
  piece,
}: {
  readonly title: string
  readonly piece: PieceId | undefined
}) => {
  const app = useApp()
  return (
    <div className="review-head">
      <h1>{title}</h1>
      <p className="soft print-only">Review of {dateWords(app.records.today())}, Passagework</p>
      <p className="row no-print">
        {piece !== undefined && (
          <>
            <a href={formatRoute({ kind: 'review' })}>All pieces</a>
            <a href={formatRoute({ kind: 'piece', piece })}>To the piece</a>
          </>
        )}
        <a href={formatRoute({ kind: 'journal' })}>The record as a file</a>
        <button type="button" onClick={() => window.print()}>
          Print
        </button>
      </p>
    </div>
  )
}

const Opened = <T,>({
  loaded,
  again,
  children,
}: {
  readonly loaded: Loaded<T>
  readonly again: () => void
  readonly children: (value: T) => ReactNode
}) => {
  switch (loaded.kind) {
    case 'loading':
      return (
        <p className="soft" role="status">
          Adding up the days …
        </p>
      )
    case 'failed':
      return (
        <div className="notice" role="alert">
          <p>The review cannot be shown. {loaded.message}</p>
          <button type="button" onClick={again}>
            Try again
          </button>
        </div>
      )
    case 'ready':
      return children(loaded.value)
  }
}

const Nothing = () => (
  <p>
    Nothing practised here yet. Choose one of the{' '}
    <a href={formatRoute({ kind: 'pieces' })}>pieces</a> and one small chunk of it; or take in a
    record that was <a href={formatRoute({ kind: 'journal' })}>saved as a file</a>.
  </p>
)

const AllTime = ({ review }: { readonly review: AllReview }) => (
  <>
    <ReviewClean figures={review} periods={review.periods} trend={review.trend} />
    <section aria-labelledby="by-piece">
      <h2 id="by-piece">Piece by piece</h2>
      <Pieces pieces={review.pieces} />
    </section>
    <FlawKinds flaws={review.flaws} />
    {review.overruled.length > 0 && (
      <section aria-labelledby="overruled">
        <h2 id="overruled">What you decided otherwise</h2>
        <ul className="flaws">
          {review.overruled.map(({ what, times }) => (
            <li key={what}>
              {overruleWords[what]}, {times === 1 ? 'once' : `${times} times`}
            </li>
          ))}
        </ul>
      </section>
    )}
    <p className="soft amount">{amountWords(review)}</p>
  </>
)

const Pieces = ({ pieces }: { readonly pieces: readonly PieceFigures[] }) => {
  const app = useApp()
  const listed = useSelected(app.library.store, (state) => state.listed)
  return (
    <div className="scroll">
      <table className="by-piece stack">
        <thead>
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">Clean share</th>
            <th scope="col">Broken off</th>
            <th scope="col">Days</th>
            <th scope="col">Last</th>
          </tr>
        </thead>
        <tbody>
          {pieces.map(({ piece, title, share, tally, days, lastDay }) => (
            <tr key={piece}>
              <th scope="row">
                <a href={formatRoute({ kind: 'review', piece })}>
                  {listed.find(({ id }) => id === piece)?.title ?? title ?? 'A piece'}
                </a>
                {!listed.some(({ id }) => id === piece) && (
                  <span className="soft"> not on this machine</span>
                )}
              </th>
              <td data-label="Clean share">{shareWords(share)}</td>
              <td data-label="Broken off">{tally.brokenOff}</td>
              <td data-label="Days">{days}</td>
              <td data-label="Last">{dateWords(lastDay)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
