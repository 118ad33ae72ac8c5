import { useEffect, useId, useRef, useState, type ReactNode } from 'react'
import { reviewText } from '@/text/review'
import { dateWords } from '@/text/dates'

/** A picture, a sentence that says what it shows, and its figures as a table. */
export const Plot = ({
  sentence,
  height,
  draw,
  table,
}: {
  readonly sentence: ReactNode
  readonly height: number
  readonly draw: (width: number) => ReactNode
  readonly table: ReactNode
}) => {
  const box = useRef<HTMLElement>(null)
  const width = useWidth(box)
  const id = useId()
  return (
    <figure ref={box} className="plot">
      {width > 0 && (
        <svg
          viewBox={`0 0 ${width} ${height}`}
          role="img"
          aria-labelledby={id}
          preserveAspectRatio="xMidYMid meet"
        >
          {draw(width)}
        </svg>
      )}
      <figcaption id={id}>{sentence}</figcaption>
      <details className="plot-table">
        <summary>{reviewText.asTable}</summary>
        <div className="scroll">{table}</div>
      </details>
    </figure>
  )
}

/** As wide as its place; 0 until that is known. */
const useWidth = (box: React.RefObject<HTMLElement | null>): number => {
  const [width, setWidth] = useState(0)
  useEffect(() => {
    const element = box.current
    if (!element) return
    const observer = new ResizeObserver(() => setWidth(Math.floor(element.clientWidth)))
    observer.observe(element)
    return () => observer.disconnect()
  }, [box])
  return width
}

/** Room for the words beside and below the figures, pixels. */
export const left = 58
export const right = 12
export const top = 12
const labelRoom = 64

export interface Dated {
  readonly from: string
  readonly at: number
}

interface Scale {
  readonly x: (at: number) => number
  readonly spacing: number
}

/** Time goes on evenly, also where nothing was played. */
export const scaleOf = (dated: readonly Dated[], width: number): Scale => {
  const [first, last] = [dated[0]?.at ?? 0, dated.at(-1)?.at ?? 0]
  const inner = width - left - right
  const spacing = inner / (last - first + 1)
  return { x: (at) => left + (at - first + 0.5) * spacing, spacing }
}

/** As many dates as have room, the last one first. */
export const DateLabels = ({
  periods,
  x,
  width,
  y,
}: {
  readonly periods: readonly Dated[]
  readonly x: (at: number) => number
  readonly width: number
  readonly y: number
}) => {
  /** The outermost stay within the picture. */
  const placeOf = (at: number): number => Math.min(x(at), width - labelRoom / 2)
  let free = width
  const shown = periods.toReversed().filter(({ at }) => {
    const place = placeOf(at)
    if (place + labelRoom / 2 > free || place <= left) return false
    free = place - labelRoom / 2
    return true
  })
  return shown.map(({ from, at }) => (
    <text key={from} className="plot-date" x={placeOf(at)} y={y} textAnchor="middle">
      {dateWords(from, 'short')}
    </text>
  ))
}
