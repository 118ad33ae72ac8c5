import { useId } from 'react'
import type { OnePieceReview } from '@/app/reviewing'
import type { Asked } from '@/review/asked'
import type { ColdFigures } from '@/review/coldFigures'
import { Followed } from './ReviewParts'
import { verdictWords } from './repetitionWords'
import { useReviewedRoutes } from './reviewed'
import { chunkWords, dateWords, rangeWords } from './reviewWords'
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
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>Cold, on a later day</h2>
      <ColdShare cold={cold} asked={asked} />
      <div className="scroll">
        <table className="stack">
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Chunk</th>
              <th scope="col">Days since</th>
              <th scope="col">Verdict</th>
              <th scope="col">Then</th>
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
                  <td data-label="Chunk">
                    {chunkWords(
                      chunks.find((each) => each.chunk === chunk),
                      score,
                    )}
                  </td>
                  <td data-label="Days since">{daysSince}</td>
                  <td data-label="Verdict">{verdictWords[verdict]}</td>
                  <td data-label="Then">{after}</td>
                </tr>
              ))}
          </tbody>
        </table>
      </div>
      {coldChecks.length > latest && (
        <p className="soft">
          The latest {latest} of {coldChecks.length}.
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
    <Followed n={checks} asked={{ ...asked, cold: true }} /> cold{' '}
    {checks === 1 ? 'check' : 'checks'} of what had been secure or kept:{' '}
    <Followed n={held} asked={{ ...asked, cold: true, verdict: 'clean' }} /> held,{' '}
    <Followed n={failed} asked={{ ...asked, cold: true, verdict: 'flawed' }} /> failed;{' '}
    <Followed n={brokenOff} asked={{ ...asked, cold: true, verdict: 'brokenOff' }} /> broken off.
    {share &&
      ` ${percent(share.value)} held, between ${rangeWords(share, 'and')} % in 95 of 100 cases.`}
  </p>
)
