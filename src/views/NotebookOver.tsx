import { lazy, Suspense, useEffect, useState } from 'react'
import type { NotebookWritten, RecordedPlace } from '@/journal/journal'
import type { PieceId } from '@/music/units'
import type { TriedProblem } from '@/review/problems'
import { useApp } from './context'

const NotebookDialog = lazy(async () => ({
  default: (await import('./NotebookDialog')).NotebookDialog,
}))

interface NotebookOverProps {
  readonly piece: { readonly id: PieceId; readonly title: string }
  readonly here: RecordedPlace | undefined
  /** An entry to change at once. */
  readonly change?: NotebookWritten | undefined
  readonly isOpen: boolean
  readonly close: () => void
}

/** The notebook over the page of a piece, a build-up or a drill; fetched when it is opened first. */
export const NotebookOver = ({ piece, here, change, isOpen, close }: NotebookOverProps) => {
  const tried = useTried(piece.id, isOpen)
  return isOpen ? (
    <Suspense fallback={null}>
      <NotebookDialog {...{ piece, here, change, tried }} onClose={close} />
    </Suspense>
  ) : null
}

const none: readonly TriedProblem[] = []

/** What was tried at problems of a piece, read anew whenever it is asked for. */
export const useTried = (piece: PieceId, isAsked = true): readonly TriedProblem[] => {
  const app = useApp()
  const [tried, setTried] = useState(none)
  useEffect(() => {
    if (!isAsked) return
    let current = true
    void app.notebook.tried(piece).then((found) => {
      if (current) setTried(found)
    })
    return () => {
      current = false
    }
  }, [app, piece, isAsked])
  return tried
}
