import { useCallback, useState } from 'react'
import type { PlannedPiece } from '@/app/plans'
import { formatRoute } from '@/app/route'
import { formatBeats } from '@/music/beat'
import type { PieceId } from '@/music/units'
import type { PlacePlan } from '@/plan/plan'
import { dateWords } from '@/text/dates'
import { grouped, rounded } from '@/text/numbers'
import { planText } from '@/text/plan'
import { spotsText, tellReason } from '@/text/spots'
import { useApp, useSelected } from './context'
import { HonestWord } from './HonestWord'
import { PageKeys } from './PageKeys'
import { phrase } from './phrase'
import { PlanPicture } from './PlanPicture'
import { dueDay, roughly, standingWords, weekWords, whereWords, workWords } from './planWords'
import { hrefOf } from './planLinks'
import { useLoaded } from './useLoaded'
import { beatWord } from './words'
import './piece.css'
import './plan.css'

/** A piece over weeks: how long it will take, a picture of the whole, and its places in order. */
export const PieceWeeks = ({ piece }: { readonly piece: PieceId }) => {
  const app = useApp()
  const { loaded } = useLoaded(useCallback(() => app.plans.piece(piece), [app, piece]))
  const title = useSelected(app.library.store, (state) => state.listed).find(
    (each) => each.id === piece,
  )?.title
  return (
    <main className="page page-plan">
      <h1>
        {planText.weeks.title} <span className="soft">{title}</span>
      </h1>
      {loaded.kind === 'loading' && (
        <p className="soft" role="status">
          {planText.weeks.layingOut}
        </p>
      )}
      {loaded.kind === 'failed' && <p className="notice">{loaded.message}</p>}
      {loaded.kind === 'ready' && <Standing planned={loaded.value} />}
    </main>
  )
}

const Standing = ({ planned }: { readonly planned: PlannedPiece }) => {
  const { plan } = planned
  return (
    <>
      <Span planned={planned} />
      <HonestWord planned={planned} />
      <PlanPicture plan={plan} bars={planned.piece.score.bars} />
      <section aria-labelledby="places">
        <h2 id="places">{planText.weeks.order}</h2>
        <ol className="plan-places">
          {plan.places.map((place) => (
            <Place key={`${place.kind} ${place.id}`} place={place} />
          ))}
        </ol>
      </section>
    </>
  )
}

const minuteChoices = [10, 15, 20, 30, 45, 60, 90] as const
const dayChoices = [1, 2, 3, 4, 5, 6, 7] as const

const Span = ({ planned }: { readonly planned: PlannedPiece }) => {
  const app = useApp()
  const usual = useSelected(app.today.store, (state) => state.wish.minutes)
  const [minutes, setMinutes] = useState(usual)
  const [days, setDays] = useState<number>()
  const { plan, piece, exercises, defaults } = planned
  const words = planText.weeks
  const span = planned.span(minutes, days)
  const time = piece.score.bars[0]?.time
  const goal = time
    ? words.goal(formatBeats(plan.goalTempo, time), beatWord(time))
    : `${Math.round(plan.goalTempo)}`
  const choices = [...new Set([...minuteChoices, usual])].toSorted((a, b) => a - b)
  return (
    <section className="plan-span" aria-labelledby="span">
      <h2 id="span" className="unseen">
        {words.howLong}
      </h2>
      <p className="plan-weeks" role="status">
        {plan.finished ? (
          <b>{words.keptAll}</b>
        ) : (
          phrase(
            words.left(
              <b>{weekWords(span)}</b>,
              goal,
              workWords(plan.work.minutes),
              grouped(roughly(plan.work.repetitions)),
            ),
          )
        )}
      </p>
      <div className="row">
        <label className="row tight">
          {words.minutesADay}
          <select value={minutes} onChange={({ target }) => setMinutes(Number(target.value))}>
            {choices.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
        <label className="row tight">
          {words.daysAWeek}
          <select
            value={days ?? ''}
            onChange={({ target }) =>
              setDays(target.value === '' ? undefined : Number(target.value))
            }
          >
            <option value="">
              {(exercises > 0 ? words.asOfLate : words.asUsual)(
                Math.round(planned.span(minutes).daysPerWeek),
              )}
            </option>
            {dayChoices.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
        <a className="button" href={formatRoute({ kind: 'today' })}>
          {words.today} <kbd>T</kbd>
        </a>
        <a className="button" href={formatRoute({ kind: 'piece', piece: plan.piece })}>
          {words.piece} <kbd>P</kbd>
        </a>
        <PageKeys
          keys={[
            {
              key: 't',
              shown: 'T',
              words: planText.keys.today,
              run: () => app.go({ kind: 'today' }),
            },
            {
              key: 'p',
              shown: 'P',
              words: planText.keys.piece,
              run: () => app.go({ kind: 'piece', piece: plan.piece }),
            },
          ]}
        />
      </div>
      <p className="soft">{exercises > 0 ? words.fromRecord(exercises) : words.withoutRecord}</p>
      {exercises === 0 && (
        <details>
          <summary>{words.takenAsUsual}</summary>
          <ul className="plan-defaults">
            {defaults.map(({ kind, value }) => (
              <li key={kind}>
                {rounded(value, 1)}: {words.defaults[kind]}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}

/** More are not kept in mind. */
const mostReasons = 3

const Place = ({ place }: { readonly place: PlacePlan }) => {
  const { kind, state, reasons, check, played } = place
  const why = [
    ...(played ? [spotsText.played(played.flawed, played.of)] : []),
    ...reasons.slice(0, mostReasons).map(tellReason),
  ]
  return (
    <li data-state={state}>
      <a href={hrefOf(place)}>
        <i className="chunk-mark" data-state={state} aria-hidden="true" />
        <span>
          <b>{planText.places[kind]}</b> {whereWords(place.place)}
        </span>
      </a>
      <span>
        {check
          ? planText.standing.due(standingWords(place), dateWords(dueDay(check), 'short'))
          : standingWords(place)}
      </span>
      {why.length > 0 && <span className="soft">{why.join('; ')}</span>}
    </li>
  )
}
