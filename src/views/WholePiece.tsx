import { useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react'
import { planSystems, type SystemBars } from '@/engraving/systems'
import type { ListedSpot } from '@/app/spotList'
import type { ChunkState } from '@/review/chunkStates'
import type { Chunk } from '@/music/chunk'
import type { Score } from '@/music/music'
import type { ChunkId, NoteId } from '@/music/units'
import { markChunks } from './chunkMarks'
import { useEngraver } from './context'
import { createLines, type Lines } from './lines'
import { MusicLine } from './MusicLine'
import { useBarDrag } from './useBarDrag'
import { useKeysByName } from './pieceKeys'
import { markSpots } from './spotMarks'
import { formatBars } from './words'

/** The chosen bars by their indices, and whether the page should go to them. */
export interface Passage {
  readonly from: number
  readonly to: number
}

interface WholePieceProps {
  readonly score: Score
  readonly passage: Passage
  readonly onPassage: (passage: Passage) => void
  readonly chunks: readonly Chunk[]
  readonly states: ReadonlyMap<ChunkId, ChunkState>
  readonly spots: readonly ListedSpot[]
  readonly picked: NoteId | undefined
  readonly onPick: (note: NoteId | undefined) => void
}

/** Staff spaces in CSS pixels; 5.5 shows a page at a glance, 13 is read from the bench. */
const sizes = [5.5, 7.5, 10, 13] as const
/** The size to begin with: smaller where the screen is narrow. */
const firstSize = (): number => (window.innerWidth < 700 ? 0 : 1)
/** From this width of the window on two pages stand side by side, CSS pixels. */
const twoPagesFrom = 1600
/** The space between two pages, and the least width of one. */
const gutter = 48
const leastWidth = 120
/** A line of both hands is about so many staff spaces high, until it is drawn. */
const lineHeight = 25

/** The whole piece, line by line, with what is chosen and what is known of it. */
export const WholePiece = (props: WholePieceProps) => {
  const { score, passage } = props
  const box = useRef<HTMLDivElement>(null)
  const [size, setSize] = useState(firstSize)
  const space = sizes[size] ?? sizes[1]
  const { width, pages, plan } = usePlan(score, useWidth(box), space)
  const lines = useLines(props.score, plan, width, space)
  const [first, last] = [score.bars[passage.from], score.bars[passage.to]]
  const zoom = (by: 1 | -1): void =>
    setSize((now) => Math.min(sizes.length - 1, Math.max(0, now + by)))
  useFollowing(box, plan, passage)
  useKeysByName({ '+': () => zoom(1), '=': () => zoom(1), '-': () => zoom(-1) })
  useBarDrag(box, {
    lines,
    plan,
    onDrag: (from, to) => {
      props.onPick(undefined)
      props.onPassage({ from: Math.min(from, to), to: Math.max(from, to) })
    },
    onPress: (bar, note) => {
      props.onPick(note)
      if (bar < passage.from || bar > passage.to) props.onPassage({ from: bar, to: bar })
    },
  })
  return (
    <section className="whole" aria-labelledby="whole">
      <div className="row whole-head">
        <h2 id="whole">The whole piece</h2>
        <Progress lines={lines} count={plan.length} />
        <span className="row tight zoom">
          <button
            type="button"
            onClick={() => zoom(-1)}
            disabled={size === 0}
            aria-label="Smaller notes"
          >
            −
          </button>
          <button
            type="button"
            onClick={() => zoom(1)}
            disabled={size === sizes.length - 1}
            aria-label="Larger notes"
          >
            +
          </button>
        </span>
      </div>
      <p className="soft whole-how">
        Choose bars by dragging over them, by playing their first notes, or with the arrow keys and
        Shift. Under the staves: <i className="chunk-mark" data-state="untouched" /> a chunk to
        drill, <i className="chunk-mark" data-state="practised" /> practised,{' '}
        <i className="chunk-mark" data-state="secure" /> secure,{' '}
        <i className="chunk-mark" data-state="kept" /> kept on a later day,{' '}
        <i className="chunk-mark" data-state="slipped" /> slipped. Over them:{' '}
        <i className="spot-depth" data-depth="1" /> a hard spot, harder{' '}
        <i className="spot-depth" data-depth="3" />, a passage{' '}
        <i className="spot-depth" data-depth="2" data-passage="true" />.
      </p>
      <div
        ref={box}
        className="music"
        tabIndex={0}
        role="slider"
        aria-label="Chosen bars"
        aria-valuemin={0}
        aria-valuemax={score.bars.length - 1}
        aria-valuenow={passage.from}
        aria-valuetext={first && last ? formatBars(first, last) : ''}
        data-pages={pages}
        onKeyDown={(event) => moveByKey(event, props)}
      >
        <Pages {...props} lines={lines} plan={plan} space={space} pages={pages} />
      </div>
    </section>
  )
}

const Progress = ({ lines, count }: { readonly lines: Lines; readonly count: number }) => {
  const drawn = useSyncExternalStore(lines.watch, lines.progress)
  const problem = useSyncExternalStore(lines.watch, lines.problem)
  if (problem !== undefined) return <p className="soft">{problem}</p>
  if (drawn >= count) return null
  return (
    <p className="soft">
      Engraving the lines: {drawn} of {count}
    </p>
  )
}

interface PagesProps extends WholePieceProps {
  readonly lines: Lines
  readonly plan: readonly SystemBars[]
  readonly space: number
  readonly pages: 1 | 2
}

const Pages = (props: PagesProps) => {
  const { score, plan, lines, space, pages, passage, chunks, states, picked } = props
  const marks = useMemo(
    () => markChunks(score, plan, chunks, states),
    [score, plan, chunks, states],
  )
  const hard = useMemo(() => markSpots(score, plan, props.spots), [score, plan, props.spots])
  const height = Math.round(lineHeight * space)
  const lineOf = ({ fromBar, toBar }: SystemBars, index: number) => {
    const [first, last] = [score.bars[fromBar], score.bars[toBar]]
    const isChosen = fromBar <= passage.to && toBar >= passage.from
    return (
      <MusicLine
        key={fromBar}
        lines={lines}
        index={index}
        label={
          first && last ? `${formatBars(first, last)}${hard.has(index) ? ', a hard spot' : ''}` : ''
        }
        height={height}
        chosenFrom={isChosen ? Math.max(0, passage.from - fromBar) : -1}
        chosenTo={isChosen ? Math.min(toBar, passage.to) - fromBar : -1}
        chosenBegins={passage.from >= fromBar}
        chosenEnds={passage.to <= toBar}
        chunks={marks.get(index) ?? noMarks}
        spots={hard.get(index) ?? noMarks}
        picked={picked}
      />
    )
  }
  if (pages === 1) return plan.map(lineOf)
  const perPage = linesOnPage(space)
  const count = Math.ceil(plan.length / perPage)
  return Array.from({ length: count }, (_, page) => (
    <div key={page} className="music-page">
      {plan
        .slice(page * perPage, (page + 1) * perPage)
        .map((bars, i) => lineOf(bars, page * perPage + i))}
    </div>
  ))
}

const noMarks = [] as const

/** Where the music is what one looks at, the page goes along with the passage when it moves away. */
const useFollowing = (
  box: React.RefObject<HTMLElement | null>,
  plan: readonly SystemBars[],
  { from }: Passage,
): void =>
  useEffect(() => {
    const music = box.current
    if (!music || music.getBoundingClientRect().top > window.innerHeight / 2) return
    const line = plan.findIndex(({ toBar }) => toBar >= from)
    music.querySelector(`[data-line="${line}"]`)?.scrollIntoView({ block: 'nearest' })
  }, [box, plan, from])

/** The lines of a sheet of this width; a new sheet begins anew. */
const useLines = (
  score: Score,
  plan: readonly SystemBars[],
  width: number,
  space: number,
): Lines => {
  const engraver = useEngraver()
  const [lines] = useState(() => createLines(engraver))
  useEffect(() => {
    if (plan.length > 0) lines.show({ score, plan, width, space })
  }, [lines, score, plan, width, space])
  useEffect(() => lines.stop, [lines])
  return lines
}

interface Plan {
  readonly plan: readonly SystemBars[]
  /** Of one page. */
  readonly width: number
  readonly pages: 1 | 2
}

/** The lines on one page or on two side by side; a piece that fills no page stands on one. */
const usePlan = (score: Score, whole: number, space: number): Plan => {
  // As it was opened: hands that are corrected later do not matter for it, and the lines stay.
  const [opened] = useState(score)
  return useMemo((): Plan => {
    const half = Math.floor((whole - gutter) / 2)
    if (window.innerWidth >= twoPagesFrom && half >= leastWidth) {
      const plan = planSystems(opened, half / space)
      if (plan.length > linesOnPage(space)) return { plan, width: half, pages: 2 }
    }
    const plan = whole < leastWidth ? [] : planSystems(opened, whole / space)
    return { plan, width: whole, pages: 1 }
  }, [opened, whole, space])
}

/** So many lines fill the window under the head and above the buttons. */
const linesOnPage = (space: number): number =>
  Math.max(2, Math.floor((window.innerHeight - 160) / (lineHeight * space)))

/** The width of the music, when the window has kept its size for a moment; 0 at first. */
const useWidth = (box: React.RefObject<HTMLElement | null>): number => {
  const [width, setWidth] = useState(0)
  useEffect(() => {
    const element = box.current
    if (!element) return
    let timer = 0
    const measure = (): void => setWidth(Math.floor(element.clientWidth))
    measure()
    const observer = new ResizeObserver(() => {
      window.clearTimeout(timer)
      timer = window.setTimeout(measure, 150)
    })
    observer.observe(element)
    return () => {
      window.clearTimeout(timer)
      observer.disconnect()
    }
  }, [box])
  return width
}

/** Left and right move the passage by a bar, or its end with Shift; up and down pick a note in it. */
const moveByKey = (event: React.KeyboardEvent, props: WholePieceProps): void => {
  const { score, passage, onPassage, onPick, picked } = props
  const { from, to } = passage
  const last = score.bars.length - 1
  const within = (bar: number): number => Math.min(last, Math.max(0, bar))
  const move = (by: number): void => {
    onPick(undefined)
    if (event.shiftKey) onPassage({ from, to: Math.max(from, within(to + by)) })
    else if (from + by >= 0 && to + by <= last) onPassage({ from: from + by, to: to + by })
  }
  const pick = (by: 1 | -1): void => {
    const inside = score.notes.filter(({ barIndex }) => barIndex >= from && barIndex <= to)
    const now = inside.findIndex(({ id }) => id === picked)
    const next = now < 0 ? (by > 0 ? 0 : inside.length - 1) : now + by
    onPick(inside[next]?.id)
  }
  const actions: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => move(-1),
    ArrowRight: () => move(1),
    ArrowDown: () => pick(1),
    ArrowUp: () => pick(-1),
    Home: () => onPassage({ from: 0, to: to - from }),
    End: () => onPassage({ from: last - (to - from), to: last }),
    Escape: () => onPick(undefined),
  }
  const run = actions[event.key]
  if (!run || event.ctrlKey || event.altKey || event.metaKey) return
  event.preventDefault()
  run()
}
