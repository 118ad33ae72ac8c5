import type { TaughtPiece } from '@/app/teaching'
import type { ChunkFigures } from '@/review/pieceReview'
import { grouped } from '@/text/numbers'
import { teacherText } from '@/text/teacher'
import { chunkWords, shareWords, tempoWords } from './reviewWords'
import { moreWords } from './teacherWords'

/** Chunk by chunk, in the order in which a lesson asks for them. */
export const TaughtChunks = ({
  piece,
  most,
}: {
  readonly piece: TaughtPiece
  readonly most: number
}) => {
  const { inNeed, score } = piece
  const others = inNeed.slice(most)
  if (inNeed.length === 0) return null
  const words = teacherText.chunks.columns
  return (
    <>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.chunk}</th>
            {columns.map((column) => (
              <th key={column} scope="col" className={classOf(column)}>
                {words[column]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {inNeed.slice(0, most).map((chunk) => (
            <tr key={chunk.chunk}>
              <th scope="row">{chunkWords(chunk, score)}</th>
              {columns.map((column) => (
                <td key={column} className={classOf(column)}>
                  <span className="sheet-label" aria-hidden="true">
                    {words[column]}{' '}
                  </span>
                  {figureOf(chunk, column)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {others.length > 0 && <p className="sheet-small">{moreWords(others)}</p>}
    </>
  )
}

const columns = ['stands', 'share', 'repetitions', 'brokenOff', 'tempo', 'goal'] as const
type Column = (typeof columns)[number]

const figures: readonly Column[] = ['repetitions', 'brokenOff', 'tempo', 'goal']
const classOf = (column: Column): string => (figures.includes(column) ? 'figure' : '')

const figureOf = (chunk: ChunkFigures, column: Column): string => {
  switch (column) {
    case 'stands':
      return teacherText.chunks.standings[chunk.state]
    case 'share':
      return shareWords(chunk.share)
    case 'repetitions':
      return grouped(chunk.repetitions)
    case 'brokenOff':
      return grouped(chunk.tally.brokenOff)
    case 'tempo':
      return tempoOf(chunk)
    case 'goal':
      return chunk.drill ? tempoWords(chunk.drill.goalTempo, chunk) : '–'
  }
}

/** The last one that was played. */
const tempoOf = (chunk: ChunkFigures): string => {
  const last = chunk.days.at(-1)
  return last ? tempoWords(last.lastRung, chunk) : '–'
}
