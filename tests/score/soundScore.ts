import type { Score } from '@/music/music'

/** What is wrong with a score that the rest of the program could not rely on; `undefined` when nothing is. */
export const findUnsound = ({
  notes,
  bars,
  tempos,
  keys,
  end,
  ticksPerQuarter,
}: Score): string | undefined => {
  const whole = (n: number): boolean => Number.isSafeInteger(n)
  if (!whole(ticksPerQuarter) || ticksPerQuarter < 1) return 'the resolution is no whole number'
  let at = 0
  for (const [i, bar] of bars.entries()) {
    if (bar.start !== at || !whole(bar.length) || bar.length < 1) return `bar ${i} does not follow`
    const { beats, beatType } = bar.time
    if (!(beats >= 1 && beatType >= 1)) return `bar ${i} has an impossible time`
    at += bar.length
  }
  if (at !== end) return 'the score does not end with its last bar'
  const ids = new Set<string>()
  for (const [i, note] of notes.entries()) {
    const bar = bars[note.barIndex]
    const before = notes[i - 1]
    if (!whole(note.start) || !whole(note.length) || note.length < 1)
      return `${note.id} has no length`
    if (!bar || note.start < bar.start || note.start >= bar.start + bar.length)
      return `${note.id} is not in its bar`
    if (note.start + note.length > end) return `${note.id} goes beyond the end`
    if (!whole(note.key) || note.key < 0 || note.key > 127) return `${note.id} has no key`
    if (
      before &&
      (before.start > note.start || (before.start === note.start && before.key > note.key))
    )
      return `${note.id} is out of order`
    ids.add(note.id)
  }
  if (ids.size !== notes.length) return 'two notes have one name'
  if (!notes.some((n) => !n.grace)) return 'there is no note'
  if (tempos[0]?.start !== 0) return 'no tempo stands at the beginning'
  if (!tempos.every(({ tempo }) => tempo > 0 && tempo < Infinity)) return 'a tempo is impossible'
  if (!keys.every(({ fifths }) => Math.abs(fifths) <= 7)) return 'a key signature is impossible'
  const starts = [tempos, keys].every((marks) =>
    marks.every((m, i) => whole(m.start) && m.start >= (marks[i - 1]?.start ?? 0)),
  )
  return starts ? undefined : 'marks are out of order'
}
