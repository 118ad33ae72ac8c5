import type { ReactNode } from 'react'
import { shellText } from '@/text/shell'
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
          {shellText.adding}
        </p>
      )
    case 'failed':
      return (
        <div className="notice" role="alert">
          <p>{shellText.noPage(loaded.message)}</p>
          <button type="button" onClick={again}>
            {shellText.again}
          </button>
        </div>
      )
    case 'ready':
      return children(loaded.value)
  }
}
