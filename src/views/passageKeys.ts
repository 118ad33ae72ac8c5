import type { HandChoice, Note, Score } from '@/music/music'
import type { NoteId } from '@/music/units'

/** The chosen bars by their indices. */
export interface Passage {
  readonly from: number
  readonly to: number
}

/** What arrow keys move on the music. */
export interface Chosen {
  readonly score: Score
  readonly passage: Passage
  readonly hand: HandChoice
  readonly onPassage: (passage: Passage) => void
  readonly picked: NoteId | undefined
  readonly onPick: (note: NoteId | undefined) => void
}

/** The next note of the same hand or the one before, in the order of the score. */
export const noteBeside = (
  { notes }: Score,
  picked: NoteId | undefined,
  by: 1 | -1,
): Note | undefined => {
  const now = notes.find(({ id }) => id === picked)
  const own = notes.filter(({ hand }) => hand === now?.hand)
  return now && own[own.indexOf(now) + by]
}

/** The passage goes along when a note beyond it is picked. */
export const passageWith = ({ bars }: Score, { from, to }: Passage, { barIndex }: Note): Passage =>
  barIndex >= from && barIndex <= to
    ? { from, to }
    : { from: barIndex, to: Math.min(bars.length - 1, barIndex + to - from) }

/** Left and right move the passage by a bar, or its end with Shift; up and down pick a note in it, and then left and right go on in its hand. */
export const moveByKey = (event: React.KeyboardEvent, chosen: Chosen): void => {
  const { score, passage, hand, onPassage, onPick, picked } = chosen
  const { from, to } = passage
  const last = score.bars.length - 1
  const within = (bar: number): number => Math.min(last, Math.max(0, bar))
  const move = (by: 1 | -1): void => {
    const beside = noteBeside(score, picked, by)
    if (beside && !event.shiftKey) {
      onPick(beside.id)
      return onPassage(passageWith(score, passage, beside))
    }
    onPick(undefined)
    if (event.shiftKey) onPassage({ from, to: Math.max(from, within(to + by)) })
    else if (from + by >= 0 && to + by <= last) onPassage({ from: from + by, to: to + by })
  }
  const pick = (by: 1 | -1): void => {
    const inside = score.notes.filter(({ barIndex }) => barIndex >= from && barIndex <= to)
    const now = inside.findIndex(({ id }) => id === picked)
    // It begins in the chosen hand, and goes from there through the notes of both.
    const own = inside.filter((note) => hand === 'both' || note.hand === hand)
    const begin = by > 0 ? own[0] : own.at(-1)
    onPick((now < 0 ? begin : inside[now + by])?.id)
  }
  const actions: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => move(-1),
    ArrowRight: () => move(1),
    ArrowDown: () => pick(1),
    ArrowUp: () => pick(-1),
    Home: () => onPassage({ from: 0, to: to - from }),
    End: () => onPassage({ from: last - (to - from), to: last }),
    Escape: () => onPick(undefined),
  }
  const run = actions[event.key]
  if (!run || event.ctrlKey || event.altKey || event.metaKey) return
  event.preventDefault()
  run()
}
