import type { ReactNode } from 'react'
import type { Loaded } from './useLoaded'

/** What is read for a screen, once it is there. */
export const Opened = <T,>({
  loaded,
  again,
  children,
}: {
  readonly loaded: Loaded<T>
  readonly again: () => void
  readonly children: (value: T) => ReactNode
}) => {
  switch (loaded.kind) {
    case 'loading':
      return (
        <p className="soft" role="status">
          Adding up the days …
        </p>
      )
    case 'failed':
      return (
        <div className="notice" role="alert">
          <p>This page cannot be shown. {loaded.message}</p>
          <button type="button" onClick={again}>
            Try again
          </button>
        </div>
      )
    case 'ready':
      return children(loaded.value)
  }
}
