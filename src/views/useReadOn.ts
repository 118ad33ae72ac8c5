import { useCallback, useEffect, useRef, useState } from 'react'
import type { ReadOn, RepetitionList } from '@/app/repetitionList'

interface Reading {
  readonly days: ReadOn['days']
  readonly isWhole: boolean
  readonly problem: string | undefined
  readonly readOn: () => void
}

/** A page full at once, earlier days when they are asked for. */
export const useReadOn = (list: RepetitionList): Reading => {
  const [read, setRead] = useState<ReadOn>({ days: [], next: 0 })
  const [problem, setProblem] = useState<string>()
  const busy = useRef(false)
  const isWhole = read.next >= list.days.length
  const readOn = useCallback((): void => {
    if (busy.current || isWhole) return
    busy.current = true
    void list.read(read.next).then((more) => {
      busy.current = false
      setProblem(more.ok ? undefined : more.reason)
      if (more.ok) setRead({ days: [...read.days, ...more.value.days], next: more.value.next })
    })
  }, [list, read, isWhole])
  const isFresh = read.next === 0 && problem === undefined
  useEffect(() => {
    if (isFresh) readOn()
  }, [isFresh, readOn])
  return { days: read.days, isWhole, problem, readOn }
}
