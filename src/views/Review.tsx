import { useCallback } from 'react'
import type { AllPage } from '@/review/pages'
import { formatRoute, parseRoute } from '@/app/route'
import type { PieceId } from '@/music/units'
import type { PieceFigures } from '@/review/allTime'
import type { Asked } from '@/review/asked'
import { useApp, useSelected } from './context'
import { Opened } from './Opened'
import { PageKeys, type PageKey } from './PageKeys'
import { ReviewPiece } from './ReviewPiece'
import { ReviewClean } from './ReviewClean'
import { ReviewChunks } from './ReviewChunks'
import { Amount, FlawKinds, Followed, Overruled } from './ReviewParts'
import { dateWords, shareWords } from './reviewWords'
import { musicKeys } from './FlawMusic'
import { allDrawn } from './teacherFile'
import { useReviewed, useReviewedRoutes } from './reviewed'
import { useLoaded } from './useLoaded'
import { useReturn } from './useReturn'
import { useTitles } from './useTitles'
import './review.css'

/** What all practice comes to, or that of one piece: the clean share first, minutes last. */
export const Review = ({ piece }: { readonly piece: PieceId | undefined }) =>
  piece === undefined ? <ReviewAll /> : <ReviewOne piece={piece} />

const ReviewAll = () => {
  const { reviews } = useReviewed()
  const { loaded, again } = useLoaded(reviews.all)
  useReturn(loaded.kind === 'ready')
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
  const { reviews } = useReviewed()
  const { loaded, again } = useLoaded(useCallback(() => reviews.piece(piece), [reviews, piece]))
  const title = loaded.kind === 'ready' ? loaded.value.title : undefined
  useReturn(loaded.kind === 'ready')
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
  const { reviews, student } = useReviewed()
  const routes = useReviewedRoutes()
  const all = routes.repetitions(piece === undefined ? {} : { piece })
  const teacher = routes.teacher(piece === undefined ? {} : { piece })
  const keys: readonly PageKey[] = [
    { key: 't', shown: 'T', words: 'teacher’s page', run: () => app.go(parseRoute(teacher)) },
    { key: 's', shown: 'S', words: 'students', run: () => app.go({ kind: 'students' }) },
    { key: 'r', shown: 'R', words: 'repetitions', run: () => app.go(parseRoute(all)) },
    ...(piece === undefined ? [] : musicKeys),
    { key: 'p', shown: 'P', words: 'print', run: print },
  ]
  return (
    <div className="review-head">
      {student && <p className="whose">{student.name}’s record, to read only</p>}
      <h1>{title}</h1>
      <p className="soft print-only">Review of {dateWords(reviews.today())}, Passagework</p>
      <p className="row no-print">
        {piece !== undefined && <a href={routes.review()}>All pieces</a>}
        {piece !== undefined && !student && (
          <a href={formatRoute({ kind: 'piece', piece })}>To the piece</a>
        )}
        {!student && <a href={formatRoute({ kind: 'journal' })}>The record as a file</a>}
        <a href={teacher}>Teacher’s page</a>
        <a href={formatRoute({ kind: 'students' })}>Students</a>
        <a href={all}>Repetitions</a>
        <button type="button" onClick={print}>
          Print
        </button>
        <PageKeys keys={keys} />
      </p>
    </div>
  )
}

/** With every line of the music on the paper. */
const print = (): void => {
  const page = document.querySelector('main')
  if (page) void allDrawn(page).then(() => window.print())
}

const Nothing = () => (
  <p>
    Nothing practised here yet. Choose one of the{' '}
    <a href={formatRoute({ kind: 'pieces' })}>pieces</a> and one small chunk of it; or take in a
    record that was <a href={formatRoute({ kind: 'journal' })}>saved as a file</a>.
  </p>
)

const everything: Asked = {}

const AllTime = ({ review }: { readonly review: AllPage }) => (
  <>
    <ReviewClean
      figures={review}
      periods={review.periods}
      trend={review.trend}
      asked={everything}
    />
    <section aria-labelledby="by-piece">
      <h2 id="by-piece">Piece by piece</h2>
      <Pieces pieces={review.pieces} />
    </section>
    <FlawKinds flaws={review.flaws} asked={everything} />
    <ReviewChunks pieces={review.pieces} />
    <Overruled overruled={review.overruled} asked={everything} />
    <Amount figures={review} asked={everything} />
  </>
)

const Pieces = ({ pieces }: { readonly pieces: readonly PieceFigures[] }) => {
  const app = useApp()
  const routes = useReviewedRoutes()
  const listed = useSelected(app.library.store, (state) => state.listed)
  const titleOf = useTitles(pieces)
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
          {pieces.map(({ piece, share, tally, days, lastDay }) => (
            <tr key={piece}>
              <th scope="row">
                <a href={routes.review(piece)}>{titleOf(piece)}</a>
                {!listed.some(({ id }) => id === piece) && (
                  <span className="soft"> not on this machine</span>
                )}
              </th>
              <td data-label="Clean share">{shareWords(share)}</td>
              <td data-label="Broken off">
                <Followed n={tally.brokenOff} asked={{ piece, verdict: 'brokenOff' }} />
              </td>
              <td data-label="Days">
                <Followed n={days} asked={{ piece }} />
              </td>
              <td data-label="Last">{dateWords(lastDay)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
