import { useEffect, useMemo, useState } from 'react'
import type { PracticeState, Said, Sign as SignKind } from '@/app/practiceState'
import type { ItemOnDesk } from '@/app/practising'
import type { Repetition } from '@/judge/repetition'
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
  const caution = useCaution(state?.desk)
  if (!state) return <div className="practice-message" />
  const { breath, resting, simulated } = state
  const stands = state.coach.paused !== undefined || resting
  const sign = signOf(state)
  const aside = asideOf(state)
  return (
    <div className="practice-message" data-paused={stands}>
      {sign && <Sign kind={sign} />}
      <p role="status" aria-live="polite">
        {simulated && <span className="soft">Simulated player, nothing is recorded. </span>}
        {sentenceOf(state)} {aside && <span className="aside soft">{aside}</span>}
        {caution && !state.last && <span className="aside caution soft">{caution}</span>}
      </p>
      {(stands || breath) && (
        <button
          type="button"
          onPointerDown={keepFocus}
          onClick={() => app.practice.goOnOrMetronome()}
        >
          Go on <kbd>Space</kbd>
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
  const words = useMemo(
    () => (desk && isDue ? cautionAgainst(app.caution.strainsOf(desk)) : undefined),
    [app, desk, isDue],
  )
  useEffect(() => {
    if (words) app.caution.read()
  }, [app, words])
  return words
}

const signOf = ({ breath, resting, said }: PracticeState): SignKind | 'breath' | undefined => {
  if (breath) return 'breath'
  if (resting) return 'pause'
  return said?.kind === 'secure' ? 'done' : said?.kind === 'reason' ? said.sign : undefined
}

const sentenceOf = (state: PracticeState): string => {
  if (state.resting) return 'A pause: whatever you play now is not judged.'
  return wordsOf(state.said, state) ?? state.verdict ?? firstWords(state)
}

const firstWords = ({ coach, desk }: PracticeState): string => {
  if (desk.item && !coach.trial) return desk.item.item.reason
  if (coach.trial) return 'A short trial for the tempo: three clean in a row, then faster.'
  return desk.remedy === undefined
    ? 'Play when you are ready: the first key begins a repetition.'
    : 'Three clean in a row, and back to the drill.'
}

const wordsOf = (said: Said | undefined, { desk, coach }: PracticeState): string | undefined => {
  switch (said?.kind) {
    case 'reason':
      return said.sentence
    case 'secure':
      if (desk.remedy !== undefined) return `Solved: ${coach.streakGoal} clean in a row.`
      return desk.form === 'asWritten' && desk.reach === desk.goalTempo
        ? 'Secure for today: the streak is met at the goal tempo.'
        : `Done: ${coach.streakGoal} clean in a row.`
    case 'stray':
      return 'That key begins nothing here.'
    case 'unplugged':
      return 'The keyboard was unplugged: that repetition does not count. Plug it in and go on.'
    case 'soundLost':
      return 'The sound stopped, and the metronome with it. The drill goes on without; Space starts it again.'
    case undefined:
      return undefined
  }
}

/** Said more quietly: what comes next, what a problem most likely is, how a trial is left. */
const asideOf = (state: PracticeState): string | undefined => {
  const { breath, problem, desk, coach, verdict } = state
  if (breath?.ofItem && desk.item) return nextItemWords(desk.item, state)
  if (breath) return nextWords(desk)
  if (problem) {
    const at = desk.piece.notes.find(({ id }) => problem.diagnosis.notes.includes(id))?.start
    return at === undefined
      ? problem.likely
      : `${capital(describePlace(desk.piece, at))}. ${problem.likely}`
  }
  return coach.trial && verdict === undefined ? 'Backspace leaves the trial.' : undefined
}

/** Of a run-through what to work on, and what comes next today. */
const nextItemWords = ({ item, next }: ItemOnDesk, { desk, last }: PracticeState): string => {
  const heard = item.kind === 'runThrough' && last ? heardWords(desk, last) : ''
  const coming = next.item ? `Next: ${itemLine(next.item)}` : 'That was the last one for today.'
  return `${heard}Breathe. ${coming}`
}

/** The bars in which something went wrong, as many as can be kept in mind. */
const heardWords = ({ chunk, piece }: PracticeState['desk'], { flaws }: Repetition): string => {
  const bars = new Set(
    flaws.flatMap(({ onset }) => {
      const at = chunk.start + (chunk.onsets[onset]?.start ?? 0)
      return piece.bars.findLast(({ start }) => start <= at)?.number ?? []
    }),
  )
  const told = [...bars].toSorted((a, b) => a - b).slice(0, barsTold)
  if (told.length === 0) return ''
  const more = bars.size > told.length ? ' and others' : ''
  return `To work on next: ${told.length === 1 ? 'bar' : 'bars'} ${told.join(', ')}${more}. `
}

const barsTold = 5

const nextWords = ({ remedy, next, piece }: PracticeState['desk']): string => {
  if (remedy !== undefined) return 'Breathe. Back to the drill.'
  if (!next?.written) return 'Breathe. That was the last one.'
  const { written, form = 'asWritten', kind } = next
  const what = kind
    ? `${kind}, ${describePlace(piece, written.start)}`
    : describeChunk(piece, written)
  const how = form === 'asWritten' ? '' : `, ${formWords[form]}`
  return `Breathe. Next: ${what}, ${handWords[written.hand]}${how}`
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
