import { useEffect, useRef, useState } from 'react'
import { explainFault } from '@/engraving/fault'
import { openPencil, type Pencil } from '@/engraving/pencil'
import { drillText } from '@/text/drill'
import { useDrawing, type Size, type Stretch } from './useDrawing'

/**
 * A stretch of the score as staff notation that fills its box. `onPencil` gets the pencil for the
 * drawing on the page, so that marks are put on it without rendering.
 */
export const Notation = ({
  stretch,
  ahead,
  label,
  caller,
  onPencil,
}: {
  readonly stretch: Stretch
  /** What will stand here next: engraved when this is drawn, so that it is there at once. */
  readonly ahead?: Stretch | undefined
  readonly label: string
  readonly caller: string
  readonly onPencil?: (pencil: Pencil | undefined) => void
}) => {
  const box = useRef<HTMLDivElement>(null)
  const sheet = useRef<HTMLDivElement>(null)
  const size = useSize(box)
  const drawing = useDrawing(stretch, ahead, caller, size)
  const engraving = drawing.kind === 'drawn' ? drawing.engraving : undefined
  useEffect(() => {
    const element = sheet.current?.querySelector('svg')
    if (!engraving || !element || !onPencil) return
    onPencil(openPencil(element))
    return () => onPencil(undefined)
  }, [engraving, onPencil])
  return (
    <div ref={box} className="notation" data-drawing={drawing.kind}>
      {drawing.kind === 'waiting' && (
        <p className="notation-note soft">{drillText.notation.drawing}</p>
      )}
      {drawing.kind === 'failed' && <p className="notation-note">{explainFault(drawing.fault)}</p>}
      {engraving && (
        <div
          ref={sheet}
          className="sheet"
          style={{ width: engraving.width, height: engraving.height }}
          role="img"
          aria-label={label}
          // The engraver's own output; it carries no text from outside.
          dangerouslySetInnerHTML={{ __html: engraving.svg }}
        />
      )}
    </div>
  )
}

const useSize = (box: React.RefObject<HTMLDivElement | null>): Size | undefined => {
  const [size, setSize] = useState<Size>()
  useEffect(() => {
    const element = box.current
    if (!element) return
    const observer = new ResizeObserver(([entry]) => {
      if (!entry) return
      const width = Math.floor(entry.contentRect.width)
      const height = Math.floor(entry.contentRect.height)
      setSize((old) => (old?.width === width && old.height === height ? old : { width, height }))
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [box])
  return size
}
