import { useMemo, useSyncExternalStore } from 'react'
import type { Bar } from '@/music/music'
import type { PiecePlan, PlaceState } from '@/plan/plan'
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
import { barWords, capital, isSettled, laneWords, placeWords, whereWords } from './planWords'
import { plural } from '@/text/plural'

const laneNames: Readonly<Record<Lane, string>> = {
  ...laneWords,
  spot: 'Hard spots',
  join: 'Joins',
}

const stateWords: Readonly<Record<PlaceState, string>> = {
  kept: 'kept',
  secure: 'secure',
  slipped: 'slipped',
  practised: 'practised',
  untouched: 'not begun',
}
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
            <i className="plan-stretch" data-state={state} /> {stateWords[state]}
          </span>
        ))}
      </p>
      <details>
        <summary>The same as a table</summary>
        <Table plan={plan} segments={segments} />
      </details>
    </figure>
  )
}

const describePicture = (plan: PiecePlan, segments: readonly Segment[], bars: number): string => {
  const counts = countBars(segments, bars)
  const told = states.flatMap((state) => {
    const count = counts.get(state) ?? 0
    return count > 0 ? [`${count} ${stateWords[state]}`] : []
  })
  const spots = plan.places.filter(({ kind }) => kind === 'spot')
  const open = spots.filter((place) => !isSettled(place)).length
  const next = plan.places.find((place) => !isSettled(place))
  return [
    `Of ${plural(bars, 'bar')}: ${told.join(', ')}.`,
    ...(spots.length > 0
      ? [
          open === 0
            ? 'No hard spot is left.'
            : `${plural(open, 'hard spot')} to do${open < spots.length ? ` of ${spots.length}` : ''}.`,
        ]
      : []),
    ...(next ? [`The work is at ${barWords(next.place)}.`] : []),
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
      <span className="plan-bar-name">Bar</span>
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
      <span className="plan-lane">{laneNames[lane]}</span>
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
            title={`${placeWords[each.place.kind]}, ${whereWords({ ...each.place.place, hand: each.hand })}: ${stateWords[each.state]}`}
            aria-label={`${placeWords[each.place.kind]}, ${whereWords({ ...each.place.place, hand: each.hand })}: ${stateWords[each.state]}`}
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

const Table = ({
  plan,
  segments,
}: {
  readonly plan: PiecePlan
  readonly segments: readonly Segment[]
}) => (
  <div className="scroll">
    <table>
      <thead>
        <tr>
          <th scope="col">Bars</th>
          <th scope="col">What</th>
          <th scope="col">Right hand</th>
          <th scope="col">Left hand</th>
          <th scope="col">Together</th>
        </tr>
      </thead>
      <tbody>
        {plan.places
          .toSorted((a, b) => a.from - b.from)
          .map((place) => (
            <tr key={`${place.kind} ${place.id}`}>
              <th scope="row">
                <a href={hrefOf(place)}>{capital(barWords(place.place))}</a>
              </th>
              <td>{placeWords[place.kind]}</td>
              {(['right', 'left', 'both'] as const).map((hand) => {
                const own = segments.find((each) => each.place === place && each.hand === hand)
                return <td key={hand}>{own ? stateWords[own.state] : '–'}</td>
              })}
            </tr>
          ))}
      </tbody>
    </table>
  </div>
)
