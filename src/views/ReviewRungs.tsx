import { tempo, type Tempo } from '@/music/units'
import type { Asked } from '@/review/asked'
import type { ChunkFigures } from '@/review/pieceReview'
import { Followed } from './ReviewParts'
import { DateLabels, left, Plot, right, scaleOf, top } from './ReviewPlot'
import { dateWords, tempoWords } from './reviewWords'

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
    sentence={describeRungs(chunk, name)}
    height={top + rungHeight.plot + rungHeight.gap + rungHeight.strip + rungHeight.labels}
    draw={(width) => <Rungs chunk={chunk} width={width} />}
    table={<RungTable chunk={chunk} asked={{ ...asked, chunk: chunk.chunk }} />}
  />
)

const describeRungs = (chunk: ChunkFigures, name: string): string => {
  const [first, last] = [chunk.days[0], chunk.days.at(-1)]
  if (!first || !last) return `Nothing was played of ${name}.`
  const goal = chunk.drill ? `, the goal is ${tempoWords(chunk.drill.goalTempo, chunk)}` : ''
  const to =
    first === last
      ? `on ${dateWords(first.day)}, from ${tempoWords(first.lowestRung, chunk)} to ${tempoWords(first.highestRung, chunk)}`
      : `from ${tempoWords(first.lastRung, chunk)} at the end of ${dateWords(first.day)} to ${tempoWords(last.lastRung, chunk)} at the end of ${dateWords(last.day)}`
  return `Tempo of ${name}, ${to}${goal}; longest streak ${chunk.longestStreak}.`
}

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
          longest streak
        </text>
      </g>
      <DateLabels periods={dated} x={x} width={width} y={base + 22} />
    </>
  )
}

const RungTable = ({ chunk, asked }: { readonly chunk: ChunkFigures; readonly asked: Asked }) => (
  <table className="stack">
    <thead>
      <tr>
        <th scope="col">Day</th>
        <th scope="col">Slowest</th>
        <th scope="col">Fastest</th>
        <th scope="col">Last</th>
        <th scope="col">Longest streak</th>
        <th scope="col">Clean</th>
        <th scope="col">Flawed</th>
        <th scope="col">Broken off</th>
      </tr>
    </thead>
    <tbody>
      {chunk.days.toReversed().map((day) => (
        <tr key={day.day}>
          <th scope="row">{dateWords(day.day)}</th>
          <td data-label="Slowest">{tempoWords(day.lowestRung, chunk)}</td>
          <td data-label="Fastest">{tempoWords(day.highestRung, chunk)}</td>
          <td data-label="Last">{tempoWords(day.lastRung, chunk)}</td>
          <td data-label="Longest streak">
            <Followed
              n={day.longestStreak}
              asked={{ ...asked, from: day.day, to: day.day, streak: true }}
            />
          </td>
          <td data-label="Clean">
            <Followed
              n={day.tally.clean}
              asked={{ ...asked, from: day.day, to: day.day, verdict: 'clean' }}
            />
          </td>
          <td data-label="Flawed">
            <Followed
              n={day.tally.flawed}
              asked={{ ...asked, from: day.day, to: day.day, verdict: 'flawed' }}
            />
          </td>
          <td data-label="Broken off">
            <Followed
              n={day.tally.brokenOff}
              asked={{ ...asked, from: day.day, to: day.day, verdict: 'brokenOff' }}
            />
          </td>
        </tr>
      ))}
    </tbody>
  </table>
)
