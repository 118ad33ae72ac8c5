import { useCallback } from 'react'
import type { JournalEvent } from '@/journal/journal'
import { useApp } from './context'
import { Opened } from './Opened'
import { ReviewBars } from './ReviewBars'
import { ColdChecks } from './ReviewCold'
import { PlayedFor } from './ReviewKeys'
import { useLoaded } from './useLoaded'
import { useReturn } from './useReturn'
import { useTitles } from './useTitles'

/** Each piece of this sitting: its flaws on the notation, which keys were exchanged, what was checked cold. */
export const SessionPieces = ({ events }: { readonly events: readonly JournalEvent[] }) => {
  const { records } = useApp()
  const titleOf = useTitles([])
  const { loaded, again } = useLoaded(
    useCallback(() => records.sittingOf(events), [records, events]),
  )
  useReturn(loaded.kind === 'ready')
  return (
    <Opened loaded={loaded} again={again}>
      {(pieces) =>
        pieces.map((review) => {
          const { piece, substitutions, score } = review
          const asked = { session: true, piece } as const
          return (
            <article key={piece} aria-label={titleOf(piece)} className="session-piece">
              {pieces.length > 1 && <h2>{titleOf(piece)}</h2>}
              <ReviewBars id={piece} review={review} asked={asked} />
              <PlayedFor substitutions={substitutions} score={score} asked={asked} />
              <ColdChecks review={review} asked={asked} />
            </article>
          )
        })
      }
    </Opened>
  )
}
