import { useEffect, useRef } from 'react'
import type { RepetitionList } from '@/app/repetitionList'
import { tellFlaw } from '@/app/tellFlaw'
import type { Asked } from '@/review/asked'
import type { Listed } from '@/review/repetitions'
import { repetitionsText } from '@/text/repetitions'
import { overruleWords } from './Decisions'
import { clockWords, verdictWords } from './repetitionWords'
import { chunkWords, keyWords, tempoWords } from './reviewWords'

/** So many flaws are told; the notation has them all. */
const flawsTold = 3

/** When, what verdict, at what tempo, where, and what went wrong. */
export const RepetitionRow = ({
  listed,
  list,
  asked,
  isChosen,
  choose,
}: {
  readonly listed: Listed
  readonly list: RepetitionList
  readonly asked: Asked
  readonly isChosen: boolean
  readonly choose: (id: string) => void
}) => {
  const row = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    if (isChosen) row.current?.scrollIntoView({ block: 'nearest' })
  }, [isChosen])
  const { repetition } = listed
  const { verdict, rung, standard, atEpochMs } = repetition
  return (
    <button
      ref={row}
      type="button"
      className="repetition"
      aria-pressed={isChosen}
      data-verdict={verdict}
      onClick={() => choose(repetition.id)}
    >
      <span>{clockWords(atEpochMs)}</span>
      <b>{verdictWords[verdict]}</b>
      <span>
        {tempoWords(rung, listed)}{' '}
        <span className="soft">{repetitionsText.standards[standard]}</span>
      </span>
      <span className="repetition-what">
        {whatWords(whereWords(listed, list, asked), flawsWords(listed, list))}{' '}
        <span className="soft">{asideWords(listed)}</span>
      </span>
    </button>
  )
}

const whatWords = (where: string, flaws: string): string =>
  where && flaws ? repetitionsText.what(where, flaws) : where || flaws

/** What was not asked for by name. */
export const whereWords = (
  { repetition: { piece, chunk }, drill }: Listed,
  { titles, score }: Pick<RepetitionList, 'titles' | 'score'>,
  asked: Asked,
): string =>
  [
    ...(asked.piece === undefined ? [titles.get(piece) ?? repetitionsText.somePiece] : []),
    ...(asked.chunk === chunk ? [] : [chunkWords(drill ? { drill } : undefined, score)]),
  ].join(', ')

export const flawsWords = (
  { repetition: { flaws } }: Listed,
  { score }: Pick<RepetitionList, 'score'>,
): string => {
  const told = flaws.slice(0, flawsTold).map((flaw) => {
    const told = tellFlaw(flaw, (key) => keyWords(key, score))
    return flaw.forgiven ? repetitionsText.forgiven(told) : told
  })
  const more = flaws.length - told.length
  return [...told, ...(more > 0 ? [repetitionsText.more(more)] : [])].join(', ')
}

const asideWords = ({ isCold, overruled }: Listed): string =>
  [
    ...(isCold ? [repetitionsText.cold] : []),
    ...overruled
      .filter((what) => what !== 'end')
      .map((what) => repetitionsText.decided(overruleWords[what])),
  ].join('; ')
