import { useMemo, type ReactNode } from 'react'
import { formatRoute, parseRoute } from '@/app/route'
import { formatBeats } from '@/music/beat'
import { splitFormedId } from '@/music/form'
import { nameKey } from '@/music/spelling'
import type { Tempo } from '@/music/units'
import type { Asked } from '@/review/asked'
import type { FlawCount } from '@/review/flaws'
import type { ChunkReview } from '@/review/review'
import { flawsText } from '@/text/flaws'
import { musicText } from '@/text/music'
import { sessionText } from '@/text/session'
import { useApp, useSelected } from './context'
import { Decisions } from './Decisions'
import { CopyReminder } from './RecordCopies'
import { musicKeys } from './FlawMusic'
import { PageKeys } from './PageKeys'
import { phrase } from './phrase'
import { CleanShare, Followed, MadeOf } from './ReviewParts'
import { useReviewedRoutes } from './reviewed'
import { SessionPieces } from './SessionPieces'
import { TodayDone } from './TodayWay'
import { flawWords, formWords, handWords } from './words'
import './review.css'

const sitting: Asked = { session: true }

/** This sitting: the clean share first, then what was drilled, then what went wrong most. */
export const Summary = () => {
  const app = useApp()
  const events = useSelected(app.session.store, (state) => state.events)
  const review = useMemo(() => app.review(events), [app, events])
  const { share, tally } = review
  const all = useReviewedRoutes().repetitions(sitting)
  if (review.repetitions === 0)
    return (
      <main className="page">
        <div className="row">
          <h1>{sessionText.title}</h1>
          <PageKeys keys={[]} />
        </div>
        <p>
          {phrase(
            sessionText.nothing<ReactNode>((word) => (
              <a href={formatRoute({ kind: 'pieces' })}>{word}</a>
            )),
          )}
        </p>
        <TodayDone />
      </main>
    )
  return (
    <main className="page review">
      <h1>{sessionText.title}</h1>
      <p className="row no-print">
        <a href={all}>{sessionText.repetitions}</a>
        <PageKeys
          keys={[
            {
              key: 'r',
              shown: 'R',
              words: sessionText.toRepetitions,
              run: () => app.go(parseRoute(all)),
            },
            ...musicKeys(),
          ]}
        />
      </p>
      <CleanShare share={share} tally={tally} asked={sitting} />
      <ShareBar clean={tally.clean} flawed={tally.flawed} />
      <p>{verdictOnSession(share?.value)}</p>
      <TodayDone />
      <section aria-labelledby="drilled">
        <h2 id="drilled">{sessionText.drilled}</h2>
        <div className="scroll">
          <table className="stack">
            <thead>
              <tr>
                <th scope="col">{sessionText.columns.chunk}</th>
                <th scope="col">{sessionText.columns.clean}</th>
                <th scope="col">{sessionText.columns.longestStreak}</th>
                <th scope="col">{sessionText.columns.tempo}</th>
                <th scope="col">
                  <span className="unseen">{sessionText.columns.again}</span>
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
          {sessionText.save}
        </button>
      </div>
      <p className="soft">{sessionText.amount(review.repetitions, review.minutes)}</p>
    </main>
  )
}

/** More than half clean is the floor of a good day. */
const verdictOnSession = (share: number | undefined): string => {
  if (share === undefined) return sessionText.noneEnded
  if (share > 0.5) return sessionText.moreThanHalf
  return share === 0.5 ? sessionText.half : sessionText.lessThanHalf
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
  const title =
    chunk.title ?? listed.find((piece) => piece.id === chunk.piece)?.title ?? sessionText.aPiece
  const { place, tally, time } = chunk
  const { columns } = sessionText
  const asked: Asked = { ...sitting, piece: chunk.piece, chunk: chunk.chunk }
  const form = splitFormedId(chunk.chunk)?.form ?? 'asWritten'
  const beat = (tempo: Tempo): string => (time ? formatBeats(tempo, time) : `${Math.round(tempo)}`)
  const { fromRung, toRung, goalTempo, secure } = chunk
  const rung = (at: Tempo): ReactNode => <MadeOf asked={{ ...asked, rung: at }}>{beat(at)}</MadeOf>
  return (
    <tr>
      <th scope="row">
        {title}
        {place && (
          <span className="soft">
            , {musicText.bars(place.fromBar, place.toBar)}, {handWords[place.hand]}
            {form === 'asWritten' ? '' : `, ${formWords[form]}`}
          </span>
        )}
      </th>
      <td data-label={columns.clean}>
        <MadeOf asked={{ ...asked, ended: true }}>
          {sessionText.cleanOf(tally.clean, tally.clean + tally.flawed)}
        </MadeOf>
      </td>
      <td data-label={columns.longestStreak}>
        <Followed n={chunk.longestStreak} asked={{ ...asked, streak: true }} />
      </td>
      <td data-label={columns.tempo}>
        {rung(fromRung)}
        {toRung !== fromRung && <> → {rung(toRung)}</>}
        {sessionText.goal(goalTempo === undefined ? undefined : beat(goalTempo), secure)}
      </td>
      <td>
        {place && (
          <a href={formatRoute({ kind: 'practice', piece: chunk.piece, place, form })}>
            {sessionText.again}
          </a>
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
        {flaws.some(({ times }) => times > 1) ? sessionText.flawsMost : sessionText.flaws}
      </h2>
      <ol className="flaws">
        {flaws.map((flaw) => (
          <li key={`${flaw.chunk} ${flaw.onset} ${flaw.kind} ${flaw.written}`}>
            {sessionText.flaw(
              flawWords[flaw.kind],
              flaw.written === undefined ? undefined : nameKey(flaw.written),
              flaw.onset + 1,
            )}{' '}
            <a href={routes.repetitions(askedOf(flaw))}>{flawsText.times(flaw.times)}</a>
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
  // A drift is of the whole chunk.
  ...(note === undefined || kind === 'drift' ? {} : { note }),
})
