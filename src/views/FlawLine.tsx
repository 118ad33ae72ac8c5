import { useEffect, useRef, useSyncExternalStore } from 'react'
import type { Asked } from '@/review/asked'
import type { Line, Lines } from './lines'
import { useNear } from './useNear'
import { usePrinting } from './usePrinting'
import type { LineStretch } from './flawStretches'
import type { LineFlaws, NoteFlaws } from './weighedFlaws'

/** One line of the piece with the marks of its flaws; its drawing is on the page while it is in sight, and on paper. */
export const FlawLine = ({
  lines,
  index,
  label,
  height,
  flaws: { notes, stretches },
  address,
}: {
  readonly lines: Lines
  readonly index: number
  readonly label: string
  /** Until it is drawn. */
  readonly height: number
  /** Whose numbers are shown; none while they are not asked for. */
  readonly flaws: LineFlaws
  /** Where the repetitions with a flaw at a note, or over a stretch, are listed. */
  readonly address: (at: Asked) => string
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
          {stretches
            .filter(({ isBegin }) => isBegin)
            .map((each) => (
              <StretchCount
                key={`${each.flaw.note} ${each.flaw.until}`}
                line={line}
                stretch={each}
                address={address}
              />
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
  readonly address: (at: Asked) => string
}) => {
  const at = places.notes.get(note)
  if (!at) return null
  const top = hand === 'left' ? Math.max(places.bottom, at.y) : Math.min(places.top, at.y)
  return (
    <a
      className="flaw-count"
      data-hand={hand}
      href={address({ note })}
      style={{ left: at.x * engraving.width, top: top * engraving.height }}
    >
      {times}
    </a>
  )
}

/** Before its mark, in the same row under the line. */
const StretchCount = ({
  line: { places, engraving },
  stretch: { flaw, mark },
  address,
}: {
  readonly line: Line
  readonly stretch: LineStretch
  readonly address: (at: Asked) => string
}) => {
  const { note, until, kind, times } = flaw
  const at = places.notes.get(mark.from)
  if (!at || until === undefined || engraving.lowest === undefined) return null
  return (
    <a
      className="flaw-count of-stretch"
      href={address({ note, until, flaw: kind })}
      style={{
        left: at.x * engraving.width,
        top: (engraving.lowest + (mark.under ?? 0) * places.space) * engraving.height,
      }}
    >
      {times}
    </a>
  )
}
