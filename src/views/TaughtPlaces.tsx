import { useMemo } from 'react'
import type { TaughtPiece } from '@/app/teaching'
import type { Pencil, PencilMark } from '@/engraving/pencil'
import type { Score } from '@/music/music'
import type { HardBar } from '@/review/teacherPage'
import { teacherText } from '@/text/teacher'
import { flawMarks } from './flawMarks'
import { Notation } from './Notation'
import { phrase } from './phrase'
import { chunkWords } from './reviewWords'
import { barFlawWords, chunkFlawWords, spanWords } from './teacherWords'

/** Where it is hard: the bars as notation with the marks of the most frequent flaws; without the score in words. */
export const TaughtPlaces = ({
  piece,
  most,
  isAlone,
}: {
  readonly piece: TaughtPiece
  readonly most: number
  /** The piece has no heading of its own. */
  readonly isAlone: boolean
}) => {
  const { score, hard } = piece
  const words = teacherText.places
  const Heading = isAlone ? 'h2' : 'h3'
  if (most === 0 || (hard.bars.length === 0 && hard.chunks.length === 0)) return null
  return (
    <>
      <Heading className="sheet-where">
        {words.title} <span>{spanWords(hard.span)}</span>
      </Heading>
      {score ? (
        <ol className="sheet-bars">
          {hard.bars.slice(0, most).map((bar) => (
            <li key={bar.barIndex}>
              <TaughtBar score={score} bar={bar} piece={piece} />
            </li>
          ))}
        </ol>
      ) : (
        <ul>
          {hard.chunks.slice(0, most).map((place) => (
            <li key={place.chunk.chunk}>
              {phrase(
                words.chunk(
                  <b>{chunkWords(place.chunk, undefined)}</b>,
                  place.chunk.state,
                  place.times,
                  chunkFlawWords(place),
                ),
              )}
            </li>
          ))}
        </ul>
      )}
    </>
  )
}

const TaughtBar = ({
  score,
  bar,
  piece,
}: {
  readonly score: Score
  readonly bar: HardBar
  readonly piece: TaughtPiece
}) => {
  const end = score.bars[bar.barIndex + 1]?.start ?? score.end
  const stretch = { score, start: bar.bar.start, end, hand: 'both' } as const
  const marks = useMemo(() => flawMarks(bar), [bar])
  const onPencil = useMemo(
    () => (pencil: Pencil | undefined) => {
      for (const [slot, mark] of marks) pencil?.put(slot, mark)
    },
    [marks],
  )
  const head = teacherText.places.bar(bar.bar.number, bar.times, bar.state)
  const words = barFlawWords(bar, score)
  return (
    <figure>
      <Notation
        stretch={stretch}
        label={`${head}. ${words}.`}
        caller={`teacher ${piece.piece} ${bar.barIndex}`}
        onPencil={onPencil}
      />
      <figcaption>
        <b>{head}.</b> {words}.
      </figcaption>
    </figure>
  )
}

/** The marks on the bars that are shown. */
export const shapesOn = (
  { score, hard }: TaughtPiece,
  most: number,
): ReadonlySet<PencilMark['shape']> =>
  new Set(
    score
      ? hard.bars
          .slice(0, most)
          .flatMap((bar) => [...flawMarks(bar).values()])
          .map(({ shape }) => shape)
      : [],
  )
