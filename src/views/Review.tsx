import { useCallback, useRef, type ReactNode } from 'react'
import type { AllPage } from '@/review/pages'
import { formatRoute, parseRoute } from '@/app/route'
import type { PieceId } from '@/music/units'
import type { PieceFigures } from '@/review/allTime'
import type { Asked } from '@/review/asked'
import { reviewText } from '@/text/review'
import { dateWords } from '@/text/dates'
import { useApp, useSelected } from './context'
import { Opened } from './Opened'
import { PageKeys, type PageKey } from './PageKeys'
import { ReviewPiece } from './ReviewPiece'
import { ReviewClean } from './ReviewClean'
import { ReviewChunks } from './ReviewChunks'
import { Amount, FlawKinds, Followed, OnDay, Overruled, Share } from './ReviewParts'
import { phrase } from './phrase'
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
      <Head title={reviewText.title} piece={undefined} />
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
      <Head title={title ?? reviewText.ofPiece} piece={piece} />
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
  const { head, keys: words } = reviewText
  const toAll = useRef<HTMLAnchorElement>(null)
  const keys: readonly PageKey[] = [
    { key: 't', shown: 'T', words: words.teacher, run: () => app.go(parseRoute(teacher)) },
    { key: 's', shown: 'S', words: words.students, run: () => app.go({ kind: 'students' }) },
    { key: 'r', shown: 'R', words: words.repetitions, run: () => toAll.current?.click() },
    ...(piece === undefined ? [] : musicKeys()),
    { key: 'p', shown: 'P', words: words.print, run: print },
  ]
  return (
    <div className="review-head">
      {student && <p className="whose">{reviewText.theirs(student.name)}</p>}
      <h1>{title}</h1>
      <p className="soft print-only">{reviewText.printedOn(dateWords(reviews.today()))}</p>
      <p className="row no-print">
        {piece !== undefined && <a href={routes.review()}>{head.allPieces}</a>}
        {piece !== undefined && !student && (
          <a href={formatRoute({ kind: 'piece', piece })}>{head.toPiece}</a>
        )}
        {!student && <a href={formatRoute({ kind: 'journal' })}>{head.record}</a>}
        <a href={teacher}>{head.teacher}</a>
        <a href={formatRoute({ kind: 'students' })}>{head.students}</a>
        <a href={all} ref={toAll}>
          {head.repetitions}
        </a>
        <button type="button" onClick={print}>
          {head.print}
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
    {phrase(
      reviewText.nothing<ReactNode>((kind, words) => <a href={formatRoute({ kind })}>{words}</a>),
    )}
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
      <h2 id="by-piece">{reviewText.pieces.title}</h2>
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
  const { columns } = reviewText
  return (
    <div className="scroll">
      <table className="by-piece stack">
        <thead>
          <tr>
            <th scope="col">{columns.piece}</th>
            <th scope="col">{columns.cleanShare}</th>
            <th scope="col">{columns.brokenOff}</th>
            <th scope="col">{columns.days}</th>
            <th scope="col">{columns.last}</th>
          </tr>
        </thead>
        <tbody>
          {pieces.map(({ piece, share, tally, days, lastDay }) => (
            <tr key={piece}>
              <th scope="row">
                <a href={routes.review(piece)}>{titleOf(piece)}</a>
                {!listed.some(({ id }) => id === piece) && (
                  <span className="soft">{reviewText.pieces.elsewhere}</span>
                )}
              </th>
              <td data-label={columns.cleanShare}>
                <Share share={share} asked={{ piece }} />
              </td>
              <td data-label={columns.brokenOff}>
                <Followed n={tally.brokenOff} asked={{ piece, verdict: 'brokenOff' }} />
              </td>
              <td data-label={columns.days}>
                <Followed n={days} asked={{ piece }} />
              </td>
              <td data-label={columns.last}>
                <OnDay day={lastDay} asked={{ piece }} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
