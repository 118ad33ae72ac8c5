import { useMemo, useState } from 'react'
import { formatRoute } from '@/app/route'
import type { OpenPiece } from '@/app/library'
import type { Chunk } from '@/music/chunk'
import { handChoices, type Bar, type HandChoice, type Score } from '@/music/music'
import { tempoAt } from '@/music/tempoMap'
import { placeOf } from '@/music/place'
import { beatBounds, formatBeats, parseBeats } from '@/music/beat'
import { tick } from '@/music/units'
import { useApp } from './context'
import { Notation } from './Notation'
import { beatWord, formatBars, handWords } from './words'

/** A piece: choose bars and a hand, and take one of the proposed chunks. */
export const Piece = ({ piece }: { readonly piece: OpenPiece }) => {
  const app = useApp()
  const { score, suggestion } = piece
  const lastBar = score.bars.length - 1
  const [from, setFrom] = useState(() => barIndexOf(score, suggestion?.fromBar) ?? 0)
  const [to, setTo] = useState(
    () => barIndexOf(score, suggestion?.toBar) ?? Math.min(lastBar, from + 3),
  )
  const [hand, setHand] = useState<HandChoice>(suggestion?.hand ?? 'right')
  const [goal, setGoal] = useState(
    () => app.goalTempo(score) ?? suggestion?.goalTempo ?? tempoAt(score.tempos, tick(0)),
  )
  const first = score.bars[Math.min(from, to)]
  const last = score.bars[Math.max(from, to)]
  const chunks = useMemo(
    () =>
      first && last ? app.propose(score, first.start, tick(last.start + last.length), hand) : [],
    [app, score, first, last, hand],
  )
  if (!first || !last) return null
  const practise = (chunk: Chunk, simulated: boolean): void =>
    app.practise({ piece, chunk, goalTempo: goal, simulated })
  const time = first.time
  const [best] = chunks
  return (
    <main className="page page-piece">
      <h1>{score.title}</h1>
      {piece.warnings.length > 0 && (
        <ul className="notice">
          {piece.warnings.map((warning) => (
            <li key={warning}>{warning}</li>
          ))}
        </ul>
      )}
      <form className="row choose" onSubmit={(event) => event.preventDefault()}>
        <BarChoice label="From bar" score={score} value={from} onChange={setFrom} />
        <BarChoice label="to bar" score={score} value={to} onChange={setTo} />
        <fieldset className="row">
          <legend className="unseen">Hand</legend>
          {handChoices.map((choice) => (
            <label key={choice} className="row tight">
              <input
                type="radio"
                name="hand"
                checked={hand === choice}
                onChange={() => setHand(choice)}
              />
              {handWords[choice]}
            </label>
          ))}
        </fieldset>
        <label className="row tight">
          Goal tempo
          <input
            type="number"
            min={beatBounds.slowest}
            max={beatBounds.fastest}
            defaultValue={formatBeats(goal, time)}
            onChange={(event) => {
              const quarters = parseBeats(event.target.value, time)
              if (quarters !== undefined) setGoal(quarters)
            }}
          />
          <span className="soft">{beatWord(time)} a minute</span>
        </label>
      </form>
      <div className="preview">
        <Notation
          caller="preview"
          stretch={{ score, start: first.start, end: tick(last.start + last.length), hand }}
          label={`${score.title}, ${formatBars(first, last)}, ${handWords[hand]}`}
        />
      </div>
      {best ? (
        <section aria-labelledby="chunks">
          <h2 id="chunks">Chunks to drill</h2>
          <p className="soft">
            Each is small enough to be played right, and shares its last notes with the next.
          </p>
          <ol className="chunks">
            {chunks.map((chunk) => (
              <li key={chunk.id}>
                <a
                  className="button"
                  href={formatRoute(practiceRoute(chunk))}
                  onClick={(event) => {
                    event.preventDefault()
                    practise(chunk, false)
                  }}
                >
                  {describeChunk(score, chunk)}
                </a>
              </li>
            ))}
          </ol>
          <div className="row">
            <button type="button" className="primary" onClick={() => practise(best, false)}>
              Start the drill
            </button>
            <button type="button" onClick={() => practise(best, true)}>
              Watch a simulated player first
            </button>
          </div>
        </section>
      ) : (
        <p className="notice">
          There is no note for the {handWords[hand]} in {formatBars(first, last)}: choose other bars
          or the other hand.
        </p>
      )}
    </main>
  )
}

const BarChoice = ({
  label,
  score,
  value,
  onChange,
}: {
  readonly label: string
  readonly score: Score
  readonly value: number
  readonly onChange: (index: number) => void
}) => (
  <label className="row tight">
    {label}
    <select value={value} onChange={(event) => onChange(Number(event.target.value))}>
      {score.bars.map((bar, i) => (
        <option key={bar.start} value={i}>
          {bar.number}
        </option>
      ))}
    </select>
  </label>
)

const practiceRoute = (chunk: Chunk) =>
  ({ kind: 'practice', piece: chunk.piece, place: placeOf(chunk) }) as const

const barIndexOf = (score: Score, number: number | undefined): number | undefined => {
  const index = score.bars.findIndex((bar) => bar.number === number)
  return index < 0 ? undefined : index
}

/** 'bar 3, beat 2 · 6 onsets' */
const describeChunk = (score: Score, chunk: Chunk): string => {
  const bar: Bar | undefined = score.bars.findLast((b) => b.start <= chunk.start)
  const beat = bar
    ? Math.floor(((chunk.start - bar.start) * bar.time.beatType) / (4 * score.ticksPerQuarter)) + 1
    : 1
  const n = chunk.onsets.length
  return `bar ${bar?.number ?? 1}, beat ${beat} · ${n} ${n === 1 ? 'onset' : 'onsets'}`
}
