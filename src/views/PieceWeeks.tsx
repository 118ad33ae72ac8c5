import { useCallback, useState } from 'react'
import type { PlannedPiece } from '@/app/plans'
import { formatRoute } from '@/app/route'
import { formatBeats } from '@/music/beat'
import type { PieceId } from '@/music/units'
import type { PlacePlan } from '@/plan/plan'
import { useApp, useSelected } from './context'
import { HonestWord } from './HonestWord'
import { PageKeys } from './PageKeys'
import { PlanPicture } from './PlanPicture'
import {
  dueDay,
  placeWords,
  roughly,
  standingWords,
  weekWords,
  whereWords,
  workWords,
} from './planWords'
import { hrefOf } from './planLinks'
import { dateWords } from './reviewWords'
import { useLoaded } from './useLoaded'
import { beatWord } from './words'
import { plural } from '@/text/plural'
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
        The weeks <span className="soft">{title}</span>
      </h1>
      {loaded.kind === 'loading' && (
        <p className="soft" role="status">
          Laying out the piece …
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
        <h2 id="places">In this order</h2>
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
  const span = planned.span(minutes, days)
  const time = piece.score.bars[0]?.time
  const goal = time
    ? `${formatBeats(plan.goalTempo, time)} ${beatWord(time)} a minute`
    : `${Math.round(plan.goalTempo)}`
  const choices = [...new Set([...minuteChoices, usual])].toSorted((a, b) => a - b)
  return (
    <section className="plan-span" aria-labelledby="span">
      <h2 id="span" className="unseen">
        How long
      </h2>
      <p className="plan-weeks" role="status">
        {plan.finished ? (
          <b>Kept from end to end.</b>
        ) : (
          <>
            <b>{weekWords(span)}</b> until it is kept from end to end at {goal}: about{' '}
            {workWords(plan.work.minutes)} of work, {roughly(plan.work.repetitions)} repetitions.
          </>
        )}
      </p>
      <div className="row">
        <label className="row tight">
          Minutes a day
          <select value={minutes} onChange={({ target }) => setMinutes(Number(target.value))}>
            {choices.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
        <label className="row tight">
          Days a week
          <select
            value={days ?? ''}
            onChange={({ target }) =>
              setDays(target.value === '' ? undefined : Number(target.value))
            }
          >
            <option value="">
              {Math.round(planned.span(minutes).daysPerWeek)}{' '}
              {exercises > 0 ? 'as of late' : 'as usual'}
            </option>
            {dayChoices.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
        <a className="button" href={formatRoute({ kind: 'today' })}>
          Today <kbd>T</kbd>
        </a>
        <a className="button" href={formatRoute({ kind: 'piece', piece: plan.piece })}>
          The piece <kbd>P</kbd>
        </a>
        <PageKeys
          keys={[
            { key: 't', shown: 'T', words: 'today’s plan', run: () => app.go({ kind: 'today' }) },
            {
              key: 'p',
              shown: 'P',
              words: 'the page of the piece',
              run: () => app.go({ kind: 'piece', piece: plan.piece }),
            },
          ]}
        />
      </div>
      <p className="soft">
        {exercises > 0
          ? `Estimated from ${plural(exercises, 'exercise')} of your own record. It is said anew as the record grows; nine in ten should lie within.`
          : 'Estimated without a record, from what is usual; it is said anew as the record grows.'}
      </p>
      {exercises === 0 && (
        <details>
          <summary>What is taken as usual</summary>
          <ul className="plan-defaults">
            {defaults.map(({ value, reason }) => (
              <li key={reason}>
                {Math.round(value * 10) / 10}: {reason}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}

const Place = ({ place }: { readonly place: PlacePlan }) => {
  const { kind, state, reasons, check } = place
  return (
    <li data-state={state}>
      <a href={hrefOf(place)}>
        <i className="chunk-mark" data-state={state} aria-hidden="true" />
        <span>
          <b>{placeWords[kind]}</b> {whereWords(place.place)}
        </span>
      </a>
      <span>
        {standingWords(place)}
        {check && `, due cold on ${dateWords(dueDay(check), 'short')}`}
      </span>
      {reasons.length > 0 && <span className="soft">{reasons.slice(0, 3).join(', ')}</span>}
    </li>
  )
}
