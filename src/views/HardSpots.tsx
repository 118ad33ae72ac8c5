import { useEffect, useRef, useState } from 'react'
import type { PlayedFigures } from '@/app/fromPlaying'
import type { ToldSpots } from '@/app/hardSpots'
import { spotPlace, type ListedSpot } from '@/app/spotList'
import { moveSpot, saySpot } from '@/app/spotWords'
import type { Bar, HandChoice, Score } from '@/music/music'
import { tick, type Tempo } from '@/music/units'
import { caution } from './cautions'
import { useHardSpots } from './useHardSpots'
import type { Passage } from './passageKeys'
import { describePlace, formatBars, handWords, plural } from './words'
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
  const { spots, isLooking, problem, carried, words, say } = useHardSpots(score, goal, hand)
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
    const rank = `${standing.indexOf(spot) + by + 1} of ${standing.length}`
    setSaid(`${capital(describeSpot(score, spot))}: ${rank}`)
  }
  const add = (): void => {
    const place = spotPlace(score, { from: first.start, to: tick(last.start + last.length), hand })
    if (words) say(saySpot(words, [place], 'accepted'))
    setSaid(`${capital(formatBars(first, last))}, ${handWords[hand]}: a hard spot by your word`)
  }
  return (
    <section className="spots" aria-labelledby="spots" ref={box} tabIndex={-1}>
      <div className="row spots-head">
        <h2 id="spots">Hard spots</h2>
        <p className="soft" aria-live="polite">
          {isLooking ? 'Looking for them …' : said}
        </p>
        <span className="row tight">
          <button type="button" disabled={!words} onClick={add}>
            Add {formatBars(first, last)}
          </button>
          <button
            type="button"
            disabled={!words || open.length === 0}
            onClick={() => word(open, 'accepted', `${plural(open.length, 'passage')} made`)}
          >
            Make passages of these
          </button>
        </span>
      </div>
      {problem !== undefined && <p className="notice">{problem}</p>}
      {carried && <p className="notice">{describeCarriedSpots(carried)}</p>}
      <ol className="spots-list" aria-busy={spots === undefined}>
        {standing.map((spot, i) => (
          <Spot
            key={`${spot.place.from}-${spot.place.to}/${spot.place.hand}`}
            {...props}
            spot={spot}
            isFirst={i === 0}
            isLast={i === standing.length - 1}
            canSay={words !== undefined}
            onWord={(next) => word([spot], next, toldOf(score, spot, next))}
            onMove={(by) => move(spot, by)}
          />
        ))}
        {spots && standing.length === 0 && (
          <li className="soft">Nothing here is harder than the rest.</li>
        )}
      </ol>
      <p className="soft spots-limits">
        A program sees nothing of voicing, pedalling, memory and nerves: correct the list by what
        your hands say.
        {standing.some(({ strains }) => strains) && ` ${caution}`}
      </p>
      {rejected.length > 0 && (
        <details className="spots-rejected">
          <summary>{plural(rejected.length, 'rejected spot')}</summary>
          <ul>
            {rejected.map((spot) => (
              <li key={`${spot.place.from}-${spot.place.to}/${spot.place.hand}`} className="row">
                {describeSpot(score, spot)}
                <button
                  type="button"
                  aria-label={`Take back: ${describeSpot(score, spot)}`}
                  onClick={() => word([spot], 'accepted', toldOf(score, spot, 'accepted'))}
                >
                  Take back
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}

interface SpotProps extends HardSpotsProps {
  readonly spot: ListedSpot
  readonly isFirst: boolean
  readonly isLast: boolean
  readonly canSay: boolean
  readonly onWord: (word: 'accepted' | 'rejected') => void
  readonly onMove: (by: 1 | -1) => void
}

const Spot = (props: SpotProps) => {
  const { score, spot, canSay } = props
  const where = describeSpot(score, spot)
  const { reasons, practise, word, depth, played } = spot
  // The row goes elsewhere with its button; the focus stays on it.
  const move = (by: 1 | -1) => (event: React.MouseEvent<HTMLButtonElement>) => {
    const button = event.currentTarget
    props.onMove(by)
    window.requestAnimationFrame(() => button.focus())
  }
  return (
    <li className="spot">
      <i className="spot-depth" data-depth={depth} data-passage={word === 'accepted'} />
      <div className="spot-words">
        <p>
          <b>{where}</b>
          {word === 'accepted' && <span className="soft"> · a passage</span>}
        </p>
        {played && <p className="spot-played">{describePlayed(played)}</p>}
        {reasons.length > 0 ? (
          <details>
            <summary>{reasons.join('; ')}</summary>
            <ul>
              {practise.map((way, i) => (
                <li key={way}>
                  {reasons[i]}: {way}
                </li>
              ))}
            </ul>
          </details>
        ) : (
          !played && <p className="soft">a hard spot by your word</p>
        )}
      </div>
      <span className="row tight spot-buttons">
        <button
          type="button"
          aria-label={`To its build-up: ${where}`}
          onClick={() => props.onBuild(spot)}
        >
          <Label wide="To its build-up" narrow="Build-up" />
        </button>
        <button
          type="button"
          aria-label={`Choose: ${where}`}
          onClick={() => props.onChoose(barsOf(score, spot))}
        >
          Choose
        </button>
        <button
          type="button"
          aria-label={`Accept: ${where}`}
          aria-pressed={word === 'accepted'}
          disabled={!canSay}
          onClick={() => props.onWord('accepted')}
        >
          <Label wide="Accept" narrow="✓" />
        </button>
        <button
          type="button"
          aria-label={`Reject: ${where}`}
          disabled={!canSay}
          onClick={() => props.onWord('rejected')}
        >
          <Label wide="Reject" narrow="✕" />
        </button>
        <button
          type="button"
          aria-label={`Move up: ${where}`}
          disabled={!canSay || props.isFirst}
          onClick={move(-1)}
        >
          ↑
        </button>
        <button
          type="button"
          aria-label={`Move down: ${where}`}
          disabled={!canSay || props.isLast}
          onClick={move(1)}
        >
          ↓
        </button>
      </span>
    </li>
  )
}

/** On a narrow screen all that can be done with a spot stands in one row. */
const Label = ({ wide, narrow }: { readonly wide: string; readonly narrow: string }) => (
  <>
    <span className="wide">{wide}</span>
    <span className="narrow" aria-hidden="true">
      {narrow}
    </span>
  </>
)

const barsOf = ({ bars }: Score, { from, to }: ListedSpot): Passage => ({
  from: Math.max(
    0,
    bars.findLastIndex(({ start }) => start <= from),
  ),
  to: Math.max(
    0,
    bars.findLastIndex(({ start }) => start < to),
  ),
})

/** 'bar 7, beat 1 to bar 8, beat 2, right hand'; within one bar 'bar 7, beat 1 to beat 4, right hand'. */
const describeSpot = (score: Score, spot: ListedSpot): string => {
  const [from, to] = [describePlace(score, spot.from), describePlace(score, spot.to - 1)]
  const [bar = ''] = from.split(', ')
  const end = to.startsWith(`${bar}, `) ? to.slice(bar.length + 2) : to
  return `${from}${from === to ? '' : ` to ${end}`}, ${handWords[spot.place.hand]}`
}

/** At least, since two flaws of one beat may be of one repetition or of two. */
const describePlayed = ({ flawed, of }: PlayedFigures): string =>
  `From your playing: flawed here in at least ${flawed} of ${of} repetitions`

const describeCarriedSpots = ({ carried, dropped, problem }: ToldSpots): string => {
  const lost =
    dropped > 0
      ? `; ${dropped} ${dropped === 1 ? 'is' : 'are'} dropped, since most of the notes are not in this edition`
      : ''
  const sentence = `Of your words on ${plural(carried + dropped, 'hard spot')} ${carried} ${carried === 1 ? 'holds' : 'hold'} here${lost}.`
  return problem === undefined ? sentence : `${sentence} ${problem}`
}

const toldOf = (score: Score, spot: ListedSpot, word: 'accepted' | 'rejected'): string =>
  word === 'accepted'
    ? `${capital(describeSpot(score, spot))}: a passage`
    : `${capital(describeSpot(score, spot))}: rejected, folded away under the list`

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
