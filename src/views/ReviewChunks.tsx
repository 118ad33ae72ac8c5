import type { PieceId } from '@/music/units'
import type { PieceFigures } from '@/review/allTime'
import type { ChunksOfAll } from '@/review/coldFigures'
import { reviewText } from '@/text/review'
import { Opened } from './Opened'
import { ColdShare } from './ReviewCold'
import { PlayedFor } from './ReviewKeys'
import { Followed, States } from './ReviewParts'
import { useReviewed, useReviewedRoutes } from './reviewed'
import { useReturn } from './useReturn'
import { useTitles } from './useTitles'
import { stateOrder } from './reviewWords'
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
            <h2 id="states">{reviewText.chunks.ofAll}</h2>
            <p>
              <States states={chunks.states} asked={{}} />
            </p>
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
  const {
    columns,
    states: { names },
  } = reviewText
  const of = new Map(chunks.pieces.map((each) => [each.piece, each]))
  return (
    <div className="scroll">
      <table className="stack">
        <thead>
          <tr>
            <th scope="col">{columns.piece}</th>
            {stateOrder.map((state) => (
              <th key={state} scope="col" className="number">
                {names[state]}
              </th>
            ))}
            <th scope="col" className="number">
              {columns.heldCold}
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
                  <td key={state} className="number" data-label={names[state]}>
                    <Followed n={states[state]} asked={{ piece, state }} />
                  </td>
                ))}
                <td className="number" data-label={columns.heldCold}>
                  {cold.checks === 0 ? (
                    '–'
                  ) : (
                    <a href={routes.repetitions({ piece, cold: true })}>
                      {reviewText.cold.heldOf(cold.held, cold.held + cold.failed)}
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
