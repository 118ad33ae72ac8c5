import type { ReactNode } from 'react'
import type { Day } from '@/journal/day'
import { tempo, type Tempo } from '@/music/units'
import type { Asked } from '@/review/asked'
import type { ChunkDayFigures, ChunkFigures } from '@/review/pieceReview'
import { reviewText } from '@/text/review'
import { dateWords } from '@/text/dates'
import { phrase } from './phrase'
import { Followed, MadeOf, TallyCells } from './ReviewParts'
import { DateLabels, left, Plot, right, scaleOf, top } from './ReviewPlot'
import { tempoWords } from './reviewWords'

/** The most days that one picture holds. */
const mostDays = 56
const rungHeight = { plot: 150, gap: 28, strip: 44, labels: 30 }

/** The tempi of one chunk day by day, its goal, and below it the longest streak of each day. */
export const RungPlot = ({
  chunk,
  name,
  asked,
}: {
  readonly chunk: ChunkFigures
  readonly name: string
  readonly asked: Asked
}) => (
  <Plot
    sentence={phrase(describeRungs(chunk, name, { ...asked, chunk: chunk.chunk }))}
    height={top + rungHeight.plot + rungHeight.gap + rungHeight.strip + rungHeight.labels}
    draw={(width) => <Rungs chunk={chunk} width={width} />}
    table={<RungTable chunk={chunk} asked={{ ...asked, chunk: chunk.chunk }} />}
  />
)

const describeRungs = (chunk: ChunkFigures, name: string, asked: Asked): readonly ReactNode[] => {
  const { nothing, oneDay, days } = reviewText.rungs
  const [first, last] = [chunk.days[0], chunk.days.at(-1)]
  if (!first || !last) return [nothing(name)]
  const goal = chunk.drill && tempoWords(chunk.drill.goalTempo, chunk)
  const rung = (day: ChunkDayFigures, at: Tempo): ReactNode => (
    <Rung chunk={chunk} day={day.day} rung={at} asked={asked} />
  )
  const streak = <Followed n={chunk.longestStreak} asked={{ ...asked, streak: true }} />
  return first === last
    ? oneDay<ReactNode>(
        name,
        dateWords(first.day),
        rung(first, first.lowestRung),
        rung(first, first.highestRung),
        goal,
        streak,
      )
    : days<ReactNode>(
        name,
        { rung: rung(first, first.lastRung), day: dateWords(first.day) },
        { rung: rung(last, last.lastRung), day: dateWords(last.day) },
        goal,
        streak,
      )
}

/** A tempo of a chunk on a day, and what was played at it. */
export const Rung = ({
  chunk,
  day,
  rung,
  asked,
}: {
  readonly chunk: ChunkFigures
  readonly day: Day
  readonly rung: Tempo
  readonly asked: Asked
}) => <MadeOf asked={{ ...asked, from: day, to: day, rung }}>{tempoWords(rung, chunk)}</MadeOf>

/** Days are numbered as played: between two there may be weeks, which would leave no room for either. */
const Rungs = ({ chunk, width }: { readonly chunk: ChunkFigures; readonly width: number }) => {
  const days = chunk.days.slice(-mostDays)
  const dated = days.map(({ day }, at) => ({ from: day, at }))
  const { x, spacing } = scaleOf(dated, width)
  const goal = chunk.drill?.goalTempo
  const all = [
    ...days.flatMap(({ lowestRung, highestRung }) => [lowestRung, highestRung]),
    ...(goal === undefined ? [] : [goal]),
  ]
  const [low, high] = [tempo(Math.min(...all)), tempo(Math.max(...all))]
  const y = (rung: Tempo): number =>
    top + 8 + (high === low ? 0.5 : (high - rung) / (high - low)) * (rungHeight.plot - 16)
  const base = top + rungHeight.plot + rungHeight.gap + rungHeight.strip
  const most = Math.max(1, ...days.map(({ longestStreak }) => longestStreak))
  const size = Math.min(5, Math.max(2.2, spacing * 0.3))
  const near = (rung: Tempo): boolean => goal !== undefined && Math.abs(y(rung) - y(goal)) < 18
  const marked = [
    ...(goal === undefined ? [] : [goal]),
    ...[...new Set([low, high])].filter((rung) => !near(rung)),
  ]
  return (
    <>
      {marked.map((rung) => (
        <g key={rung} className={rung === goal ? 'plot-half' : 'plot-rule'}>
          <path d={`M${left} ${y(rung)}H${width - right}`} />
          <text x={left - 8} y={y(rung) + 5} textAnchor="end">
            {tempoWords(rung, chunk)}
          </text>
        </g>
      ))}
      {days.map((day, at) => (
        <g key={day.day}>
          <path className="plot-range" d={`M${x(at)} ${y(day.lowestRung)}V${y(day.highestRung)}`} />
          <path className="plot-tick" d={`M${x(at) - size} ${y(day.lastRung)}h${2 * size}`} />
          <rect
            className="plot-bar"
            x={x(at) - size}
            width={2 * size}
            y={base - (day.longestStreak / most) * (rungHeight.strip - 2)}
            height={(day.longestStreak / most) * (rungHeight.strip - 2)}
          />
        </g>
      ))}
      <g className="plot-rule">
        <path d={`M${left} ${base}H${width - right}`} />
        <text x={left - 8} y={base - rungHeight.strip + 12} textAnchor="end">
          {most}
        </text>
        <text x={left} y={base - rungHeight.strip - 7}>
          {reviewText.rungs.streak}
        </text>
      </g>
      <DateLabels periods={dated} x={x} width={width} y={base + 22} />
    </>
  )
}

const RungTable = ({ chunk, asked }: { readonly chunk: ChunkFigures; readonly asked: Asked }) => {
  const { columns } = reviewText
  return (
    <table className="stack by-day">
      <thead>
        <tr>
          <th scope="col">{columns.day}</th>
          <th scope="col">{columns.slowest}</th>
          <th scope="col">{columns.fastest}</th>
          <th scope="col">{columns.last}</th>
          <th scope="col">{columns.longestStreak}</th>
          <th scope="col">{columns.clean}</th>
          <th scope="col">{columns.flawed}</th>
          <th scope="col">{columns.brokenOff}</th>
        </tr>
      </thead>
      <tbody>
        {chunk.days.toReversed().map((day) => (
          <RungRow key={day.day} chunk={chunk} day={day} asked={asked} />
        ))}
      </tbody>
    </table>
  )
}

const RungRow = ({
  chunk,
  day: { day, lowestRung, highestRung, lastRung, longestStreak, tally },
  asked,
}: {
  readonly chunk: ChunkFigures
  readonly day: ChunkDayFigures
  readonly asked: Asked
}) => {
  const { columns } = reviewText
  const onDay: Asked = { ...asked, from: day, to: day }
  const rung = (at: Tempo): ReactNode => <Rung chunk={chunk} day={day} rung={at} asked={asked} />
  return (
    <tr>
      <th scope="row">{dateWords(day)}</th>
      <td data-label={columns.slowest}>{rung(lowestRung)}</td>
      <td data-label={columns.fastest}>{rung(highestRung)}</td>
      <td data-label={columns.last}>{rung(lastRung)}</td>
      <td data-label={columns.longestStreak}>
        <Followed n={longestStreak} asked={{ ...onDay, streak: true }} />
      </td>
      <TallyCells tally={tally} asked={onDay} />
    </tr>
  )
}
