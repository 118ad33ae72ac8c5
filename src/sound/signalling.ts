import { makeSignal } from './signalSound'
import type { Signal, Stop } from './sound'

/** From the order to the sound: as soon as it can be handed over, seconds. */
const leadIn = 0.02
/** A signal that is taken back sinks to 1/e in this time, so that it does not crack, seconds. */
const fading = 0.015
/** After so many times its fading it is gone. */
const gone = 5

/** Plays signals into `output`, one at a time. */
export const createSignalling = (
  context: AudioContext,
  output: AudioNode,
): ((signal: Signal) => Stop) => {
  const made = new Map<Signal, AudioBuffer>()
  const bufferOf = (signal: Signal): AudioBuffer => {
    const known = made.get(signal)
    if (known) return known
    const samples = makeSignal(signal, context.sampleRate)
    const buffer = context.createBuffer(1, samples.length, context.sampleRate)
    buffer.copyToChannel(samples, 0)
    made.set(signal, buffer)
    return buffer
  }
  let stopLast: Stop = () => {}
  return (signal) => {
    stopLast()
    const [source, gain] = [context.createBufferSource(), context.createGain()]
    let sounding = true
    source.buffer = bufferOf(signal)
    source.connect(gain).connect(output)
    source.onended = () => {
      sounding = false
      gain.disconnect()
    }
    source.start(context.currentTime + leadIn)
    stopLast = () => {
      if (!sounding) return
      sounding = false
      const now = context.currentTime
      gain.gain.setTargetAtTime(0, now, fading)
      source.stop(now + gone * fading)
    }
    return stopLast
  }
}
