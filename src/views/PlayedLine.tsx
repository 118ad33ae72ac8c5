import type { RepetitionList } from '@/app/repetitionList'
import type { RecordedFlaw } from '@/journal/journal'
import type { Chunk } from '@/music/chunk'
import type { Take } from '@/music/keyEvent'
import { quarterMs, type Key, type Tempo } from '@/music/units'
import type { Listed } from '@/review/repetitions'
import { decimal } from '@/text/numbers'
import { repetitionsText } from '@/text/repetitions'
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

const words = repetitionsText.played

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
    words.lasted(seconds(strikes.at(-1)?.at ?? 0)),
    ...(written.length > 0
      ? [words.written(seconds(written.at(-1) ?? 0), tempoWords(rung, listed))]
      : []),
  ].join('; ')
  return (
    <Plot
      sentence={`${sentence}. ${words.picture}`}
      height={rows.height}
      draw={(width) => {
        const x = (at: number): number => left + (at / end) * (width - left - right - 8)
        return (
          <>
            <text x={0} y={rows.written + 12}>
              {words.dueRow}
            </text>
            <text x={0} y={rows.played + 14}>
              {words.playedRow}
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
        <th scope="col">{words.columns.key}</th>
        <th scope="col" className="number">
          {words.columns.seconds}
        </th>
        <th scope="col" className="number">
          {words.columns.held}
        </th>
        <th scope="col" className="number">
          {words.columns.velocity}
        </th>
      </tr>
    </thead>
    <tbody>
      {strikes.map(({ key, at, held, velocity, isFlaw }, i) => (
        <tr key={i}>
          <td>{isFlaw ? words.flaw(keyWords(key, score)) : keyWords(key, score)}</td>
          <td className="number">{decimal(at / 1000, 2)}</td>
          <td className="number">{held === undefined ? '–' : decimal(held / 1000, 2)}</td>
          <td className="number">{velocity}</td>
        </tr>
      ))}
    </tbody>
  </table>
)

const seconds = (ms: number): string => decimal(ms / 1000, 1)

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
