import { useEffect, useRef, type RefObject } from 'react'
import type { NoteId } from '@/music/units'
import type { SystemBars } from '@/engraving/systems'
import type { Lines } from './lines'

interface DragTarget {
  readonly lines: Lines
  readonly plan: readonly SystemBars[]
  /** While dragging, and at its end, the bars at both ends, in whatever order. */
  readonly onDrag: (from: number, to: number) => void
  /** A press without dragging: at a bar, perhaps on a note. */
  readonly onPress: (bar: number, note: NoteId | undefined) => void
}

/** So far a pointer may move and still only press, CSS pixels. */
const still = 6
/** A finger that rests so long begins to choose; one that moves sooner scrolls. Milliseconds. */
const longPress = 400
/** Near the upper and lower edge of the window a drag scrolls on, CSS pixels. */
const edge = 60

/** Choosing bars with mouse, pen or finger over the music. */
export const useBarDrag = (box: RefObject<HTMLElement | null>, target: DragTarget): void => {
  const latest = useRef(target)
  useEffect(() => {
    latest.current = target
  })
  useEffect(() => {
    const element = box.current
    return element ? listenForDrags(element, () => latest.current) : undefined
  }, [box])
}

interface Press {
  readonly x: number
  readonly y: number
  readonly bar: number
  readonly pointer: number
  readonly touch: boolean
  isDragging: boolean
}

const listenForDrags = (element: HTMLElement, target: () => DragTarget): (() => void) => {
  let press: Press | undefined
  let timer = 0
  const end = (): void => {
    window.clearTimeout(timer)
    press = undefined
  }
  const down = (event: PointerEvent): void => {
    if (event.button !== 0 || !event.isPrimary) return
    const bar = barAt(target(), event)
    if (bar === undefined) return
    const { clientX: x, clientY: y, pointerId: pointer } = event
    const begun: Press = {
      x,
      y,
      bar,
      pointer,
      touch: event.pointerType === 'touch',
      isDragging: false,
    }
    press = begun
    if (begun.touch) timer = window.setTimeout(() => begin(begun), longPress)
  }
  const begin = (begun: Press): void => {
    begun.isDragging = true
    element.setPointerCapture(begun.pointer)
    target().onDrag(begun.bar, begun.bar)
  }
  const move = (event: PointerEvent): void => {
    if (!press || event.pointerId !== press.pointer) return
    const isStill = Math.hypot(event.clientX - press.x, event.clientY - press.y) < still
    if (!press.isDragging) {
      if (isStill) return
      // A finger that moves at once scrolls; the browser takes the pointer away.
      if (press.touch) return end()
      begin(press)
    }
    scrollAtEdge(event.clientY)
    const bar = barAt(target(), event)
    if (bar !== undefined) target().onDrag(press.bar, bar)
  }
  const up = (event: PointerEvent): void => {
    if (press && event.pointerId === press.pointer && !press.isDragging)
      target().onPress(press.bar, noteAt(target(), event))
    end()
  }
  const keepStill = (event: Event): void => {
    if ((press?.isDragging || event.type === 'dragstart') && event.cancelable)
      event.preventDefault()
  }
  const listeners = [
    ['pointerdown', down],
    ['pointermove', move],
    ['pointerup', up],
    ['pointercancel', end],
    ['touchmove', keepStill],
    ['contextmenu', keepStill],
    ['dragstart', keepStill],
  ] as const
  for (const [type, listener] of listeners)
    element.addEventListener(type, listener as EventListener, { passive: false })
  return () => {
    end()
    for (const [type, listener] of listeners)
      element.removeEventListener(type, listener as EventListener)
  }
}

interface Point {
  readonly clientX: number
  readonly clientY: number
}

const lineAt = ({ clientX, clientY }: Point) => {
  const element = document.elementFromPoint(clientX, clientY)?.closest('[data-line]')
  if (!element) return undefined
  const { left, top } = element.getBoundingClientRect()
  return { index: Number(element.getAttribute('data-line')), x: clientX - left, y: clientY - top }
}

const barAt = ({ lines, plan }: DragTarget, point: Point): number | undefined => {
  const at = lineAt(point)
  const bars = at && plan[at.index]
  const line = at && lines.line(at.index)
  if (!at || !bars || !line) return undefined
  const passed = line.places.bars.filter(({ right }) => right * line.engraving.width < at.x).length
  return Math.min(bars.fromBar + passed, bars.toBar)
}

/** The nearest note within a staff space or so. */
const noteAt = ({ lines }: DragTarget, point: Point): NoteId | undefined => {
  const at = lineAt(point)
  const line = at && lines.line(at.index)
  if (!at || !line) return undefined
  const { width, height } = line.engraving
  let nearest: { readonly id: NoteId; readonly distance: number } | undefined
  for (const [id, { x, y }] of line.places.notes) {
    const distance = Math.hypot(x * width - at.x, y * height - at.y)
    if (distance < (nearest?.distance ?? 10)) nearest = { id, distance }
  }
  return nearest?.id
}

const scrollAtEdge = (y: number): void => {
  if (y < edge) window.scrollBy(0, -20)
  else if (y > window.innerHeight - 2 * edge) window.scrollBy(0, 20)
}
