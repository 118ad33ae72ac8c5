import { useEffect, useState } from 'react'
import type { Seen } from '@/app/seenRepetition'
import type { Listed } from '@/review/repetitions'
import { useApp, useSelected } from './context'
import { useReviewed } from './reviewed'

interface SeenAndHeard {
  /** Absent until it is read. */
  readonly seen: Seen | undefined
  readonly isHeard: boolean
  /** Hears its take, or stops. */
  readonly toggle: () => void
}

/** The chosen repetition; another choice stops what is heard. */
export const useSeen = (listed: Listed | undefined): SeenAndHeard => {
  const { hearing } = useApp().records
  const { reviews } = useReviewed()
  const heard = useSelected(hearing.store, (state) => state.heard)
  const [read, setRead] = useState<{ readonly of: Listed; readonly seen: Seen }>()
  useEffect(() => {
    let current = true
    if (listed)
      void reviews.see(listed).then((found) => {
        if (current) setRead({ of: listed, seen: found })
      })
    return () => {
      current = false
      hearing.stop()
    }
  }, [reviews, hearing, listed])
  const seen = read?.of === listed ? read?.seen : undefined
  const id = listed?.repetition.id
  const isHeard = id !== undefined && heard === id
  return {
    seen,
    isHeard,
    toggle: () => {
      if (isHeard) hearing.stop()
      else if (id !== undefined && seen?.take) void hearing.hear(id, seen.take)
    },
  }
}
