import type { RepetitionList } from '@/app/repetitionList'
import type { RecordedFlaw } from '@/journal/journal'
import type { Chunk } from '@/music/chunk'
import type { Take } from '@/music/keyEvent'
import { quarterMs, type Key, type Tempo } from '@/music/units'
import type { Listed } from '@/review/repetitions'
import { left, Plot, right } from './ReviewPlot'
import { keyWords, tempoWords } from './reviewWords'

interface Strike {
  readonly key: Key
  /** Milliseconds from the first key. */
  readonly at: number
  readonly held: number | undefined
  readonly velocity: number
  readonly isFlaw: boolean
}

const rows = { written: 8, tick: 14, played: 38, tallest: 30, height: 78 }

/** When each key came, below when it was written at the tempo asked; the taller, the louder. */
export const PlayedLine = ({
  take,
  chunk,
  listed,
  list,
}: {
  readonly take: Take
  readonly chunk: Chunk | undefined
  readonly listed: Listed
  readonly list: RepetitionList
}) => {
  const { rung, flaws } = listed.repetition
  const strikes = strikesOf(take, flaws)
  const written = chunk ? writtenTimes(chunk, rung) : []
  const end = Math.max(1, ...written, ...strikes.map(({ at }) => at))
  const sentence = [
    `${seconds(strikes.at(-1)?.at ?? 0)} from the first key to the last`,
    ...(written.length > 0
      ? [`${seconds(written.at(-1) ?? 0)} as written at ${tempoWords(rung, listed)}`]
      : []),
  ].join('; ')
  return (
    <Plot
      sentence={`${sentence}. Above when each onset was due, below when each key came: the taller, the louder; ringed where it was a flaw.`}
      height={rows.height}
      draw={(width) => {
        const x = (at: number): number => left + (at / end) * (width - left - right - 8)
        return (
          <>
            <text x={0} y={rows.written + 12}>
              due
            </text>
            <text x={0} y={rows.played + 14}>
              played
            </text>
            {written.map((at, i) => (
              <path key={i} className="due" d={`M${x(at)} ${rows.written}v${rows.tick}`} />
            ))}
            {strikes.map((strike, i) => (
              <g key={i} className={strike.isFlaw ? 'strike flaw' : 'strike'}>
                <path
                  d={`M${x(strike.at)} ${rows.played}v${4 + (strike.velocity / 127) * (rows.tallest - 4)}`}
                />
                {strike.isFlaw && <circle cx={x(strike.at)} cy={rows.played - 5} r="4" />}
              </g>
            ))}
          </>
        )
      }}
      table={<StrikeTable strikes={strikes} list={list} />}
    />
  )
}

const StrikeTable = ({
  strikes,
  list: { score },
}: {
  readonly strikes: readonly Strike[]
  readonly list: RepetitionList
}) => (
  <table className="narrow">
    <thead>
      <tr>
        <th scope="col">Key</th>
        <th scope="col" className="number">
          Seconds
        </th>
        <th scope="col" className="number">
          Held
        </th>
        <th scope="col" className="number">
          Velocity
        </th>
      </tr>
    </thead>
    <tbody>
      {strikes.map(({ key, at, held, velocity, isFlaw }, i) => (
        <tr key={i}>
          <td>
            {keyWords(key, score)}
            {isFlaw && ', a flaw'}
          </td>
          <td className="number">{(at / 1000).toFixed(2)}</td>
          <td className="number">{held === undefined ? '–' : (held / 1000).toFixed(2)}</td>
          <td className="number">{velocity}</td>
        </tr>
      ))}
    </tbody>
  </table>
)

const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} seconds`

const writtenTimes = ({ onsets, ticksPerQuarter }: Chunk, rung: Tempo): readonly number[] =>
  onsets.map(({ start }) => (start / ticksPerQuarter) * quarterMs(rung))

/** Recorded times are in tenths of a millisecond. */
const sameMs = 0.11

const strikesOf = ({ events }: Take, flaws: readonly RecordedFlaw[]): readonly Strike[] => {
  const downs = events.filter((event) => event.kind === 'down')
  const origin = downs[0]?.at ?? 0
  return downs.map(({ key, at, velocity }) => {
    const up = events.find((e) => e.kind === 'up' && e.key === key && e.at >= at)
    return {
      key,
      at: at - origin,
      held: up && up.at - at,
      velocity,
      isFlaw: flaws.some(
        ({ played, playedMs }) =>
          played === key && playedMs !== undefined && Math.abs(playedMs - at) < sameMs,
      ),
    }
  })
}
