import { useState } from 'react'
import type { Periods } from '@/review/pages'
import type { Asked } from '@/review/asked'
import type { Figures } from '@/review/joinSums'
import type { PeriodStep } from '@/review/periods'
import type { ShareTrend } from '@/review/proportion'
import { Followed } from './ReviewParts'
import { latest, SharePlot } from './ReviewShares'
import { describeTrend, rangeWords } from './reviewWords'
import { percent } from './words'

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
  readonly trend: ShareTrend | undefined
  /** What all repetitions counted here have in common. */
  readonly asked: Asked
}) => {
  const [step, setStep] = useState(() => firstStep(periods))
  if (!share) return <NoShare brokenOff={tally.brokenOff} asked={asked} />
  return (
    <section className="review-clean" aria-labelledby="clean">
      <h2 id="clean" className="unseen">
        Clean share
      </h2>
      <p className="share" data-share={share.value}>
        <b>{percent(share.value)}</b> clean
        <span className="soft">
          between {rangeWords(share, 'and')} % in 95 of 100 cases;{' '}
          <Followed n={tally.clean} asked={{ ...asked, verdict: 'clean' }} /> clean,{' '}
          <Followed n={tally.flawed} asked={{ ...asked, verdict: 'flawed' }} /> flawed;{' '}
          <Followed n={tally.brokenOff} asked={{ ...asked, verdict: 'brokenOff' }} /> broken off
        </span>
      </p>
      <p>{describeTrend(trend)}</p>
      <fieldset className="row no-print">
        <legend className="unseen">Show by</legend>
        {steps.map((each) => (
          <label key={each} className="row tight">
            <input
              type="radio"
              name="step"
              checked={each === step}
              onChange={() => setStep(each)}
            />
            by {each}
          </label>
        ))}
      </fieldset>
      <SharePlot periods={latest(periods[step], step)} step={step} asked={asked} />
      <p className="soft plot-key">
        A dot is the clean share; the line through it, where it lies in 95 of 100 cases: long where
        there is little to go by. Broken off is counted apart, below.
      </p>
    </section>
  )
}

/** Where nothing was clean or flawed there is no share, and no picture of it. */
const NoShare = ({ brokenOff, asked }: { readonly brokenOff: number; readonly asked: Asked }) => (
  <section className="review-clean" aria-labelledby="clean">
    <h2 id="clean">No clean share yet</h2>
    <p className="share">
      <Followed n={brokenOff} asked={{ ...asked, verdict: 'brokenOff' }} /> broken off
    </p>
    <p>
      No repetition has come to its end so far, so there is nothing to be clean or flawed. A smaller
      chunk, or a slower tempo, is easier to bring to its end.
    </p>
  </section>
)
