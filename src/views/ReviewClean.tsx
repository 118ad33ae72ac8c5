import { useState, type ReactNode } from 'react'
import type { Periods } from '@/review/pages'
import type { Asked } from '@/review/asked'
import type { Figures } from '@/review/joinSums'
import type { PeriodStep } from '@/review/periods'
import type { Trend } from '@/review/allTime'
import { reviewText } from '@/text/review'
import { CleanShare, Followed, MadeOf } from './ReviewParts'
import { latest, SharePlot } from './ReviewShares'
import { phrase } from './phrase'
import { describeTrend } from './reviewWords'

const steps: readonly PeriodStep[] = ['day', 'week', 'month']

/** Days while they fit into one picture, then weeks, then months. */
const firstStep = ({ day }: Periods): PeriodStep => {
  const span = day.at(-1)?.at ?? 0
  return span < 43 ? 'day' : span < 26 * 7 ? 'week' : 'month'
}

/** How much was clean, with its interval, and over time; broken off apart. */
export const ReviewClean = ({
  figures: { share, tally },
  periods,
  trend,
  asked,
}: {
  readonly figures: Figures
  readonly periods: Periods
  readonly trend: Trend | undefined
  /** What all repetitions counted here have in common. */
  readonly asked: Asked
}) => {
  const [step, setStep] = useState(() => firstStep(periods))
  const words = reviewText.share
  if (!share) return <NoShare brokenOff={tally.brokenOff} asked={asked} />
  return (
    <section className="review-clean" aria-labelledby="clean">
      <h2 id="clean" className="unseen">
        {words.title}
      </h2>
      <CleanShare share={share} tally={tally} asked={asked} />
      <p>
        {phrase(
          describeTrend<ReactNode>(trend, (side, share) => (
            <MadeOf asked={{ ...asked, ...trend?.days[side], ended: true }}>{share}</MadeOf>
          )),
        )}
      </p>
      <fieldset className="row no-print">
        <legend className="unseen">{reviewText.shares.showBy}</legend>
        {steps.map((each) => (
          <label key={each} className="row tight">
            <input
              type="radio"
              name="step"
              checked={each === step}
              onChange={() => setStep(each)}
            />
            {reviewText.shares.by(each)}
          </label>
        ))}
      </fieldset>
      <SharePlot periods={latest(periods[step], step)} step={step} asked={asked} />
      <p className="soft plot-key">{reviewText.shares.key}</p>
    </section>
  )
}

/** Where nothing was clean or flawed there is no share, and no picture of it. */
const NoShare = ({ brokenOff, asked }: { readonly brokenOff: number; readonly asked: Asked }) => (
  <section className="review-clean" aria-labelledby="clean">
    <h2 id="clean">{reviewText.share.none}</h2>
    <p className="share">
      {phrase(
        reviewText.share.onlyBrokenOff<ReactNode>(
          <Followed n={brokenOff} asked={{ ...asked, verdict: 'brokenOff' }} />,
        ),
      )}
    </p>
    <p>{reviewText.share.whyNone}</p>
  </section>
)
