import type { PieceId } from '@/music/units'
import type { PieceFigures } from '@/review/allTime'
import type { ChunksOfAll } from '@/review/coldFigures'
import { Opened } from './Opened'
import { ColdShare } from './ReviewCold'
import { PlayedFor } from './ReviewKeys'
import { useReviewed, useReviewedRoutes } from './reviewed'
import { useReturn } from './useReturn'
import { useTitles } from './useTitles'
import { stateOrder, statesWords } from './reviewWords'
import { useLoaded } from './useLoaded'

/** What only the chunks of all pieces tell: how far they have come, what held cold, which keys were exchanged. */
export const ReviewChunks = ({ pieces }: { readonly pieces: readonly PieceFigures[] }) => {
  const { reviews } = useReviewed()
  const { loaded, again } = useLoaded(reviews.chunksOfAll)
  useReturn(loaded.kind === 'ready')
  return (
    <Opened loaded={loaded} again={again}>
      {(chunks) => (
        <>
          <section aria-labelledby="states">
            <h2 id="states">How far the chunks have come</h2>
            <p>{statesWords(chunks.states)}</p>
            {chunks.cold.checks > 0 && <ColdShare cold={chunks.cold} asked={{}} />}
            <StateTable chunks={chunks} pieces={pieces} />
          </section>
          <PlayedFor substitutions={chunks.substitutions} score={undefined} asked={{}} />
        </>
      )}
    </Opened>
  )
}

const StateTable = ({
  chunks,
  pieces,
}: {
  readonly chunks: ChunksOfAll
  readonly pieces: readonly PieceFigures[]
}) => {
  const routes = useReviewedRoutes()
  const titleOf = useTitles(pieces)
  const of = new Map(chunks.pieces.map((each) => [each.piece, each]))
  return (
    <div className="scroll">
      <table className="stack">
        <thead>
          <tr>
            <th scope="col">Piece</th>
            {stateOrder.map((state) => (
              <th key={state} scope="col" className="number">
                {state}
              </th>
            ))}
            <th scope="col" className="number">
              held cold
            </th>
          </tr>
        </thead>
        <tbody>
          {pieces.flatMap(({ piece }: { readonly piece: PieceId }) => {
            const row = of.get(piece)
            if (!row) return []
            const { states, cold } = row
            return [
              <tr key={piece}>
                <th scope="row">{titleOf(piece)}</th>
                {stateOrder.map((state) => (
                  <td key={state} className="number" data-label={state}>
                    {states[state]}
                  </td>
                ))}
                <td className="number" data-label="held cold">
                  {cold.checks === 0 ? (
                    '–'
                  ) : (
                    <a href={routes.repetitions({ piece, cold: true })}>
                      {cold.held} of {cold.held + cold.failed}
                    </a>
                  )}
                </td>
              </tr>,
            ]
          })}
        </tbody>
      </table>
    </div>
  )
}
