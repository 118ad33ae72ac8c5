import type { JudgeSettings } from '@/judge/judge'
import type { Repetition } from '@/judge/repetition'
import { replayTake } from '@/judge/replay'
import { clickGrid, type Chunk } from '@/music/chunk'
import type { Take } from '@/music/keyEvent'
import { ms, type Ms } from '@/music/units'

/**
 * The repetitions of a take, judged at the tempo of the settings where one is set. A take does not
 * say where the clicks fell, and the player may have paused between repetitions without them: so
 * each repetition is judged again against clicks that begin with its own first right note.
 */
export const judgeTake = (
  chunk: Chunk,
  settings: JudgeSettings,
  take: Take,
): readonly Repetition[] => {
  const { repetitions } = replayTake(chunk, settings, take)
  const { quarter } = settings
  if (quarter === undefined || settings.standard !== 'time') return repetitions
  return repetitions.map((repetition, i) => {
    const click = fitClick(repetition, chunk, quarter)
    if (click === undefined) return repetition
    const until = repetitions[i + 1]?.start ?? Infinity
    const events = take.events.filter((e) => e.at >= repetition.start && e.at < until)
    const again = replayTake(chunk, { ...settings, click }, { events }).repetitions
    const same = again.find((r) => r.start === repetition.start)
    return same ? { ...same, number: repetition.number } : repetition
  })
}

/** The time of the click before the chunk's first onset, when the first right note is in time. */
const fitClick = ({ marks }: Repetition, chunk: Chunk, quarter: Ms): Ms | undefined => {
  const first = marks.find((mark) => mark.kind === 'right')
  if (first?.kind !== 'right') return undefined
  const { behind } = clickGrid(chunk)
  return ms(first.played.at - ((first.expected.start + behind) / chunk.ticksPerQuarter) * quarter)
}
