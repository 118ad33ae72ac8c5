import {
  useEffect,
  useRef,
  useState,
  useSyncExternalStore,
  type ReactNode,
  type RefObject,
} from 'react'
import { explainFault } from '@/engraving/fault'
import type { SystemBars } from '@/engraving/systems'
import { pieceText } from '@/text/piece'
import type { Lines } from './lines'
import { MusicPages, type Marked } from './MusicPages'
import { moveByKey, type Chosen, type Passage } from './passageKeys'
import { useKeysByName } from './pieceKeys'
import { phrase } from './phrase'
import { useBarDrag } from './useBarDrag'
import { useLines, usePlan, useWidth } from './useSheet'
import { formatBars } from './words'

/** Staff spaces in CSS pixels; 5.5 shows a page at a glance, 13 is read from the bench. */
const sizes = [5.5, 7.5, 10, 13] as const
/** The size to begin with: smaller where the screen is narrow. */
const firstSize = (): number => (window.innerWidth < 700 ? 0 : 1)

/** The whole piece, line by line, with what is chosen and what is known of it. */
export const WholePiece = (props: Chosen & Marked) => {
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
        <h2 id="whole">{pieceText.whole.title}</h2>
        <Progress lines={lines} count={plan.length} />
        <span className="row tight zoom">
          <button
            type="button"
            onClick={() => zoom(-1)}
            disabled={size === 0}
            aria-label={pieceText.whole.smaller}
          >
            −
          </button>
          <button
            type="button"
            onClick={() => zoom(1)}
            disabled={size === sizes.length - 1}
            aria-label={pieceText.whole.larger}
          >
            +
          </button>
        </span>
      </div>
      <p className="soft whole-how">
        {phrase(
          pieceText.whole.how<ReactNode>({
            untouched: <i className="chunk-mark" data-state="untouched" />,
            practised: <i className="chunk-mark" data-state="practised" />,
            secure: <i className="chunk-mark" data-state="secure" />,
            kept: <i className="chunk-mark" data-state="kept" />,
            slipped: <i className="chunk-mark" data-state="slipped" />,
            hard: <i className="spot-depth" data-depth="1" />,
            harder: <i className="spot-depth" data-depth="3" />,
            passage: <i className="spot-depth" data-depth="2" data-passage="true" />,
          }),
        )}
      </p>
      <div
        ref={box}
        className="music"
        tabIndex={0}
        role="slider"
        aria-label={pieceText.whole.chosenBars}
        aria-valuemin={0}
        aria-valuemax={score.bars.length - 1}
        aria-valuenow={passage.from}
        aria-valuetext={first && last ? formatBars(first, last) : ''}
        data-pages={pages}
        onKeyDown={(event) => moveByKey(event, props)}
      >
        <MusicPages {...props} lines={lines} plan={plan} space={space} pages={pages} />
      </div>
    </section>
  )
}

const Progress = ({ lines, count }: { readonly lines: Lines; readonly count: number }) => {
  const drawn = useSyncExternalStore(lines.watch, lines.progress)
  const problem = useSyncExternalStore(lines.watch, lines.problem)
  if (problem) return <p className="soft">{explainFault(problem)}</p>
  if (drawn >= count) return null
  return <p className="soft">{pieceText.whole.progress(drawn, count)}</p>
}

/** Where the music is what one looks at, the page goes along with the passage when it moves away. */
const useFollowing = (
  box: RefObject<HTMLElement | null>,
  plan: readonly SystemBars[],
  { from }: Passage,
): void =>
  useEffect(() => {
    const music = box.current
    if (!music || music.getBoundingClientRect().top > window.innerHeight / 2) return
    const line = plan.findIndex(({ toBar }) => toBar >= from)
    music.querySelector(`[data-line="${line}"]`)?.scrollIntoView({ block: 'nearest' })
  }, [box, plan, from])
