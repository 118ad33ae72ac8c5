import type { Score } from '@/music/music'
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
  readonly onPassage: (passage: Passage) => void
  readonly picked: NoteId | undefined
  readonly onPick: (note: NoteId | undefined) => void
}

/** Left and right move the passage by a bar, or its end with Shift; up and down pick a note in it. */
export const moveByKey = (event: React.KeyboardEvent, chosen: Chosen): void => {
  const { score, passage, onPassage, onPick, picked } = chosen
  const { from, to } = passage
  const last = score.bars.length - 1
  const within = (bar: number): number => Math.min(last, Math.max(0, bar))
  const move = (by: number): void => {
    onPick(undefined)
    if (event.shiftKey) onPassage({ from, to: Math.max(from, within(to + by)) })
    else if (from + by >= 0 && to + by <= last) onPassage({ from: from + by, to: to + by })
  }
  const pick = (by: 1 | -1): void => {
    const inside = score.notes.filter(({ barIndex }) => barIndex >= from && barIndex <= to)
    const now = inside.findIndex(({ id }) => id === picked)
    const next = now < 0 ? (by > 0 ? 0 : inside.length - 1) : now + by
    onPick(inside[next]?.id)
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
