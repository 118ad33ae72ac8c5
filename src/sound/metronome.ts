import type { Tempo } from '@/music/units'
import {
  beginBeating,
  changeBeating,
  changePattern,
  firstBeat,
  planClicks,
  skipClicks,
  type Beating,
  type Click,
} from './clicks'
import { makeClick } from './clickSound'
import { accents, type Accent, type ClickPattern, type MetronomeSettings } from './sound'

/** Clicks are handed to the audio clock this long ahead, so that a busy page makes none late, seconds. */
const lookAhead = 0.25
const wakeEveryMs = 50
/** From the start to the first click: time to hand it over, seconds. */
const leadIn = 0.12

export interface Metronome {
  /** Begins the count-in; the first click after it. */
  readonly start: (settings: MetronomeSettings) => Click
  readonly changeTempo: (tempo: Tempo) => Click | undefined
  readonly changePattern: (pattern: ClickPattern) => void
  readonly stop: () => void
}

/** Plays clicks into `output`, and tells each when it hands it to the audio clock. */
export const createMetronome = (
  context: AudioContext,
  output: AudioNode,
  tell: (click: Click) => void,
): Metronome => {
  const sounds = renderClicks(context)
  let beating: Beating | undefined
  let timer: ReturnType<typeof setInterval> | undefined
  const ahead = new Set<AudioBufferSourceNode>()
  const play = (click: Click): void => {
    if (!click.silent) sound(click)
    tell(click)
  }
  const sound = (click: Click): void => {
    const source = context.createBufferSource()
    source.buffer = sounds[click.accent]
    source.connect(output)
    source.onended = () => ahead.delete(source)
    source.start(click.at)
    ahead.add(source)
  }
  const wake = (): void => {
    if (!beating) return
    const now = context.currentTime
    const [next, clicks] = planClicks(skipClicks(beating, now), now + lookAhead)
    beating = next
    clicks.forEach(play)
  }
  const stop = (): void => {
    clearInterval(timer)
    beating = undefined
    for (const source of ahead) source.stop()
    ahead.clear()
  }
  return {
    start: (settings) => {
      stop()
      beating = beginBeating(settings, context.currentTime + leadIn)
      const first = firstBeat(beating)
      wake()
      timer = setInterval(wake, wakeEveryMs)
      return first
    },
    changeTempo: (tempo) => {
      if (!beating) return undefined
      beating = changeBeating(beating, tempo)
      return firstBeat(beating)
    },
    changePattern: (pattern) => {
      if (beating) beating = changePattern(beating, pattern)
    },
    stop,
  }
}

const renderClicks = (context: BaseAudioContext): Readonly<Record<Accent, AudioBuffer>> => {
  const render = (accent: Accent): AudioBuffer => {
    const samples = makeClick(accent, context.sampleRate)
    const buffer = context.createBuffer(1, samples.length, context.sampleRate)
    buffer.copyToChannel(samples, 0)
    return buffer
  }
  const [strong, medium, weak, soft] = accents
  return {
    strong: render(strong),
    medium: render(medium),
    weak: render(weak),
    soft: render(soft),
  }
}
