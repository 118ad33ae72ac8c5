import { useMemo, useRef, useState } from 'react'
import { planSystems } from '@/engraving/systems'
import type { RecordedFlawKind } from '@/journal/words'
import type { Score } from '@/music/music'
import type { Asked } from '@/review/asked'
import type { BarFlaws } from '@/review/flawBars'
import { flawsText } from '@/text/flaws'
import { reviewText } from '@/text/review'
import { FlawLegend } from './FlawLegend'
import { FlawLine } from './FlawLine'
import type { PageKey } from './PageKeys'
import { useReviewedRoutes } from './reviewed'
import { flawTimes, locatedWords } from './reviewWords'
import { lineHeight, useLines, useWidth } from './useSheet'
import {
  flawsByLine,
  isCrowded,
  marksOnLine,
  weighingOf,
  type LineFlaws,
  type NoteFlaws,
  type Weighing,
} from './weighedFlaws'
import { formatBars } from './words'

/** Staff spaces in CSS pixels. */
const spaceFor = (width: number): number => (width < 600 ? 6.5 : 9.5)
/** With marks on fewer of its lines a piece shows at first those alone. */
const leastMarked = 1 / 2

/** The flaws where they are: the piece with pencil marks, the heavier the more often; numbers on demand. */
export const FlawMusic = ({
  score,
  bars,
  asked,
}: {
  readonly score: Score
  readonly bars: readonly BarFlaws[]
  /** What all repetitions behind these flaws have in common. */
  readonly asked: Asked
}) => {
  const routes = useReviewedRoutes()
  const box = useRef<HTMLDivElement>(null)
  const width = useWidth(box)
  const space = spaceFor(width)
  const [kind, setKind] = useState<RecordedFlawKind>()
  const [hasNumbers, setNumbers] = useState(false)
  const whole = useMemo(
    () => (width < 120 ? [] : planSystems(score, width / space)),
    [score, width, space],
  )
  const [isWhole, setWhole] = useState<boolean>()
  const [hasSeldom, setSeldom] = useState(() => !isCrowded(score, bars))
  const weighing = useMemo(() => weighingOf(bars), [bars])
  const shown = useMemo(
    () => (hasSeldom ? bars : bars.map((bar) => withoutSeldom(bar, weighing))),
    [bars, hasSeldom, weighing],
  )
  const marked = useMemo(
    () => flawsByLine(score, whole, shown, kind, space),
    [score, whole, shown, kind, space],
  )
  const showsAll = isWhole ?? marked.size >= whole.length * leastMarked
  const plan = useMemo(
    () => (showsAll ? whole : whole.filter((_, line) => marked.has(line))),
    [whole, marked, showsAll],
  )
  const found = useMemo(
    () => flawsByLine(score, plan, shown, kind, space),
    [score, plan, shown, kind, space],
  )
  const all = useMemo(
    () => flawsByLine(score, plan, bars, kind, space),
    [score, plan, bars, kind, space],
  )
  const marks = useMemo(
    () => new Map([...found].map(([line, flaws]) => [line, marksOnLine(score, flaws, weighing)])),
    [score, found, weighing],
  )
  const lines = useLines(score, plan, width, space, marks)
  const kinds = [...new Set(bars.flatMap(({ notes }) => notes.map((each) => each.kind)))]
  return (
    <>
      <p className="row no-print">
        <label className="row tight">
          {reviewText.music.show}
          <select
            value={kind ?? ''}
            onChange={({ target }) => setKind(kinds.find((each) => each === target.value))}
          >
            <option value="">{reviewText.music.all}</option>
            {kinds.map((each) => (
              <option key={each} value={each}>
                {flawsText.inSentence[each]}
              </option>
            ))}
          </select>
        </label>
        <Check name="n" label={reviewText.music.numbers} isOn={hasNumbers} set={setNumbers} />
        <Check name="l" label={reviewText.music.seldom} isOn={hasSeldom} set={setSeldom} />
        {whole.length > 1 && (
          <Check name="w" label={reviewText.music.whole} isOn={showsAll} set={setWhole} />
        )}
      </p>
      <FlawLegend marks={[...marks.values()].flat()} weighing={weighing} />
      <div ref={box} className="flaw-music">
        {plan.map(({ fromBar, toBar }, index) => {
          const [first, last] = [score.bars[fromBar], score.bars[toBar]]
          const { notes: marked = [], stretches = [] } = found.get(index) ?? {}
          const drawn = new Set(marked.map(({ note }) => note))
          const notes = all.get(index)?.notes.filter(({ note }) => drawn.has(note)) ?? []
          return (
            <FlawLine
              key={`${fromBar} ${width}`}
              lines={lines}
              index={index}
              label={
                first && last
                  ? `${formatBars(first, last)}: ${lineWords(score, { notes, stretches })}`
                  : ''
              }
              height={Math.round(lineHeight * space)}
              flaws={hasNumbers ? { notes, stretches } : noFlaws}
              address={(at) =>
                routes.repetitions({ ...asked, ...(kind ? { flaw: kind } : {}), ...at })
              }
            />
          )
        })}
      </div>
    </>
  )
}

const press = (name: string): void =>
  document.querySelector<HTMLElement>(`.review [data-key=${name}]`)?.click()

/** What can be chosen of the first music on the page, by keys that the page lists. */
export const musicKeys = (): readonly PageKey[] => [
  { key: 'n', shown: 'N', words: reviewText.keys.numbers, run: () => press('n') },
  { key: 'l', shown: 'L', words: reviewText.keys.seldom, run: () => press('l') },
  { key: 'w', shown: 'W', words: reviewText.keys.whole, run: () => press('w') },
]

const Check = ({
  name,
  label,
  isOn,
  set,
}: {
  /** The key that it is pressed with. */
  readonly name: string
  readonly label: string
  readonly isOn: boolean
  readonly set: (isOn: boolean) => void
}) => (
  <label className="row tight">
    <input
      type="checkbox"
      data-key={name}
      checked={isOn}
      onChange={({ target }) => set(target.checked)}
    />
    {label} <kbd>{name.toUpperCase()}</kbd>
  </label>
)

const withoutSeldom = (bar: BarFlaws, { middle }: Weighing): BarFlaws => ({
  ...bar,
  notes: bar.notes.filter(({ times }) => times >= middle),
})

/** So many notes of a line are told; the table has them all. */
const notesTold = 3

const noFlaws: LineFlaws = { notes: [], stretches: [] }

const lineWords = (score: Score, { notes, stretches }: LineFlaws): string => {
  const places = [
    ...notes,
    ...stretches.map(({ flaw }) => ({ note: flaw.note, times: flaw.times, flaws: [flaw] })),
  ]
  const times = places.reduce((sum, place) => sum + place.times, 0)
  if (times === 0) return reviewText.music.noFlaw
  const most = places.toSorted((a, b) => b.times - a.times).slice(0, notesTold)
  return reviewText.music.flaws(times, most.map(placeWords(score)).join('; '))
}

const placeWords =
  (score: Score) =>
  ({ note, flaws }: Pick<NoteFlaws, 'note' | 'flaws'>): string =>
    `${locatedWords(flaws[0] ?? { note }, score)} ${flaws.map(({ kind, times }) => flawTimes(kind, times)).join(', ')}`
