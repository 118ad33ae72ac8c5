import { useEffect, useRef, useState } from 'react'
import { spotPlace, type ListedSpot } from '@/app/spotList'
import { moveSpot, saySpot } from '@/app/spotWords'
import type { Bar, HandChoice, Score } from '@/music/music'
import { tick, type Tempo } from '@/music/units'
import { spotsText } from '@/text/spots'
import { caution } from './cautions'
import { HardSpot } from './HardSpot'
import { describeCarriedSpots, describeSpot, describeWhole } from './hardSpotsWords'
import { useHardSpots } from './useHardSpots'
import { useSpotKeys } from './useSpotKeys'
import type { Passage } from './passageKeys'
import { formatBars, handWords } from './words'
import './hardSpots.css'

interface HardSpotsProps {
  readonly score: Score
  readonly hand: HandChoice
  readonly goal: Tempo
  /** The chosen bars. */
  readonly first: Bar
  readonly last: Bar
  /** Called with what is to be hatched on the music. */
  readonly onListed: (spots: readonly ListedSpot[]) => void
  readonly onChoose: (passage: Passage) => void
  readonly onBuild: (spot: ListedSpot) => void
}

/** Where the piece is hard and why; the person corrects the list, and it is kept with the piece. */
export const HardSpots = (props: HardSpotsProps) => {
  const { score, hand, goal, first, last, onListed } = props
  const { spots, whole, isLooking, problem, carried, words, say } = useHardSpots(score, goal, hand)
  const { buttons, named, done } = spotsText
  const [said, setSaid] = useState('')
  const box = useRef<HTMLElement>(null)
  useEffect(() => {
    if (spots) onListed(spots)
  }, [spots, onListed])
  const standing = spots?.filter(({ word }) => word !== 'rejected') ?? []
  const rejected = spots?.filter(({ word }) => word === 'rejected') ?? []
  const open = standing.filter(({ word }) => word === 'found')
  const word = (
    which: readonly ListedSpot[],
    next: 'accepted' | 'rejected',
    told: string,
  ): void => {
    const places = which.map(({ place }) => place)
    if (words) say(saySpot(words, places, next))
    setSaid(told)
    // The row of a spot that is folded away takes the focus with it.
    if (next === 'rejected') box.current?.focus()
  }
  const move = (spot: ListedSpot, by: 1 | -1): void => {
    const places = standing.map(({ place }) => place)
    if (words) say(moveSpot(words, places, spot.place, by))
    const rank = standing.indexOf(spot) + by + 1
    setSaid(done.moved(describeSpot(score, spot), rank, standing.length))
  }
  const add = (): void => {
    const place = spotPlace(score, { from: first.start, to: tick(last.start + last.length), hand })
    if (words) say(saySpot(words, [place], 'accepted'))
    setSaid(done.added(formatBars(first, last), handWords[hand]))
  }
  const sayOf = (spot: ListedSpot, next: 'accepted' | 'rejected'): void =>
    word([spot], next, done[next](describeSpot(score, spot)))
  const list = useSpotKeys(words ? standing : [], sayOf, move)
  return (
    <section className="spots" aria-labelledby="spots" ref={box} tabIndex={-1}>
      <div className="row spots-head">
        <h2 id="spots">{spotsText.title}</h2>
        <p className="soft" aria-live="polite">
          {isLooking ? spotsText.looking : said}
        </p>
        <span className="row tight">
          <button type="button" disabled={!words} onClick={add}>
            {spotsText.add(formatBars(first, last))}
          </button>
          <button
            type="button"
            disabled={!words || open.length === 0}
            onClick={() => word(open, 'accepted', done.passagesMade(open.length))}
          >
            {buttons.makePassages}
          </button>
        </span>
      </div>
      {problem && <p className="notice">{spotsText.problems[problem.kind](problem.why)}</p>}
      {carried && <p className="notice">{describeCarriedSpots(carried)}</p>}
      <p className="soft spots-whole">{whole && describeWhole(whole)}</p>
      <ol className="spots-list" aria-busy={spots === undefined} ref={list}>
        {standing.map((spot, i) => (
          <HardSpot
            key={`${spot.place.from}-${spot.place.to}/${spot.place.hand}`}
            {...props}
            spot={spot}
            isFirst={i === 0}
            isLast={i === standing.length - 1}
            canSay={words !== undefined}
            onWord={(next) => sayOf(spot, next)}
            onMove={(by) => move(spot, by)}
          />
        ))}
        {spots && standing.length === 0 && <li className="soft">{spotsText.none}</li>}
      </ol>
      <p className="soft spots-limits">
        {spotsText.limits}
        {standing.some(({ strains }) => strains) && ` ${caution()}`}
      </p>
      {rejected.length > 0 && (
        <details className="spots-rejected">
          <summary>{spotsText.rejected(rejected.length)}</summary>
          <ul>
            {rejected.map((spot) => (
              <li key={`${spot.place.from}-${spot.place.to}/${spot.place.hand}`} className="row">
                {describeSpot(score, spot)}
                <button
                  type="button"
                  aria-label={named.takeBack(describeSpot(score, spot))}
                  onClick={() => sayOf(spot, 'accepted')}
                >
                  {buttons.takeBack}
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}
