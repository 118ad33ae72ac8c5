import { useMemo, useSyncExternalStore } from 'react'
import type { Bar } from '@/music/music'
import type { PiecePlan } from '@/plan/plan'
import { planText } from '@/text/plan'
import { hrefOf } from './planLinks'
import {
  countBars,
  lanes,
  linesOf,
  rowsOf,
  segmentsOf,
  type Lane,
  type Segment,
} from './planPicture'
import { barWords, isSettled, whereWords } from './planWords'

const states = ['kept', 'secure', 'practised', 'slipped', 'untouched'] as const

/** Bars in a line of the picture, by the width of the window. */
const barsInLine = (): number => (window.innerWidth < 700 ? 8 : window.innerWidth < 1100 ? 16 : 24)

const onResize = (tell: () => void): (() => void) => {
  window.addEventListener('resize', tell)
  return () => window.removeEventListener('resize', tell)
}

/** The whole of a piece at a glance: its bars, how far each hand and both together are; each stretch leads to its work. */
export const PlanPicture = ({
  plan,
  bars,
}: {
  readonly plan: PiecePlan
  readonly bars: readonly Bar[]
}) => {
  const segments = useMemo(() => segmentsOf(plan, bars), [plan, bars])
  const lines = linesOf(bars.length, useSyncExternalStore(onResize, barsInLine))
  return (
    <figure className="plan-picture" aria-labelledby="picture">
      <figcaption id="picture">{describePicture(plan, segments, bars.length)}</figcaption>
      {lines.map(([from, to]) => (
        <Line key={from} {...{ segments, bars, from, to }} />
      ))}
      <p className="soft plan-key" aria-hidden="true">
        {states.map((state) => (
          <span key={state}>
            <i className="plan-stretch" data-state={state} /> {planText.states[state]}
          </span>
        ))}
      </p>
      <details>
        <summary>{planText.picture.asTable}</summary>
        <Table plan={plan} segments={segments} />
      </details>
    </figure>
  )
}

const describePicture = (plan: PiecePlan, segments: readonly Segment[], bars: number): string => {
  const counts = countBars(segments, bars)
  const told = states.flatMap((state) => {
    const count = counts.get(state) ?? 0
    return count > 0 ? [[state, count] as const] : []
  })
  const spots = plan.places.filter(({ kind }) => kind === 'spot')
  const open = spots.filter((place) => !isSettled(place)).length
  const next = plan.places.find((place) => !isSettled(place))
  const words = planText.picture
  return [
    words.bars(bars, told),
    ...(open > 0 ? [words.spots(open, spots.length)] : spots.length > 0 ? [words.noSpotLeft] : []),
    ...(next ? [words.workAt(barWords(next.place))] : []),
  ].join(' ')
}

const Line = ({
  segments,
  bars,
  from,
  to,
}: {
  readonly segments: readonly Segment[]
  readonly bars: readonly Bar[]
  readonly from: number
  readonly to: number
}) => {
  const here = segments.filter((each) => each.from <= to && each.to >= from)
  const shown = lanes.filter((lane) => here.some((each) => each.lane === lane))
  return (
    <div
      className="plan-line"
      aria-hidden="true"
      style={{ gridTemplateColumns: `auto repeat(${to - from + 1}, minmax(0, 1fr))` }}
    >
      <span className="plan-bar-name" data-widest={widestName()}>
        {planText.picture.bar}
      </span>
      {bars.slice(from, to + 1).map(({ number, start }, i) => (
        <span key={start} className="plan-bar" style={{ gridColumn: i + 2 }}>
          {i === 0 || number % 4 === 1 ? number : ''}
        </span>
      ))}
      {shown.map((lane) => (
        <LaneRow
          key={lane}
          lane={lane}
          here={here.filter((each) => each.lane === lane)}
          {...{ from, to }}
        />
      ))}
    </div>
  )
}

const LaneRow = ({
  lane,
  here,
  from,
  to,
}: {
  readonly lane: Lane
  readonly here: readonly Segment[]
  readonly from: number
  readonly to: number
}) => {
  const rows = rowsOf(here)
  const count = Math.max(...rows.values()) + 1
  return (
    <>
      <span className="plan-lane">{planText.picture.lanes[lane]}</span>
      <span
        className="plan-stretches"
        data-lane={lane}
        style={{
          gridColumn: `2 / span ${to - from + 1}`,
          gridTemplateColumns: `repeat(${to - from + 1}, minmax(0, 1fr))`,
          gridTemplateRows: `repeat(${count}, auto)`,
        }}
      >
        {here.map((each) => (
          <a
            key={`${each.place.kind} ${each.place.id} ${each.hand}`}
            className="plan-stretch"
            href={hrefOf(each.place, each.hand)}
            tabIndex={-1}
            title={stretchWords(each)}
            aria-label={stretchWords(each)}
            data-state={each.state}
            data-begins={each.from >= from}
            data-ends={each.to <= to}
            style={{
              gridColumn: `${Math.max(each.from, from) - from + 1} / ${Math.min(each.to, to) - from + 2}`,
              gridRow: (rows.get(each) ?? 0) + 1,
              backgroundSize:
                each.state === 'practised' ? `${Math.round(100 * each.share)}% 100%` : undefined,
            }}
          />
        ))}
      </span>
    </>
  )
}

/** So that the bars of all lines stand below one another, whatever lanes they have. */
const widestName = (): string =>
  lanes
    .map((lane) => planText.picture.lanes[lane])
    .reduce((widest, name) => (name.length > widest.length ? name : widest))

const stretchWords = ({ place, hand, state }: Segment): string =>
  planText.picture.stretch(
    planText.places[place.kind],
    whereWords({ ...place.place, hand }),
    planText.states[state],
  )

const Table = ({
  plan,
  segments,
}: {
  readonly plan: PiecePlan
  readonly segments: readonly Segment[]
}) => {
  const { columns } = planText.picture
  return (
    <div className="scroll">
      <table>
        <thead>
          <tr>
            <th scope="col">{columns.bars}</th>
            <th scope="col">{columns.what}</th>
            <th scope="col">{columns.right}</th>
            <th scope="col">{columns.left}</th>
            <th scope="col">{columns.both}</th>
          </tr>
        </thead>
        <tbody>
          {plan.places
            .toSorted((a, b) => a.from - b.from)
            .map((place) => (
              <tr key={`${place.kind} ${place.id}`}>
                <th scope="row">
                  <a href={hrefOf(place)}>{planText.picture.row(barWords(place.place))}</a>
                </th>
                <td>{planText.places[place.kind]}</td>
                {(['right', 'left', 'both'] as const).map((hand) => {
                  const own = segments.find((each) => each.place === place && each.hand === hand)
                  return <td key={hand}>{own ? planText.states[own.state] : '–'}</td>
                })}
              </tr>
            ))}
        </tbody>
      </table>
    </div>
  )
}
