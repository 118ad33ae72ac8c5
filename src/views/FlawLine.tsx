import { useEffect, useRef, useSyncExternalStore } from 'react'
import type { NoteId } from '@/music/units'
import type { Line, Lines } from './lines'
import { useNear } from './useNear'
import { usePrinting } from './usePrinting'
import type { NoteFlaws } from './weighedFlaws'

/** One line of the piece with the marks of its flaws; its drawing is on the page while it is in sight, and on paper. */
export const FlawLine = ({
  lines,
  index,
  label,
  height,
  notes,
  address,
}: {
  readonly lines: Lines
  readonly index: number
  readonly label: string
  /** Until it is drawn. */
  readonly height: number
  /** Whose numbers are shown; none while they are not asked for. */
  readonly notes: readonly NoteFlaws[]
  /** Where the repetitions with a flaw at a note are listed. */
  readonly address: (note: NoteId) => string
}) => {
  const box = useRef<HTMLDivElement>(null)
  const isNear = useNear(box)
  const isPrinting = usePrinting()
  useEffect(() => {
    lines.setNear(index, isNear)
    return () => lines.setNear(index, false)
  }, [lines, index, isNear])
  const line = useSyncExternalStore(lines.watch, () => lines.line(index))
  const failed = useSyncExternalStore(lines.watch, lines.problem) !== undefined
  return (
    <div
      ref={box}
      className="line flaw-line"
      data-line={index}
      data-drawn={line !== undefined}
      data-drawing={line ? 'drawn' : failed ? 'failed' : 'waiting'}
      style={{ height: line?.engraving.height ?? height }}
    >
      {(isNear || isPrinting) && line && (
        <>
          <div
            className="line-music"
            role="img"
            aria-label={label}
            style={{ width: line.engraving.width, height: line.engraving.height }}
            // The engraver's own output; it carries no text from outside.
            dangerouslySetInnerHTML={{ __html: line.engraving.svg }}
          />
          {notes.map((each) => (
            <Count key={each.note} line={line} flaws={each} address={address} />
          ))}
        </>
      )}
    </div>
  )
}

/** Over the upper staff, or under the lower one: how often, and the way to the repetitions. */
const Count = ({
  line: { places, engraving },
  flaws: { note, hand, times },
  address,
}: {
  readonly line: Line
  readonly flaws: NoteFlaws
  readonly address: (note: NoteId) => string
}) => {
  const at = places.notes.get(note)
  if (!at) return null
  const top = hand === 'left' ? Math.max(places.bottom, at.y) : Math.min(places.top, at.y)
  return (
    <a
      className="flaw-count"
      data-hand={hand}
      href={address(note)}
      style={{ left: at.x * engraving.width, top: top * engraving.height }}
    >
      {times}
    </a>
  )
}
