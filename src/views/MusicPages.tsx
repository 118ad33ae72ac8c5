import { useMemo } from 'react'
import type { ListedSpot } from '@/app/spotList'
import type { SystemBars } from '@/engraving/systems'
import type { Chunk } from '@/music/chunk'
import type { Score } from '@/music/music'
import type { ChunkId, NoteId } from '@/music/units'
import type { ChunkState } from '@/review/chunkStates'
import { pieceText } from '@/text/piece'
import { markChunks } from './chunkMarks'
import type { Lines } from './lines'
import { MusicLine } from './MusicLine'
import type { Passage } from './passageKeys'
import { markSpots } from './spotMarks'
import { lineHeight, linesOnPage } from './useSheet'
import { formatBars } from './words'

/** What is marked on the music, and the lines that it stands on. */
export interface Marked {
  readonly score: Score
  readonly passage: Passage
  readonly chunks: readonly Chunk[]
  readonly states: ReadonlyMap<ChunkId, ChunkState>
  readonly spots: readonly ListedSpot[]
  readonly picked: NoteId | undefined
}

interface PagesProps extends Marked {
  readonly lines: Lines
  readonly plan: readonly SystemBars[]
  readonly space: number
  readonly pages: 1 | 2
}

/** The lines of a piece with what is marked on each, on one page or on two side by side. */
export const MusicPages = (props: PagesProps) => {
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
        label={first && last ? labelOf(formatBars(first, last), hard.has(index)) : ''}
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

const labelOf = (bars: string, isHard: boolean): string =>
  isHard ? pieceText.whole.lineWithSpot(bars) : bars

const noMarks = [] as const
