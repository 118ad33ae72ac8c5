import type { Chunk } from '@/music/chunk'
import type { TimeSignature } from '@/music/music'
import type { Ms, Tempo } from '@/music/units'
import { clicksFrom, followClicks, type Clicks } from './followClicks'
import type { ClickPattern, SoundPort } from './soundPorts'

/** The metronome of a drill, and where its clicks fall on the clock of the key events. */
export interface Clicking {
  /** `undefined` while it is silent. */
  readonly clicks: () => Clicks | undefined
  /** Begins the count-in; false when nothing can sound. */
  readonly start: (chunk: Chunk, time: TimeSignature, tempo: Tempo) => Promise<boolean>
  readonly changeTempo: (tempo: Tempo) => void
  /** Clicks within the bars as is wished now; the beats stay where they are. */
  readonly changePattern: () => void
  readonly stop: () => void
}

/** `pattern`: what is to click within the bars. `onMoved`: a click was heard at another time than was thought. */
export const createClicking = (
  sound: Pick<
    SoundPort,
    'startMetronome' | 'changeTempo' | 'changePattern' | 'stopMetronome' | 'watchBeats'
  >,
  pattern: () => ClickPattern,
  onMoved: (clicks: Clicks) => void,
): Clicking => {
  let clicks: Clicks | undefined
  let counted: TimeSignature | undefined
  const begin = (first: Ms | undefined, tempo: Tempo): void => {
    clicks = first === undefined || !counted ? undefined : clicksFrom(first, counted, tempo)
  }
  sound.watchBeats(({ at }) => {
    if (!clicks) return
    clicks = followClicks(clicks, at)
    onMoved(clicks)
  })
  return {
    clicks: () => clicks,
    start: async (chunk, time, tempo) => {
      const started = await sound.startMetronome({
        tempo,
        time,
        countInBars: 1,
        barOffset: chunk.barOffset / chunk.ticksPerQuarter,
        ...pattern(),
      })
      counted = time
      begin(started?.firstBeat, tempo)
      return started !== undefined
    },
    changeTempo: (tempo) => {
      if (clicks) begin(sound.changeTempo(tempo)?.firstBeat, tempo)
    },
    changePattern: () => {
      if (clicks) sound.changePattern(pattern())
    },
    stop: () => {
      sound.stopMetronome()
      clicks = undefined
    },
  }
}
