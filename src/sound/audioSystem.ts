import { ms, type Ms } from '@/music/units'
import { readClock, toEventTime, unreadClock, type Reading } from './clock'
import { voices, type Voice } from './sound'

/** Readings of the two clocks before the first click, one each few milliseconds. */
const firstReadings = 20
const readEveryMs = 8
/** Afterwards, so that the mapping follows clocks that run apart. */
const readLaterEveryMs = 100
/** Ten notes of the piano at once stay near full scale; the limiter takes the rest. */
const headroom: Readonly<Record<Voice, number>> = { metronome: 1, piano: 0.7, signals: 1 }
/** A change of volume without a crack, seconds. */
const volumeGlide = 0.02

/** The audio context with its three voices, and its clock beside that of the key events. */
export interface AudioSystem {
  readonly context: AudioContext
  readonly voices: Readonly<Record<Voice, AudioNode>>
  readonly setVolume: (voice: Voice, volume: number) => void
  /** When sound of this audio time (seconds) is heard, on the clock of the key events. */
  readonly toEventTime: (audioSeconds: number) => Ms
  /** Reads the clocks until the mapping is steady. */
  readonly steadyClock: () => Promise<void>
}

/** Throws where the browser has no audio. */
export const openAudio = (
  volumes: Readonly<Record<Voice, number>>,
  tellState: (state: AudioContextState) => void,
): AudioSystem => {
  const context = new AudioContext({ latencyHint: 'interactive' })
  const gains: Readonly<Record<Voice, GainNode>> = {
    metronome: context.createGain(),
    piano: context.createGain(),
    signals: context.createGain(),
  }
  const limiter = new DynamicsCompressorNode(context, { threshold: -6, knee: 6, ratio: 12 })
  // The limiter delays what passes it, so the clicks go past it.
  gains.metronome.connect(context.destination)
  gains.signals.connect(context.destination)
  gains.piano.connect(limiter).connect(context.destination)
  let clock = unreadClock
  const read = (): void => {
    if (context.state === 'running') clock = readClock(clock, readNow(context))
  }
  setInterval(read, readLaterEveryMs)
  context.onstatechange = () => {
    // Another device or a pause of the context shifts the clocks against each other.
    if (context.state !== 'running') clock = unreadClock
    tellState(context.state)
  }
  const setVolume = (voice: Voice, volume: number): void => {
    const value = volume * headroom[voice]
    gains[voice].gain.setTargetAtTime(value, context.currentTime, volumeGlide)
  }
  for (const voice of voices) gains[voice].gain.value = volumes[voice] * headroom[voice]
  return {
    context,
    voices: gains,
    setVolume,
    toEventTime: (audioSeconds) => {
      const reading = readNow(context)
      return (
        toEventTime(clock, audioSeconds) ??
        ms(reading.event + (audioSeconds - reading.audio) * 1000)
      )
    },
    steadyClock: async () => {
      for (let i = clock.offsets.length; i < firstReadings; i++) {
        read()
        await pause(readEveryMs)
      }
    },
  }
}

export const pause = (forMs: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, forMs)
  })

/** What is heard now on both clocks; where the browser cannot tell, from the time that is rendered now. */
const readNow = (context: AudioContext): Reading => {
  const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp?.() ?? {}
  if (contextTime > 0 && performanceTime > 0)
    return { audio: contextTime, event: ms(performanceTime) }
  const latency = context.outputLatency || context.baseLatency || 0
  return { audio: context.currentTime - latency, event: ms(performance.now()) }
}
