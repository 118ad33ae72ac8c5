import { useMemo, type ReactNode } from 'react'
import { formatRoute } from '@/app/route'
import type { RepetitionList } from '@/app/repetitionList'
import type { Seen } from '@/app/seenRepetition'
import type { Pencil } from '@/engraving/pencil'
import type { Sheet } from '@/app/practising'
import type { Listed } from '@/review/repetitions'
import { tempo } from '@/music/units'
import { repetitionsText } from '@/text/repetitions'
import { dateWords } from '@/text/dates'
import { useApp, useSelected } from './context'
import { Notation } from './Notation'
import { phrase } from './phrase'
import { pencilMark } from './pencilMarks'
import { PlayedLine } from './PlayedLine'
import { flawsWords, whereWords } from './RepetitionRow'
import { useReviewed, useReviewedRoutes } from './reviewed'
import { clockWords, verdictWords } from './repetitionWords'
import { tempoWords } from './reviewWords'
import { SoundNote } from './SoundNote'

/** One repetition: its notation with the marks that it had, its keys in time, and what was played, heard. */
export const SeenRepetition = ({
  listed,
  list,
  seen,
  isHeard,
  toggle,
}: {
  readonly listed: Listed
  readonly list: RepetitionList
  readonly seen: Seen | undefined
  readonly isHeard: boolean
  readonly toggle: () => void
}) => {
  const app = useApp()
  const { student } = useReviewed()
  const routes = useReviewedRoutes()
  const sound = useSelected(app.sound, (state) => state.kind)
  const { repetition, day, drill } = listed
  const { verdict, rung, figures, piece, chunk, atEpochMs } = repetition
  const words = `${clockWords(atEpochMs)}, ${verdictWords[verdict]}`
  const flaws = flawsWords(listed, list)
  const [where, asked] = [whereWords(listed, list, {}), tempoWords(rung, listed)]
  const text = repetitionsText.seen
  return (
    <section className="seen" aria-label={text.title}>
      <h2>
        {words} <span className="soft">{dateWords(day)}</span>
      </h2>
      <p>
        {figures.tempo === undefined
          ? text.asked(where, asked)
          : text.askedAndPlayed(where, asked, tempoWords(tempo(figures.tempo), listed))}
      </p>
      {flaws && <p className="seen-flaws">{text.flaws(flaws)}</p>}
      {seen?.sheet ? (
        <SeenNotation
          sheet={seen.sheet}
          seen={seen}
          label={flaws ? repetitionsText.what(words, flaws) : words}
        />
      ) : (
        seen && (
          <p className="soft">{list.titles.has(piece) && drill ? text.noPlace : text.noPiece}</p>
        )
      )}
      <p className="row no-print">
        <button
          type="button"
          onClick={toggle}
          disabled={!seen?.take || sound === 'off'}
          aria-pressed={isHeard}
        >
          {phrase((isHeard ? text.stop : text.hear)<ReactNode>(<kbd>H</kbd>))}
        </button>
        {drill && !student && (
          <a href={formatRoute({ kind: 'practice', piece, place: drill.place, form: drill.form })}>
            {text.practise}
          </a>
        )}
        <a href={routes.repetitions({ piece, chunk })}>{text.ofChunk}</a>
      </p>
      <SoundNote />
      {seen && !seen.take && <p className="soft">{text.noKeys}</p>}
      {seen?.take && (
        <PlayedLine take={seen.take} chunk={seen.sheet?.chunk} listed={listed} list={list} />
      )}
    </section>
  )
}

const SeenNotation = ({
  sheet: { score, chunk },
  seen,
  label,
}: {
  readonly sheet: Sheet
  readonly seen: Seen
  readonly label: string
}) => {
  const stretch = useMemo(
    () => ({ score, start: chunk.start, end: chunk.end, hand: chunk.hand }),
    [score, chunk],
  )
  const onPencil = useMemo(
    () => (pencil: Pencil | undefined) => {
      seen.marks.forEach((mark, i) => {
        const drawn = pencilMark(mark, chunk)
        if (drawn) pencil?.put(`${i}`, drawn)
      })
    },
    [seen, chunk],
  )
  return (
    <div className="preview">
      <Notation stretch={stretch} label={label} caller="repetition" onPencil={onPencil} />
    </div>
  )
}
