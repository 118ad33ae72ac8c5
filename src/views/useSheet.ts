import { useEffect, useMemo, useState } from 'react'
import { planSystems, type SystemBars } from '@/engraving/systems'
import type { Score } from '@/music/music'
import { useEngraver } from './context'
import { createLines, type Lines, type Sheet } from './lines'

/** From this width of the window on two pages stand side by side, CSS pixels. */
const twoPagesFrom = 1600
/** The space between two pages, and the least width of one. */
const gutter = 48
const leastWidth = 120
/** A line of both hands is about so many staff spaces high, until it is drawn. */
export const lineHeight = 25

/** The lines of a sheet of this width; a new sheet begins anew. */
export const useLines = (
  score: Score,
  plan: readonly SystemBars[],
  width: number,
  space: number,
  marks?: Sheet['marks'],
): Lines => {
  const engraver = useEngraver()
  const [lines] = useState(() => createLines(engraver))
  useEffect(() => {
    if (plan.length > 0) lines.show({ score, plan, width, space, ...(marks ? { marks } : {}) })
  }, [lines, score, plan, width, space, marks])
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
export const usePlan = (score: Score, whole: number, space: number): Plan => {
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
export const linesOnPage = (space: number): number =>
  Math.max(2, Math.floor((window.innerHeight - 160) / (lineHeight * space)))

/** The width of the music, when the window has kept its size for a moment; 0 at first. */
export const useWidth = (box: React.RefObject<HTMLElement | null>): number => {
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
