import { useEffect, useLayoutEffect, useRef, type RefObject } from 'react'
import type { ListedSpot } from '@/app/spotList'
import { useKeysByName } from './pieceKeys'

/**
 * S goes to the hard spots; A, X, U and D are about the spot that has the focus, in its row or on one of
 * its buttons, and do nothing elsewhere, so that no spot is rejected unseen. Up and down go from there
 * to the next one. Gives what the list itself takes as its `ref`.
 */
export const useSpotKeys = (
  standing: readonly ListedSpot[],
  onWord: (spot: ListedSpot, word: 'accepted' | 'rejected') => void,
  onMove: (spot: ListedSpot, by: 1 | -1) => void,
): RefObject<HTMLOListElement | null> => {
  const list = useRef<HTMLOListElement>(null)
  /** Where S comes back to. */
  const last = useRef(0)
  const rows = (): readonly HTMLElement[] => [
    ...(list.current?.querySelectorAll<HTMLElement>(':scope > .spot') ?? []),
  ]
  const atHand = (): number => rows().findIndex((row) => row.contains(document.activeElement))
  const focus = (at: number): void => {
    const all = rows()
    last.current = Math.max(0, Math.min(all.length - 1, at))
    all[last.current]?.focus()
  }
  /** Where the focus goes on as soon as the list stands in its new order. */
  const wanted = useRef<number>(undefined)
  const focusSoon = (at: number): void => {
    wanted.current = at
  }
  useLayoutEffect(() => {
    if (wanted.current === undefined) return
    focus(wanted.current)
    wanted.current = undefined
  }, [standing])
  const say = (word: 'accepted' | 'rejected') => (): void => {
    const at = atHand()
    const spot = standing[at]
    if (!spot) return
    onWord(spot, word)
    if (word === 'rejected') focusSoon(at)
  }
  const move = (by: 1 | -1) => (): void => {
    const at = atHand()
    const spot = standing[at]
    if (!spot || !standing[at + by]) return
    onMove(spot, by)
    focusSoon(at + by)
  }
  useKeysByName({
    s: () => focus(last.current),
    a: say('accepted'),
    x: say('rejected'),
    u: move(-1),
    d: move(1),
  })
  useEffect(() => {
    const box = list.current
    const press = (event: KeyboardEvent): void => {
      const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0
      const at = atHand()
      if (by === 0 || at < 0 || event.ctrlKey || event.altKey || event.metaKey) return
      event.preventDefault()
      focus(at + by)
    }
    box?.addEventListener('keydown', press)
    return () => box?.removeEventListener('keydown', press)
  })
  return list
}
