import { useId, type ReactNode } from 'react'
import type { OnePieceReview } from '@/app/reviewing'
import type { Asked } from '@/review/asked'
import type { ColdFigures } from '@/review/coldFigures'
import { reviewText } from '@/text/review'
import { dateWords } from '@/text/dates'
import { phrase } from './phrase'
import { Followed, MadeOf } from './ReviewParts'
import { verdictWords } from './repetitionWords'
import { useReviewedRoutes } from './reviewed'
import { boundsOf, chunkWords } from './reviewWords'
import { percent } from './words'

/** So many are shown: the latest. */
const latest = 20

/** What had been secure or kept, as the first thing on a later day. */
export const ColdChecks = ({
  review: { coldChecks, cold, chunks, score },
  asked,
}: {
  readonly review: Pick<OnePieceReview, 'coldChecks' | 'cold' | 'chunks' | 'score'>
  readonly asked: Asked
}) => {
  const id = useId()
  const routes = useReviewedRoutes()
  if (coldChecks.length === 0) return null
  const { columns, cold: words } = reviewText
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{words.title}</h2>
      <ColdShare cold={cold} asked={asked} />
      <div className="scroll">
        <table className="stack by-day">
          <thead>
            <tr>
              <th scope="col">{columns.day}</th>
              <th scope="col">{columns.chunk}</th>
              <th scope="col">{columns.daysSince}</th>
              <th scope="col">{columns.verdict}</th>
              <th scope="col">{columns.afterwards}</th>
            </tr>
          </thead>
          <tbody>
            {coldChecks
              .toReversed()
              .slice(0, latest)
              .map(({ chunk, day, atEpochMs, daysSince, verdict, after }) => (
                <tr key={`${chunk} ${atEpochMs}`}>
                  <th scope="row">
                    <a
                      href={routes.repetitions({ ...asked, chunk, from: day, to: day, cold: true })}
                    >
                      {dateWords(day)}
                    </a>
                  </th>
                  <td data-label={columns.chunk}>
                    {chunkWords(
                      chunks.find((each) => each.chunk === chunk),
                      score,
                    )}
                  </td>
                  <td data-label={columns.daysSince}>{daysSince}</td>
                  <td data-label={columns.verdict}>{verdictWords[verdict]}</td>
                  <td data-label={columns.afterwards}>{reviewText.states.names[after]}</td>
                </tr>
              ))}
          </tbody>
        </table>
      </div>
      {coldChecks.length > latest && (
        <p className="soft">
          {phrase(
            words.latest<ReactNode>(
              latest,
              <Followed n={coldChecks.length} asked={{ ...asked, cold: true }} />,
            ),
          )}
        </p>
      )}
    </section>
  )
}

/** How many, how many held, and how sure that is. */
export const ColdShare = ({
  cold: { checks, held, failed, brokenOff, share },
  asked,
}: {
  readonly cold: ColdFigures
  readonly asked: Asked
}) => (
  <p>
    {phrase(
      reviewText.cold.all<ReactNode>(
        checks,
        <Followed n={checks} asked={{ ...asked, cold: true }} />,
        <Followed n={held} asked={{ ...asked, cold: true, verdict: 'clean' }} />,
        <Followed n={failed} asked={{ ...asked, cold: true, verdict: 'flawed' }} />,
        <Followed n={brokenOff} asked={{ ...asked, cold: true, verdict: 'brokenOff' }} />,
      ),
    )}
    {share &&
      phrase(
        reviewText.cold.share<ReactNode>(
          <MadeOf asked={{ ...asked, cold: true, ended: true }}>{percent(share.value)}</MadeOf>,
          ...boundsOf(share),
        ),
      )}
  </p>
)
