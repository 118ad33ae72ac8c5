import { useCallback, useEffect, useRef } from 'react'
import type { Practising } from '@/app/practising'
import type { Pencil } from '@/engraving/pencil'
import { useApp } from './context'
import { pencilMark } from './pencilMarks'

/** Puts each finding on the notation as it comes, past React; draws all again when the notation is new. */
export const usePencil = ({ chunk }: Practising): ((pencil: Pencil | undefined) => void) => {
  const app = useApp()
  const pencil = useRef<Pencil>(undefined)
  const redraw = useCallback(() => {
    pencil.current?.clear()
    for (const [slot, mark] of app.practice.marks.now()) {
      const drawn = pencilMark(mark, chunk)
      if (drawn) pencil.current?.put(slot, drawn)
    }
  }, [app, chunk])
  useEffect(
    () =>
      app.practice.marks.watch((change) => {
        if (change.kind === 'all') return redraw()
        const drawn = change.kind === 'mark' ? pencilMark(change.mark, chunk) : undefined
        if (drawn) pencil.current?.put(change.slot, drawn)
        else pencil.current?.erase(change.slot)
      }),
    [app, chunk, redraw],
  )
  return useCallback(
    (opened) => {
      pencil.current = opened
      redraw()
    },
    [redraw],
  )
}
