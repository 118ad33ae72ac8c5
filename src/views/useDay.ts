import { useEffect, useMemo, useState } from 'react'
import type { PlannedDay, PractisedPiece } from '@/app/plans'
import type { PieceId } from '@/music/units'
import { planText } from '@/text/plan'
import { useApp, useSelected } from './context'

/** How long, and at what. */
export interface Wish {
  readonly minutes: number
  readonly pieces: readonly PieceId[]
}

/** Without a word of the person the two pieces are taken that were practised most of late. */
const usualPieces = 2

/** Today's plan for what the person wants; the last one stands until the next is made. */
export const useDay = (seed: number) => {
  const app = useApp()
  const kept = useSelected(app.today.store, (state) => state.wish)
  const [known, setKnown] = useState<readonly PractisedPiece[]>()
  const [planned, setPlanned] = useState<PlannedDay>()
  const [problem, setProblem] = useState<string>()
  const wish = useMemo((): Wish | undefined => {
    if (!known) return undefined
    const listed = app.library.store.getState().listed
    const chosen = kept.pieces?.filter((id) => listed.some((piece) => piece.id === id))
    const atWork = known.filter(({ decision }) => decision === undefined || decision === 'takenUp')
    const usual = atWork.slice(0, usualPieces).map(({ id }) => id)
    return { minutes: kept.minutes, pieces: chosen ?? usual }
  }, [app, kept, known])
  useEffect(() => {
    let isOver = false
    app.plans.practised().then(
      (found) => {
        if (isOver) return
        if (found.ok) setKnown(found.value)
        else setProblem(found.reason)
      },
      (error: unknown) => setProblem(String(error)),
    )
    return () => {
      isOver = true
    }
  }, [app])
  useEffect(() => {
    if (!wish) return
    let isOver = false
    app.plans.day({ ...wish, seed }).then(
      (made) => {
        if (isOver) return
        if (made.ok) setPlanned(made.value)
        else setProblem(made.reason)
      },
      (error: unknown) => setProblem(planText.today.failed(String(error))),
    )
    return () => {
      isOver = true
    }
  }, [app, wish, seed])
  return { known, wish, planned, problem, setWish: (next: Wish) => app.today.wish(next) }
}
