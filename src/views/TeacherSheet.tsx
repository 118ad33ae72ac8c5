import type { RefObject } from 'react'
import type { TaughtPiece, TeacherPage } from '@/app/teaching'
import type { Day } from '@/journal/day'
import type { PencilMark } from '@/engraving/pencil'
import { dateWords } from '@/text/dates'
import { teacherText } from '@/text/teacher'
import { spokenLanguage } from '@/text/text'
import { phrase } from './phrase'
import { boundsOf, shareWords } from './reviewWords'
import { shapesOn, TaughtPlaces } from './TaughtPlaces'
import { TaughtChunks } from './TaughtChunks'
import { changeLines, legendWords, overruledWords, practisedWords, spanWords } from './teacherWords'
import { percent } from './words'
import './teacherSheet.css'

/** How much of a piece has room, so that all stands on two sheets at most. */
interface Room {
  readonly bars: number
  readonly chunks: number
}

const noRoom: Room = { bars: 0, chunks: 0 }

/** Of a week: the pieces that are told of one by one, and those of them with their hard places. */
const mostPieces = 4
const mostWithPlaces = 3

/** The places of those whose notes are at hand go first; then those most practised. */
const roomsFor = (pieces: readonly TaughtPiece[], isPiece: boolean): readonly Room[] => {
  if (isPiece) return pieces.map(() => ({ bars: 4, chunks: 6 }))
  const withPlaces = [
    ...pieces.filter(({ score }) => score),
    ...pieces.filter(({ score }) => !score),
  ].slice(0, mostWithPlaces)
  return pieces.map((piece) =>
    withPlaces.includes(piece) ? { bars: 2, chunks: 3 } : { bars: 0, chunks: 2 },
  )
}

/** The sheet of paper: no buttons, nothing that only a screen can show. */
export const TeacherSheet = ({
  sheet,
  page,
  title,
  isPiece,
  name,
  remarks,
  today,
}: {
  readonly sheet: RefObject<HTMLElement | null>
  readonly page: TeacherPage
  readonly title: string
  readonly isPiece: boolean
  readonly name: string
  readonly remarks: string
  readonly today: Day
}) => {
  const shown = page.pieces.slice(0, mostPieces)
  const rooms = roomsFor(shown, isPiece)
  const shapes = new Set<PencilMark['shape']>(
    shown.flatMap((piece, i) => [...shapesOn(piece, rooms[i]?.bars ?? 0)]),
  )
  const words = teacherText.sheet
  const legend = legendWords(shapes)
  const overruled = overruledWords(page.overruled)
  return (
    <article ref={sheet} className="teacher-sheet" lang={spokenLanguage()}>
      <header>
        <p className="sheet-kind">
          {words.kind}
          {name !== '' && <b> · {name}</b>}
          <span>{dateWords(today)}</span>
        </p>
        <h1>{title}</h1>
        {isPiece && page.span && (
          <p>{words.practisedFrom(spanWords(page.span), page.span.from === page.span.to)}</p>
        )}
        <Figures page={page} />
      </header>
      {shown.map((piece, i) => (
        <Taught key={piece.piece} piece={piece} isAlone={isPiece} room={rooms[i] ?? noRoom} />
      ))}
      {page.pieces.length > mostPieces && (
        <p>
          {words.alsoPractised(
            page.pieces
              .slice(mostPieces)
              .map((piece) => words.also(piece.title, practisedWords(piece))),
          )}
        </p>
      )}
      {overruled !== '' && <p>{phrase(words.overruled((told) => <b>{told}</b>, overruled))}</p>}
      {remarks.trim() !== '' && (
        <section className="sheet-remarks">
          <h2>{words.remarks}</h2>
          <p>{remarks.trim()}</p>
        </section>
      )}
      <section className="sheet-lesson">
        <h2>{words.lesson}</h2>
        <hr />
        <hr />
        <hr />
      </section>
      {page.figures.repetitions > 0 && (
        <p className="sheet-small">
          {teacherText.howToRead} {legend.length > 0 && teacherText.legend(legend)}
        </p>
      )}
    </article>
  )
}

const Figures = ({ page }: { readonly page: TeacherPage }) => {
  const { figures, days } = page
  const words = teacherText.sheet
  if (figures.repetitions === 0) return <p>{words.nothing}</p>
  const { share, tally } = figures
  return (
    <p className="sheet-figures">
      {share && <>{phrase(words.share(<b>{percent(share.value)}</b>, ...boundsOf(share)))} </>}
      {words.tally(tally.clean, tally.flawed, tally.brokenOff)}{' '}
      {practisedWords({ ...figures, days })}.
    </p>
  )
}

const Taught = ({
  piece,
  isAlone,
  room,
}: {
  readonly piece: TaughtPiece
  readonly isAlone: boolean
  readonly room: Room
}) => {
  const { share, tally } = piece
  return (
    <section className="sheet-piece">
      {!isAlone && (
        <>
          <h2>{piece.title ?? teacherText.titles.untitled}</h2>
          <p>
            {teacherText.sheet.piece(
              share && shareWords(share),
              tally.brokenOff,
              practisedWords(piece),
            )}
          </p>
        </>
      )}
      <TaughtPlaces piece={piece} most={room.bars} isAlone={isAlone} />
      <TaughtChunks piece={piece} most={room.chunks} />
      <dl>
        {changeLines(piece).map(([what, which]) => (
          <div key={what}>
            <dt>{what}:</dt> <dd>{which}.</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
