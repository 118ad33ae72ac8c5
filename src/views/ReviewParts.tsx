import { formatRoute } from '@/app/route'
import type { ReactNode } from 'react'
import type { Score } from '@/music/music'
import type { PieceId } from '@/music/units'
import type { Day } from '@/journal/day'
import type { Tally } from '@/journal/sums'
import type { Asked } from '@/review/asked'
import type { ChunkState } from '@/review/chunkStates'
import type { StateCounts } from '@/review/coldFigures'
import type { Figures, OverruleCount } from '@/review/joinSums'
import type { ChunkFigures } from '@/review/pieceReview'
import type { Estimate } from '@/review/proportion'
import { flawsText } from '@/text/flaws'
import { reviewText } from '@/text/review'
import { dateWords } from '@/text/dates'
import { grouped } from '@/text/numbers'
import { overruleWords } from './Decisions'
import { useReviewed, useReviewedRoutes } from './reviewed'
import { phrase } from './phrase'
import { amountWords, boundsOf, chunkWords, shareWords, stateOrder } from './reviewWords'
import { flawWords, percent } from './words'

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

/** A figure that counts no repetitions, and the way down to those that it is made of. */
export const MadeOf = ({
  asked,
  children,
}: {
  readonly asked: Asked
  readonly children: ReactNode
}) => <a href={useReviewedRoutes().repetitions(asked)}>{children}</a>

/** A clean share with its interval, made of what came to its end; a dash where nothing did. */
export const Share = ({
  share,
  asked,
}: {
  readonly share: Estimate | undefined
  readonly asked: Asked
}) =>
  share ? <MadeOf asked={{ ...asked, ended: true }}>{shareWords(share)}</MadeOf> : shareWords(share)

/** The clean share, how sure it is, and what it is made of; each figure leads to its repetitions. */
export const CleanShare = ({
  share,
  tally,
  asked,
}: {
  readonly share: Estimate | undefined
  readonly tally: Tally
  /** What all repetitions counted here have in common. */
  readonly asked: Asked
}) => {
  const words = reviewText.share
  const value = <b>{share ? percent(share.value) : '–'}</b>
  const count = (verdict: keyof Tally): ReactNode => (
    <Followed n={tally[verdict]} asked={{ ...asked, verdict }} />
  )
  return (
    <p className="share" data-share={share?.value}>
      {phrase(
        words.clean<ReactNode>(
          share ? <MadeOf asked={{ ...asked, ended: true }}>{value}</MadeOf> : value,
        ),
      )}
      <span className="soft">
        {share && words.within(...boundsOf(share))}
        {phrase(words.tally<ReactNode>(count('clean'), count('flawed'), count('brokenOff')))}
      </span>
    </p>
  )
}

const verdicts = ['clean', 'flawed', 'brokenOff'] as const

/** How many were clean, flawed, broken off, a cell for each. */
export const TallyCells = ({ tally, asked }: { readonly tally: Tally; readonly asked: Asked }) =>
  verdicts.map((verdict) => (
    <td key={verdict} data-label={reviewText.columns[verdict]}>
      <Followed n={tally[verdict]} asked={{ ...asked, verdict }} />
    </td>
  ))

/** A day, and what was played on it. */
export const OnDay = ({ day, asked }: { readonly day: Day; readonly asked: Asked }) => (
  <MadeOf asked={{ ...asked, from: day, to: day }}>{dateWords(day)}</MadeOf>
)

/** How many chunks stand how; each leads to the repetitions that made them so. */
export const States = ({
  states,
  asked,
}: {
  readonly states: StateCounts
  readonly asked: Asked
}) => {
  const chunks = stateOrder.reduce((sum, state) => sum + states[state], 0)
  const count = (state: ChunkState): ReactNode => (
    <Followed n={states[state]} asked={{ ...asked, state }} />
  )
  return phrase(
    reviewText.states.all<ReactNode>(chunks, <Followed n={chunks} asked={asked} />, {
      slipped: count('slipped'),
      secure: count('secure'),
      kept: count('kept'),
      practised: count('practised'),
    }),
  )
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
      <h2 id="overruled">
        {student ? reviewText.overruled.theirs(student.name) : reviewText.overruled.yours}
      </h2>
      <ul className="flaws">
        {overruled.map(({ what, times }) => (
          <li key={what}>
            {overruleWords[what]},{' '}
            <a href={routes.repetitions({ ...asked, overruled: what })}>{flawsText.times(times)}</a>
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
      <h2 id="kinds">{reviewText.kinds.title}</h2>
      <table className="kinds">
        <thead>
          <tr>
            <th scope="col">{reviewText.columns.flaw}</th>
            <th scope="col" className="number">
              {reviewText.columns.times}
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
