import type { TaughtPiece } from '@/app/teaching'
import type { ChunkFigures } from '@/review/pieceReview'
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
      <div className="sheet-scroll">
        <table>
          <thead>
            <tr>
              <th scope="col">{words.chunk}</th>
              <th scope="col">{words.stands}</th>
              <th scope="col">{words.share}</th>
              <th scope="col" className="figure">
                {words.repetitions}
              </th>
              <th scope="col" className="figure">
                {words.brokenOff}
              </th>
              <th scope="col" className="figure">
                {words.tempo}
              </th>
              <th scope="col" className="figure">
                {words.goal}
              </th>
            </tr>
          </thead>
          <tbody>
            {inNeed.slice(0, most).map((chunk) => (
              <tr key={chunk.chunk}>
                <th scope="row">{chunkWords(chunk, score)}</th>
                <td>{teacherText.chunks.standings[chunk.state]}</td>
                <td>{shareWords(chunk.share)}</td>
                <td className="figure">{chunk.repetitions}</td>
                <td className="figure">{chunk.tally.brokenOff}</td>
                <td className="figure">{tempoOf(chunk)}</td>
                <td className="figure">
                  {chunk.drill ? tempoWords(chunk.drill.goalTempo, chunk) : '–'}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {others.length > 0 && <p className="sheet-small">{moreWords(others)}</p>}
    </>
  )
}

/** The last one that was played. */
const tempoOf = (chunk: ChunkFigures): string => {
  const last = chunk.days.at(-1)
  return last ? tempoWords(last.lastRung, chunk) : '–'
}
