import type { ReactNode } from 'react'
import type { Asked } from '@/review/asked'
import type { Period, PeriodStep } from '@/review/periods'
import { reviewText } from '@/text/review'
import { dateWords } from '@/text/dates'
import { phrase } from './phrase'
import { Followed, MadeOf, Share, TallyCells } from './ReviewParts'
import { DateLabels, left, Plot, right, scaleOf, top } from './ReviewPlot'
import { describeShares } from './reviewWords'
import { percent } from './words'

/** The most steps that one picture holds: eight weeks of days, two years of weeks. */
const mostSteps: Readonly<Record<PeriodStep, number>> = { day: 56, week: 104, month: 120 }

/** The latest periods that fit into one picture. */
export const latest = (periods: readonly Period[], step: PeriodStep): readonly Period[] => {
  const last = periods.at(-1)?.at ?? 0
  return periods.filter(({ at }) => at > last - mostSteps[step])
}

const shareHeight = { plot: 170, gap: 26, strip: 44, labels: 30 }

/** The clean share with its interval, and below it how many were broken off. */
export const SharePlot = ({
  periods,
  step,
  asked,
}: {
  readonly periods: readonly Period[]
  readonly step: PeriodStep
  readonly asked: Asked
}) => (
  <Plot
    sentence={phrase(
      describeShares<ReactNode>(periods, step, ({ firstDay, lastDay }, words) => (
        <MadeOf asked={{ ...asked, from: firstDay, to: lastDay, ended: true }}>{words}</MadeOf>
      )),
    )}
    height={top + shareHeight.plot + shareHeight.gap + shareHeight.strip + shareHeight.labels}
    draw={(width) => <Shares periods={periods} width={width} />}
    table={<ShareTable periods={periods} step={step} asked={asked} />}
  />
)

const Shares = ({
  periods,
  width,
}: {
  readonly periods: readonly Period[]
  readonly width: number
}) => {
  const { x, spacing } = scaleOf(periods, width)
  const y = (share: number): number => top + (1 - share) * shareHeight.plot
  const base = top + shareHeight.plot + shareHeight.gap + shareHeight.strip
  const brokenOff = ({ tally, repetitions }: Period): number => tally.brokenOff / repetitions
  // At least a tenth, so that a few are not made to look like many.
  const most = Math.max(0.1, ...periods.map(brokenOff))
  const size = Math.min(5, Math.max(2.2, spacing * 0.3))
  return (
    <>
      {[0, 0.5, 1].map((share) => (
        <g key={share} className={share === 0.5 ? 'plot-half' : 'plot-rule'}>
          <path d={`M${left} ${y(share)}H${width - right}`} />
          <text x={left - 8} y={y(share) + 5} textAnchor="end">
            {percent(share)}
          </text>
        </g>
      ))}
      {periods.map((period) =>
        period.share ? (
          <g key={period.from}>
            <path
              className="plot-range"
              d={`M${x(period.at)} ${y(period.share.low)}V${y(period.share.high)}`}
            />
            <circle className="plot-point" cx={x(period.at)} cy={y(period.share.value)} r={size} />
          </g>
        ) : null,
      )}
      <g className="plot-rule">
        <path d={`M${left} ${base}H${width - right}`} />
        <text x={left - 8} y={base - shareHeight.strip + 12} textAnchor="end">
          {percent(most)}
        </text>
        <text x={left} y={base - shareHeight.strip - 7}>
          {reviewText.shares.brokenOff}
        </text>
      </g>
      {periods.map((period) => {
        const tall = (brokenOff(period) / most) * (shareHeight.strip - 2)
        return (
          <rect
            key={period.from}
            className="plot-bar"
            x={x(period.at) - size}
            y={base - tall}
            width={2 * size}
            height={tall}
          />
        )
      })}
      <DateLabels periods={periods} x={x} width={width} y={base + 22} />
    </>
  )
}

const ShareTable = ({
  periods,
  step,
  asked,
}: {
  readonly periods: readonly Period[]
  readonly step: PeriodStep
  readonly asked: Asked
}) => {
  const { columns } = reviewText
  return (
    <table className="stack by-day">
      <thead>
        <tr>
          <th scope="col">{columns[step]}</th>
          <th scope="col">{columns.cleanShare}</th>
          <th scope="col">{columns.clean}</th>
          <th scope="col">{columns.flawed}</th>
          <th scope="col">{columns.brokenOff}</th>
          <th scope="col">{columns.longestStreak}</th>
          <th scope="col">{columns.minutes}</th>
        </tr>
      </thead>
      <tbody>
        {periods.toReversed().map((period) => (
          <ShareRow
            key={period.from}
            period={period}
            asked={{ ...asked, from: period.firstDay, to: period.lastDay }}
          />
        ))}
      </tbody>
    </table>
  )
}

const ShareRow = ({
  period: { from, share, tally, longestStreak, minutes },
  asked,
}: {
  readonly period: Period
  /** With its days. */
  readonly asked: Asked
}) => {
  const { columns } = reviewText
  return (
    <tr>
      <th scope="row">{dateWords(from)}</th>
      <td data-label={columns.cleanShare}>
        <Share share={share} asked={asked} />
      </td>
      <TallyCells tally={tally} asked={asked} />
      <td data-label={columns.longestStreak}>
        <Followed n={longestStreak} asked={{ ...asked, streak: true }} />
      </td>
      <td data-label={columns.minutes}>
        <Followed n={Math.round(minutes)} asked={asked} />
      </td>
    </tr>
  )
}
