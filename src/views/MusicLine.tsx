import { memo, useEffect, useRef, useSyncExternalStore } from 'react'
import type { NoteId } from '@/music/units'
import type { ChunkState } from '@/review/chunkStates'
import type { Line, Lines } from './lines'
import type { SpotMark } from './spotMarks'
import { useNear } from './useNear'
import { usePrinting } from './usePrinting'

/** What is pencilled over a line: a chunk from one note to another. */
export interface ChunkMark {
  readonly from: NoteId
  readonly to: NoteId
  /** The chunk begins, ends in this line. */
  readonly begins: boolean
  readonly ends: boolean
  readonly state: ChunkState | 'untouched'
  /** Neighbours share a note, so they lie in two rows. */
  readonly row: 0 | 1
}

interface MusicLineProps {
  readonly lines: Lines
  readonly index: number
  readonly label: string
  /** Until it is drawn. */
  readonly height: number
  /** Bars of this line, counted in it, that are chosen; negative when none is. */
  readonly chosenFrom: number
  readonly chosenTo: number
  readonly chosenBegins: boolean
  readonly chosenEnds: boolean
  readonly chunks: readonly ChunkMark[]
  readonly spots: readonly SpotMark[]
  readonly picked: NoteId | undefined
}

/** One line of the music. Its drawing is on the page only while it is in sight or near. */
export const MusicLine = memo((props: MusicLineProps) => {
  const { lines, index, label, height } = props
  const box = useRef<HTMLDivElement>(null)
  // On paper all lines stand, wherever the window is scrolled to.
  const isPrinting = usePrinting()
  const isNear = useNear(box) || isPrinting
  useEffect(() => {
    lines.setNear(index, isNear)
    return () => lines.setNear(index, false)
  }, [lines, index, isNear])
  const line = useSyncExternalStore(lines.watch, () => lines.line(index))
  return (
    <div
      ref={box}
      className="line"
      data-line={index}
      data-drawn={line !== undefined}
      role="img"
      aria-label={label}
      style={{ height: line?.engraving.height ?? height }}
    >
      {isNear && line && (
        <>
          {props.spots.map((spot) => (
            <HardSpot key={spot.name} line={line} spot={spot} />
          ))}
          {props.chosenFrom >= 0 && <Chosen {...props} />}
          <div
            className="line-music"
            style={{ width: line.engraving.width, height: line.engraving.height }}
            // The engraver's own output; it carries no text from outside.
            dangerouslySetInnerHTML={{ __html: line.engraving.svg }}
          />
          <Marks {...props} />
        </>
      )}
    </div>
  )
})

const percent = (share: number): string => `${(share * 100).toFixed(2)}%`

/** Under the notes, over the staff of its hand or over both; its ends stand a head before their notes. */
const HardSpot = ({ line, spot }: { readonly line: Line; readonly spot: SpotMark }) => {
  const { places, engraving } = line
  const head = (places.bottom - places.top) * headShare * (engraving.height / engraving.width)
  const xOf = (note: NoteId | undefined): number | undefined => {
    const at = note === undefined ? undefined : places.notes.get(note)?.x
    return at === undefined ? undefined : at - head
  }
  const left = xOf(spot.from) ?? places.bars[spot.fromBar]?.left ?? 0
  const right = xOf(spot.before) ?? places.bars[spot.toBar]?.right ?? 1
  const middle = (places.top + places.bottom) / 2
  const [top, bottom] = [
    spot.hand === 'left' ? middle : places.top - beyondStaff,
    spot.hand === 'right' ? middle : places.bottom + beyondStaff,
  ]
  return (
    <div
      className="spot-mark"
      data-depth={spot.depth}
      data-passage={spot.isPassage}
      style={{
        left: left * engraving.width,
        width: Math.max(0, right - left) * engraving.width,
        top: top * engraving.height,
        height: (bottom - top) * engraving.height,
      }}
    />
  )
}

/** A head against the height of two staves. */
const headShare = 0.06
/** So far above and below the staves, of the height of the line. */
const beyondStaff = 0.04

/** The bracket around the chosen bars, over all lines in which they stand. */
const Chosen = ({
  lines,
  index,
  chosenFrom,
  chosenTo,
  chosenBegins,
  chosenEnds,
}: MusicLineProps) => {
  const line = lines.line(index)
  const first = line?.places.bars[chosenFrom]
  const last = line?.places.bars[chosenTo]
  if (!line || !first || !last) return null
  const { width } = line.engraving
  return (
    <div
      className="chosen"
      data-begins={chosenBegins}
      data-ends={chosenEnds}
      style={{
        left: first.left * width - besideNumber,
        width: (last.right - first.left) * width + besideNumber,
      }}
    />
  )
}

/** The bar number stands over the bar line: the bracket begins left of it, CSS pixels. */
const besideNumber = 7

const Marks = ({ lines, index, chunks, picked }: MusicLineProps) => {
  const line = lines.line(index)
  if (!line) return null
  const { places, engraving } = line
  const ring = picked === undefined ? undefined : places.notes.get(picked)
  return (
    <div className="line-marks" style={{ width: engraving.width }}>
      {chunks.map(({ from, to, begins, ends, state, row }) => {
        const left = (begins ? places.notes.get(from)?.x : undefined) ?? places.bars[0]?.left ?? 0
        const right = (ends ? places.notes.get(to)?.x : undefined) ?? places.bars.at(-1)?.right ?? 1
        return (
          <div
            key={from}
            className="chunk-mark"
            data-state={state}
            data-begins={begins}
            data-ends={ends}
            data-row={row}
            style={{ left: percent(left), width: percent(right - left) }}
          />
        )
      })}
      {ring && (
        <div className="picked" style={{ left: percent(ring.x), top: ring.y * engraving.height }} />
      )}
    </div>
  )
}
