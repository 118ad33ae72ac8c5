import { Fragment, useEffect, useMemo, useState } from 'react'
import type { PracticeState, Said, Sign as SignKind } from '@/app/practiceState'
import { sayReason } from '@/app/planWords'
import type { ItemOnDesk } from '@/app/practising'
import { speechFor } from '@/app/speech'
import type { Repetition } from '@/judge/repetition'
import { nameExercise } from '@/text/buildUp'
import { coachText } from '@/text/coach'
import { drillText } from '@/text/drill'
import { keysText } from '@/text/keys'
import { useApp, useSelected } from './context'
import { cautionAgainst } from './cautions'
import { itemLine } from './planWords'
import { keepFocus } from './shortcuts'
import { Sign } from './Sign'
import { describeChunk, describePlace, formWords, handWords } from './words'

/** One sentence at a time: what the coach asks, or the last verdict. It keeps its place when empty. */
export const Message = () => {
  const app = useApp()
  const state = useSelected(app.practice.store, (now) => now)
  const strain = useCaution(state?.desk)
  if (!state) return <div className="practice-message" />
  const { breath, resting, simulated } = state
  const stands = state.coach.paused !== undefined || resting
  const sign = signOf(state)
  const sentence = sentenceOf(state)
  const caution = state.last ? undefined : strain
  // One thing at a time, and room for it.
  const aside = caution === undefined ? asideOf(state) : undefined
  return (
    <div className="practice-message" data-paused={stands}>
      {sign && <Sign kind={sign} />}
      <p role="status" aria-live="polite">
        {simulated && <span className="soft">{drillText.simulation} </span>}
        {/* Another sentence is another text, not the same one moved. */}
        <Fragment key={sentence}>
          {sentence} {aside && <span className="aside soft">{aside}</span>}
        </Fragment>
        {caution && <span className="aside caution soft">{caution}</span>}
      </p>
      {(stands || breath) && (
        <button
          type="button"
          onPointerDown={keepFocus}
          onClick={() => app.practice.goOnOrMetronome()}
        >
          {drillText.controls.goOn} <kbd>{keysText.names.space}</kbd>
        </button>
      )}
      {breath && (
        <i className="breath" style={{ animationDuration: `${breath.until - breath.since}ms` }} />
      )}
    </div>
  )
}

/** On the first drill of a day that tires the hand: what to mind, until one plays. */
const useCaution = (desk: PracticeState['desk'] | undefined): string | undefined => {
  const app = useApp()
  const [isDue] = useState(app.caution.isDue)
  const strains = useMemo(
    () => (desk && isDue ? app.caution.strainsOf(desk) : []),
    [app, desk, isDue],
  )
  useEffect(() => {
    if (strains.length > 0) app.caution.read()
  }, [app, strains])
  return cautionAgainst(strains)
}

const signOf = ({ breath, resting, said }: PracticeState): SignKind | 'breath' | undefined => {
  if (breath) return 'breath'
  if (resting) return 'pause'
  return said?.kind === 'secure' ? 'done' : said?.kind === 'reason' ? said.sign : undefined
}

const sentenceOf = (state: PracticeState): string => {
  if (state.resting) return drillText.resting
  const judged = state.last && speechFor(state.desk).describe(state.last)
  return wordsOf(state.said, state) ?? judged ?? firstWords(state)
}

const firstWords = ({ coach, desk }: PracticeState): string => {
  if (desk.item && !coach.trial) return sayReason(desk.item.item.reason)
  if (coach.trial) return drillText.trial
  return desk.remedy === undefined ? drillText.ready : drillText.remedy
}

const wordsOf = (said: Said | undefined, { desk, coach }: PracticeState): string | undefined => {
  switch (said?.kind) {
    case 'reason':
      return speechFor(desk).explain(said.reason)
    case 'secure':
      if (desk.remedy !== undefined) return drillText.solved(coach.streakGoal)
      return desk.form === 'asWritten' && desk.reach === desk.goalTempo
        ? drillText.secure
        : drillText.done(coach.streakGoal)
    case 'stray':
      return drillText.stray
    case 'taken':
      return drillText.taken
    case 'unplugged':
      return drillText.unplugged
    case 'soundLost':
      return drillText.soundLost
    case undefined:
      return undefined
  }
}

/** Said more quietly: what comes next, what a problem most likely is, how a trial is left. */
const asideOf = (state: PracticeState): string | undefined => {
  const { breath, problem, desk, coach, last } = state
  if (breath?.ofItem && desk.item) return nextItemWords(desk.item, state)
  if (breath) return nextWords(desk)
  if (problem) {
    const at = desk.piece.notes.find(({ id }) => problem.diagnosis.notes.includes(id))?.start
    const likely = coachText.likely[problem.diagnosis.likely]
    return at === undefined ? likely : drillText.problemAt(describePlace(desk.piece, at), likely)
  }
  return coach.trial && last === undefined ? drillText.leaveTrial : undefined
}

/** Of a run-through what to work on, and what comes next today. */
const nextItemWords = ({ item, next }: ItemOnDesk, { desk, last }: PracticeState): string => {
  const heard = item.kind === 'runThrough' && last ? heardWords(desk, last) : []
  const coming = next.item ? drillText.next(itemLine(next.item)) : drillText.lastToday
  return [...heard, drillText.breathe, coming].join(' ')
}

/** The bars in which something went wrong, as many as can be kept in mind. */
const heardWords = (
  { chunk, piece }: PracticeState['desk'],
  { flaws }: Repetition,
): readonly string[] => {
  const bars = new Set(
    flaws.flatMap(({ onset }) => {
      const at = chunk.start + (chunk.onsets[onset]?.start ?? 0)
      return piece.bars.findLast(({ start }) => start <= at)?.number ?? []
    }),
  )
  const told = [...bars].toSorted((a, b) => a - b).slice(0, barsTold)
  return told.length === 0 ? [] : [drillText.toWorkOn(told, bars.size > told.length)]
}

const barsTold = 5

const nextWords = ({ remedy, next, piece }: PracticeState['desk']): string => {
  if (remedy !== undefined) return `${drillText.breathe} ${drillText.backToDrill}`
  if (!next?.written) return `${drillText.breathe} ${drillText.last}`
  const { written, form = 'asWritten', exercise } = next
  const what = exercise
    ? `${nameExercise(exercise)}, ${describePlace(piece, written.start)}`
    : describeChunk(piece, written)
  const how = form === 'asWritten' ? '' : `, ${formWords[form]}`
  return `${drillText.breathe} ${drillText.next(`${what}, ${handWords[written.hand]}${how}`)}`
}
