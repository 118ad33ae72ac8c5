import { useEffect, useState } from 'react'
import { isSolved } from '@/app/triedProblems'
import type { PieceId } from '@/music/units'
import type { TriedProblem } from '@/review/problems'
import { notebookText } from '@/text/notebook'
import { useApp } from './context'
import { TriedItems } from './TriedList'

/** What was tried at problems of a piece, and how it came out, below what is written of it. */
export const NotebookProblems = ({ tried }: { readonly tried: readonly TriedProblem[] }) => {
  if (tried.length === 0) return null
  const solved = tried.filter(isSolved).length
  return (
    <details className="notebook-problems">
      <summary>{notebookText.problems(solved, tried.length - solved)}</summary>
      <TriedItems tried={tried} />
    </details>
  )
}

type Tried = ReadonlyMap<PieceId, readonly TriedProblem[]>

/** Of each piece that was practised and is here; read one after the other, so that the page never waits for it. */
export const useAllTried = (): Tried => {
  const app = useApp()
  const [all, setAll] = useState<Tried>(new Map())
  useEffect(() => {
    let isOver = false
    const read = async (): Promise<void> => {
      const practised = await app.plans.practised()
      for (const { id } of practised.ok ? practised.value : []) {
        if (isOver) return
        const tried = await app.notebook.tried(id)
        if (!isOver && tried.length > 0) setAll((known) => new Map(known).set(id, tried))
      }
    }
    void read()
    return () => {
      isOver = true
    }
  }, [app])
  return all
}
