import { useCallback, useEffect, useState } from 'react'
import type { Result } from '@/music/result'

/** What is read for a screen, and how that stands. */
export type Loaded<T> =
  | { readonly kind: 'loading' }
  | { readonly kind: 'ready'; readonly value: T }
  | { readonly kind: 'failed'; readonly message: string }

/** Reads once, and again when `again` is called; `read` must stay the same function. */
export const useLoaded = <T>(
  read: () => Promise<Result<T, string>>,
): { readonly loaded: Loaded<T>; readonly again: () => void } => {
  const [loaded, setLoaded] = useState<Loaded<T>>({ kind: 'loading' })
  const [tries, setTries] = useState(0)
  useEffect(() => {
    let current = true
    const show = (next: Loaded<T>): void => {
      if (current) setLoaded(next)
    }
    read().then(
      (result) =>
        show(
          result.ok
            ? { kind: 'ready', value: result.value }
            : { kind: 'failed', message: result.reason },
        ),
      (error: unknown) => show({ kind: 'failed', message: String(error) }),
    )
    return () => {
      current = false
    }
  }, [read, tries])
  const again = useCallback(() => {
    setLoaded({ kind: 'loading' })
    setTries((n) => n + 1)
  }, [])
  return { loaded, again }
}
