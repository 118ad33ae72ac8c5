import { useEffect, type RefObject } from 'react'
import type { PracticeState } from '@/app/practiceState'
import { useApp } from './context'

/** After a verdict the last marks are looked at for so long; then the music is at its beginning again. */
const lookMs = 2_000
/** The last marks of a repetition come with its verdict; what comes later is of the next one. */
const togetherMs = 300
/** CSS pixels above a system. */
const margin = 8

/**
 * Music that is higher than its place follows the player, so that nobody's hands leave the keys to
 * scroll: the system that is played and the next one are in sight, or it stands at the top. After a
 * verdict the beginning comes back, for the next repetition; of a run-through there is none.
 */
export const useFollowing = (place: RefObject<HTMLElement | null>): void => {
  const { store } = useApp().practice
  useEffect(() => {
    const box = place.current
    if (!box) return
    let frame = 0
    let timer: ReturnType<typeof setTimeout> | undefined
    let latest: Element | undefined
    let markedAt = 0
    const goTo = (top: number, isAtOnce = false): void => {
      const calm = window.matchMedia('(prefers-reduced-motion: reduce)').matches
      box.scrollTo({ top, behavior: calm || isAtOnce ? 'instant' : 'smooth' })
    }
    const follow = (): void => {
      frame = 0
      if (!latest?.isConnected || box.scrollHeight <= box.clientHeight) return
      const systems = [...box.querySelectorAll('g.system')].map((s) => s.getBoundingClientRect())
      const mark = latest.getBoundingClientRect()
      const room = box.getBoundingClientRect()
      const own = nearest(systems, mark)
      const next = own && (systems[systems.indexOf(own) + 1] ?? own)
      if (!own || !next) return
      const isInSight = own.top >= room.top && Math.max(next.bottom, mark.bottom) <= room.bottom
      const top = own === systems[0] ? 0 : box.scrollTop + own.top - room.top - margin
      if (!isInSight) goTo(top)
    }
    const observer = new MutationObserver((changes) => {
      for (const { addedNodes } of changes)
        for (const node of addedNodes)
          // A new drawing is no mark.
          if (node instanceof SVGElement && !(node instanceof SVGSVGElement)) latest = node
      markedAt = performance.now()
      frame ||= window.requestAnimationFrame(follow)
    })
    observer.observe(box, { childList: true, subtree: true })
    const stop = store.subscribe((now, before) => {
      if (now?.desk !== before?.desk) {
        clearTimeout(timer)
        goTo(0, true)
      } else if (now && isDue(now, before)) {
        clearTimeout(timer)
        const judgedAt = performance.now()
        timer = setTimeout(() => {
          if (markedAt <= judgedAt + togetherMs) goTo(0)
        }, lookMs)
      } else if (now && isStanding(now)) clearTimeout(timer)
    })
    return () => {
      observer.disconnect()
      stop()
      clearTimeout(timer)
      window.cancelAnimationFrame(frame)
    }
  }, [place, store])
}

const isStanding = ({ coach, resting }: PracticeState): boolean =>
  coach.paused !== undefined || resting

/** A repetition was judged, and the next one may begin; or it may now, after a pause. */
const isDue = (now: PracticeState, before: PracticeState | undefined): boolean => {
  if (isStanding(now) || now.desk.item?.item.kind === 'runThrough' || !now.last) return false
  return now.last !== before?.last || (before !== undefined && isStanding(before))
}

const nearest = (systems: readonly DOMRect[], mark: DOMRect): DOMRect | undefined => {
  const middle = (mark.top + mark.bottom) / 2
  const far = ({ top, bottom }: DOMRect): number => Math.max(top - middle, middle - bottom, 0)
  return systems.toSorted((a, b) => far(a) - far(b))[0]
}
