import { useMemo } from 'react'
import { formatRoute, parseRoute } from '@/app/route'
import { formatBeats } from '@/music/beat'
import { splitFormedId } from '@/music/form'
import { formatKey } from '@/music/pitch'
import type { Tempo } from '@/music/units'
import type { Asked } from '@/review/asked'
import type { FlawCount } from '@/review/flaws'
import type { ChunkReview } from '@/review/review'
import { useApp, useSelected } from './context'
import { Decisions } from './Decisions'
import { CopyReminder } from './RecordCopies'
import { musicKeys } from './FlawMusic'
import { PageKeys } from './PageKeys'
import { Followed } from './ReviewParts'
import { useReviewedRoutes } from './reviewed'
import { rangeWords } from './reviewWords'
import { SessionPieces } from './SessionPieces'
import { TodayDone } from './TodayWay'
import { flawWords, formWords, handWords, percent } from './words'
import { plural } from '@/text/plural'
import './review.css'

const sitting: Asked = { session: true }

/** This sitting: the clean share first, then what was drilled, then what went wrong most. */
export const Summary = () => {
  const app = useApp()
  const events = useSelected(app.session.store, (state) => state.events)
  const review = useMemo(() => app.review(events), [app, events])
  const { cleanShare, share, tally } = review
  const all = useReviewedRoutes().repetitions(sitting)
  if (review.repetitions === 0)
    return (
      <main className="page">
        <h1>This session</h1>
        <p>
          Nothing practised yet. Choose one of the{' '}
          <a href={formatRoute({ kind: 'pieces' })}>pieces</a>, and one small chunk of it.
        </p>
        <TodayDone />
      </main>
    )
  return (
    <main className="page review">
      <h1>This session</h1>
      <p className="row no-print">
        <a href={all}>Repetitions</a>
        <PageKeys
          keys={[
            { key: 'r', shown: 'R', words: 'repetitions', run: () => app.go(parseRoute(all)) },
            ...musicKeys,
          ]}
        />
      </p>
      <p className="share" data-share={cleanShare}>
        <b>{cleanShare === undefined ? '–' : percent(cleanShare)}</b> clean
        <span className="soft">
          {share && `between ${rangeWords(share, 'and')} % in 95 of 100 cases; `}
          <Followed n={tally.clean} asked={{ ...sitting, verdict: 'clean' }} /> clean,{' '}
          <Followed n={tally.flawed} asked={{ ...sitting, verdict: 'flawed' }} /> flawed;{' '}
          <Followed n={tally.brokenOff} asked={{ ...sitting, verdict: 'brokenOff' }} /> broken off
        </span>
      </p>
      <ShareBar clean={tally.clean} flawed={tally.flawed} />
      <p>{verdictOnSession(cleanShare)}</p>
      <TodayDone />
      <section aria-labelledby="drilled">
        <h2 id="drilled">What was drilled</h2>
        <div className="scroll">
          <table>
            <thead>
              <tr>
                <th scope="col">Chunk</th>
                <th scope="col">Clean</th>
                <th scope="col">Longest streak</th>
                <th scope="col">Tempo</th>
                <th scope="col">
                  <span className="unseen">Again</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {review.chunks.map((chunk) => (
                <ChunkRow key={chunk.chunk} chunk={chunk} />
              ))}
            </tbody>
          </table>
        </div>
      </section>
      <Flaws flaws={review.flaws.slice(0, 8)} />
      <SessionPieces events={events} />
      <Decisions events={events} />
      <CopyReminder />
      <div className="row">
        <button type="button" onClick={() => void app.records.save()}>
          Save the whole record as a file
        </button>
      </div>
      <p className="soft">
        {plural(review.repetitions, 'repetition')} in {spent(review.minutes)}.
      </p>
    </main>
  )
}

const spent = (minutes: number): string =>
  minutes < 1 ? 'less than a minute' : plural(Math.round(minutes), 'minute')

/** More than half clean is the floor of a good day. */
const verdictOnSession = (share: number | undefined): string => {
  if (share === undefined) return 'No repetition came to its end.'
  if (share > 0.5) return 'More than half was correct repetition: that is what the fingers keep.'
  const how = share === 0.5 ? 'Only half' : 'Less than half'
  return `${how} was correct repetition. Tomorrow: a slower tempo, or smaller chunks.`
}

const ShareBar = ({ clean, flawed }: { readonly clean: number; readonly flawed: number }) => {
  const share = clean + flawed === 0 ? 0 : (clean / (clean + flawed)) * 100
  return (
    <svg className="share-bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
      <rect className="share-all" width="100" height="6" />
      <rect className="share-clean" width={share} height="6" />
      <path className="share-half" d="M50 0v6" />
    </svg>
  )
}

const ChunkRow = ({ chunk }: { readonly chunk: ChunkReview }) => {
  const app = useApp()
  const listed = useSelected(app.library.store, (state) => state.listed)
  const title = chunk.title ?? listed.find((piece) => piece.id === chunk.piece)?.title ?? 'A piece'
  const routes = useReviewedRoutes()
  const { place, tally, time } = chunk
  const form = splitFormedId(chunk.chunk)?.form ?? 'asWritten'
  const beat = (tempo: Tempo): string => (time ? formatBeats(tempo, time) : `${Math.round(tempo)}`)
  const bars =
    place &&
    (place.fromBar === place.toBar
      ? `bar ${place.fromBar}`
      : `bars ${place.fromBar}–${place.toBar}`)
  return (
    <tr>
      <td>
        {title}
        {place && (
          <span className="soft">
            , {bars}, {handWords[place.hand]}
            {form === 'asWritten' ? '' : `, ${formWords[form]}`}
          </span>
        )}
      </td>
      <td>
        <a href={routes.repetitions({ ...sitting, piece: chunk.piece, chunk: chunk.chunk })}>
          {tally.clean} of {tally.clean + tally.flawed}
        </a>
      </td>
      <td>{chunk.longestStreak}</td>
      <td>
        {beat(chunk.fromRung)}
        {chunk.toRung === chunk.fromRung ? '' : ` → ${beat(chunk.toRung)}`}
        {chunk.goalTempo === undefined ? '' : ` of ${beat(chunk.goalTempo)}`}
        {chunk.secure && ', secure'}
      </td>
      <td>
        {place && (
          <a href={formatRoute({ kind: 'practice', piece: chunk.piece, place, form })}>again</a>
        )}
      </td>
    </tr>
  )
}

const Flaws = ({ flaws }: { readonly flaws: readonly FlawCount[] }) => {
  const routes = useReviewedRoutes()
  if (flaws.length === 0) return null
  return (
    <section aria-labelledby="flaws">
      <h2 id="flaws">
        {flaws.some(({ times }) => times > 1) ? 'What went wrong most' : 'What went wrong'}
      </h2>
      <ol className="flaws">
        {flaws.map((flaw) => (
          <li key={`${flaw.chunk} ${flaw.onset} ${flaw.kind} ${flaw.written}`}>
            {flawWords[flaw.kind]}
            {flaw.written === undefined ? '' : ` at ${formatKey(flaw.written)}`}, onset{' '}
            {flaw.onset + 1}:{' '}
            <a href={routes.repetitions(askedOf(flaw))}>
              {flaw.times === 1 ? 'once' : `${flaw.times} times`}
            </a>
          </li>
        ))}
      </ol>
    </section>
  )
}

const askedOf = ({ chunk, kind, notes: [note] }: FlawCount): Asked => ({
  ...sitting,
  chunk,
  flaw: kind,
  ...(note === undefined ? {} : { note }),
})
