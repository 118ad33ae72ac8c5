import { lazy, Suspense, useEffect, useMemo, useRef, useState } from 'react'
import { formatRoute } from '@/app/route'
import type { FingeredPiece } from '@/app/fingerings'
import { notebookPlace } from '@/app/notebookPlace'
import type { ListedSpot } from '@/app/spotList'
import { cutChunk, type Chunk } from '@/music/chunk'
import type { HandChoice, Score } from '@/music/music'
import { tempoAt } from '@/music/tempoMap'
import { fingersOf, withFingers, type Fingers } from '@/music/fingers'
import { placeOf } from '@/music/place'
import { signatureAt } from '@/music/spelling'
import { tick, type NoteId, type Tick } from '@/music/units'
import type { ChunkState } from '@/review/chunkStates'
import { keysText } from '@/text/keys'
import { pieceText } from '@/text/piece'
import { readingText } from '@/text/reading'
import { tell } from '@/text/told'
import { useApp } from './context'
import { DigitPad } from './DigitPad'
import { FirstSteps } from './FirstSteps'
import { describeCarried, describeNote, HandWord } from './HandWord'
import { Notation } from './Notation'
import { PageKeys } from './PageKeys'
import { PassageChoice } from './PassageChoice'
import type { Passage } from './passageKeys'
import { pieceKeyList } from './pieceKeyList'
import { useKeys } from './shortcuts'
import { WeeksWay } from './TodayWay'
import { useChunkStates } from './useChunkStates'
import { useDigitKeys } from './useDigitKeys'
import { useHandKeys } from './useHandKeys'
import { WholePiece } from './WholePiece'
import { describeChunk, formatBars, handWords } from './words'
import './piece.css'

const HardSpots = lazy(async () => ({ default: (await import('./HardSpots')).HardSpots }))
const NotebookSection = lazy(async () => ({
  default: (await import('./NotebookSection')).NotebookSection,
}))
const Fingering = lazy(async () => ({ default: (await import('./Fingering')).Fingering }))
const noSpots: readonly ListedSpot[] = []

/** A piece: choose bars and a hand, by name or on the music, and take one of the proposed chunks. */
export const Piece = ({ piece }: { readonly piece: FingeredPiece }) => {
  const app = useApp()
  const { score, suggestion } = piece
  const [passage, setPassage] = useState<Passage>(() => firstPassage(score, suggestion))
  const [hand, setHand] = useState<HandChoice>(suggestion?.hand ?? firstHand(score))
  const [goal, setGoal] = useState(
    () => app.goalTempo(score) ?? suggestion?.goalTempo ?? tempoAt(score.tempos, tick(0)),
  )
  const [picked, setPicked] = useState<NoteId>()
  const [said, setSaid] = useState('')
  const [spots, setSpots] = useState(noSpots)
  const [tried, setTried] = useState<Fingers>()
  const states = useChunkStates(piece)
  const first = score.bars[passage.from]
  const last = score.bars[passage.to]
  const end = last && tick(last.start + last.length)
  const chunks = useMemo(
    () => (first && end !== undefined ? app.propose(score, first.start, end, hand) : []),
    [app, score, first, end, hand],
  )
  const choose = (next: Passage): void => {
    setPassage(next)
    setSaid('')
    setTried(undefined)
  }
  usePlayedPlace(score, hand, (from, to, word) => {
    setPicked(undefined)
    setPassage((now) => ({ from, to: keepLength(score, from, to, now) }))
    setSaid(word)
  })
  const note = picked === undefined ? undefined : score.notes.find(({ id }) => id === picked)
  const hands = useHandKeys(piece, passage, note, setSaid)
  const digits = useDigitKeys(piece, note, passage, (to, where) => {
    setPicked(to.id)
    setPassage(where)
  })
  const seen = useMemo(
    () => (tried ? withFingers(score, new Map([...fingersOf(score), ...tried])) : score),
    [score, tried],
  )
  const practise = (chunk: Chunk, simulated: boolean): void =>
    app.practise({ piece, chunk, goalTempo: goal, simulated })
  const [best] = chunks
  const start = (simulated: boolean): void => {
    if (best) practise(best, simulated)
  }
  useKeys({ Enter: () => start(false) })
  if (!first || !last || end === undefined) return null
  const build = (from: Tick, to: Tick, of: HandChoice): void => {
    const whole = cutChunk(score, from, to, of)
    if (whole)
      app.buildUp(
        piece,
        { passage: placeOf(whole), thoroughness: 'brisk', direction: 'forward' },
        goal,
      )
  }
  const where = formatBars(first, last)
  const chosen = cutChunk(score, first.start, end, hand)
  return (
    <main className="page page-piece">
      <div className="row">
        <h1>{score.title}</h1>
        <WeeksWay piece={score.id} />
        <PageKeys
          keys={pieceKeyList({
            build: () => build(first.start, end, hand),
            watch: () => start(true),
          })}
        />
      </div>
      {piece.warnings.length > 0 && (
        <ul className="notice">
          {piece.warnings.map((warning) => (
            <li key={JSON.stringify(warning)}>{tell(readingText.warnings, warning)}</li>
          ))}
        </ul>
      )}
      {piece.carriedHands && (
        <p role="status" className="notice">
          {describeCarried(piece.carriedHands)}
        </p>
      )}
      <PassageChoice
        {...{ score, passage, hand, goal, time: first.time }}
        onPassage={choose}
        onHand={setHand}
        onGoal={setGoal}
      />
      <div className="preview" data-hand={hand}>
        <Notation
          caller="preview"
          stretch={{ score: seen, start: first.start, end, hand }}
          label={`${score.title}, ${where}, ${handWords[hand]}`}
        />
      </div>
      <FirstSteps />
      {best ? (
        <Chunks {...{ score, chunks, states }} onTake={(chunk) => practise(chunk, false)} />
      ) : (
        <p className="notice">
          {hand === 'both'
            ? pieceText.noNote(where)
            : pieceText.noNoteOfHand(where, handWords[hand])}
        </p>
      )}
      {hands && <HandWord {...hands} about={note ? pieceText.hands.thisNote : where} />}
      <Suspense fallback={<div className="fingerings-place" />}>
        <Fingering {...{ piece, hand, ...passage }} onTry={setTried} />
      </Suspense>
      <Suspense fallback={<div className="spots-place" />}>
        <HardSpots
          {...{ score, hand, goal, first, last }}
          onListed={setSpots}
          onChoose={choose}
          onBuild={(spot) => build(spot.from, spot.to, spot.place.hand)}
        />
      </Suspense>
      <Suspense fallback={<div className="notebook-place" />}>
        <NotebookSection piece={piece} here={chosen && notebookPlace(score, chosen)} />
      </Suspense>
      <WholePiece
        {...{ score, passage, hand, chunks, states, picked, spots }}
        onPassage={choose}
        onPick={(next) => {
          setPicked(next)
          setSaid('')
        }}
      />
      <div className="row actions">
        <p role="status" className="chosen-words">
          {said ||
            (note
              ? describeNote(note, signatureAt(score.keys, note.start))
              : pieceText.chosen(where, handWords[hand]))}
        </p>
        {note && digits && <DigitPad digits={digits} note={note} />}
        {best && (
          <>
            <button type="button" className="primary" onClick={() => start(false)}>
              {pieceText.start} <kbd>{keysText.names.enter}</kbd>
            </button>
            <button type="button" onClick={() => build(first.start, end, hand)}>
              {pieceText.build} <kbd>B</kbd>
            </button>
            <button type="button" onClick={() => start(true)}>
              {pieceText.watch} <kbd>V</kbd>
            </button>
          </>
        )}
      </div>
    </main>
  )
}

const Chunks = ({
  score,
  chunks,
  states,
  onTake,
}: {
  readonly score: Score
  readonly chunks: readonly Chunk[]
  readonly states: ReadonlyMap<Chunk['id'], ChunkState>
  readonly onTake: (chunk: Chunk) => void
}) => (
  <section aria-labelledby="chunks">
    <h2 id="chunks">{pieceText.chunks.title}</h2>
    <p className="soft">{pieceText.chunks.what}</p>
    <ol className="chunks">
      {chunks.map((chunk) => (
        <li key={chunk.id}>
          <a
            className="button"
            href={formatRoute({ kind: 'practice', piece: chunk.piece, place: placeOf(chunk) })}
            onClick={(event) => {
              event.preventDefault()
              onTake(chunk)
            }}
          >
            <i className="chunk-mark" data-state={states.get(chunk.id) ?? 'untouched'} />
            {describeChunk(score, chunk)}
            {pieceText.chunks.states[states.get(chunk.id) ?? 'untouched']}
          </a>
        </li>
      ))}
    </ol>
  </section>
)

/** Moves the passage to where the person plays its first notes. */
const usePlayedPlace = (
  score: Score,
  hand: HandChoice,
  onFound: (from: number, to: number, word: string) => void,
): void => {
  const app = useApp()
  // The search lasts as long as score and hand; whoever is told may change meanwhile.
  const tell = useRef(onFound)
  useEffect(() => {
    tell.current = onFound
  })
  useEffect(
    () =>
      app.searchByPlaying(score, hand, ({ found, place, places }) => {
        const barAt = (at: number): number => score.bars.findLastIndex((bar) => bar.start <= at)
        const [from, to] = [barAt(found.from), barAt(found.to)]
        const bar = score.bars[from]?.number ?? 1
        tell.current(
          from,
          to,
          places > 1 ? pieceText.playedOneOf(bar, place, places) : pieceText.played(bar),
        )
      }),
    [app, score, hand],
  )
}

/** The right hand, where it has anything to play. */
const firstHand = ({ notes }: Score): HandChoice =>
  notes.some(({ hand }) => hand === 'right') ? 'right' : 'left'

const firstPassage = (score: Score, suggestion: FingeredPiece['suggestion']): Passage => {
  const indexOf = (number: number | undefined): number | undefined => {
    const index = score.bars.findIndex((bar) => bar.number === number)
    return index < 0 ? undefined : index
  }
  const from = indexOf(suggestion?.fromBar) ?? 0
  return { from, to: indexOf(suggestion?.toBar) ?? Math.min(score.bars.length - 1, from + 3) }
}

/** The passage moves as it is: as many bars as before, at least those that were played. */
const keepLength = (score: Score, from: number, to: number, now: Passage): number =>
  Math.min(score.bars.length - 1, Math.max(to, from + now.to - now.from))
