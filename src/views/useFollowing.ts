import { useEffect, type RefObject } from 'react'

/** From this share of the height on the music moves up, until the mark stands at the other. */
const lowest = 0.6
const wanted = 0.2

/** Music that is higher than its place follows the latest mark, so that nobody's hands leave the keys to scroll. */
export const useFollowing = (place: RefObject<HTMLElement | null>, isOn: boolean): void =>
  useEffect(() => {
    const box = place.current
    if (!box || !isOn) return
    let frame = 0
    let latest: Element | undefined
    const follow = (): void => {
      frame = 0
      if (!latest?.isConnected) return
      const [mark, room] = [latest.getBoundingClientRect(), box.getBoundingClientRect()]
      const at = mark.top - room.top
      if (at >= 0 && at <= lowest * room.height) return
      const calm = window.matchMedia('(prefers-reduced-motion: reduce)').matches
      box.scrollBy({ top: at - wanted * room.height, behavior: calm ? 'instant' : 'smooth' })
    }
    const observer = new MutationObserver((changes) => {
      for (const { addedNodes } of changes)
        for (const node of addedNodes)
          // A new drawing is no mark.
          if (node instanceof SVGElement && !(node instanceof SVGSVGElement)) latest = node
      frame ||= window.requestAnimationFrame(follow)
    })
    observer.observe(box, { childList: true, subtree: true })
    return () => {
      observer.disconnect()
      window.cancelAnimationFrame(frame)
    }
  }, [place, isOn])
