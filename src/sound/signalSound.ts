import type { Signal } from './sound'

interface Stroke {
  /** Seconds from the beginning of the signal. */
  readonly at: number
  readonly hertz: number
}

/** A3 and the D above it (equal temperament, A4 = 440 Hz, ISO 16): a fourth, low and short as a knock on wood. */
const low = 220
const high = 220 * 2 ** (5 / 12)
/** One stroke after another, told apart without haste, seconds. */
const next = 0.16

/** The shape tells what it is: rising, falling, together, the same again. */
const strokes: Readonly<Record<Signal, readonly Stroke[]>> = {
  streak: [{ at: 0, hertz: high }],
  up: [
    { at: 0, hertz: low },
    { at: next, hertz: high },
  ],
  down: [
    { at: 0, hertz: high },
    { at: next, hertz: low },
  ],
  done: [
    { at: 0, hertz: low },
    { at: 0.02, hertz: high },
  ],
  problem: [
    { at: 0, hertz: low },
    { at: next, hertz: low },
  ],
}

/** A bar that is hollowed out on its underside, as in a marimba, sounds its second mode two octaves up (Rossing, The Science of Sound, ch. 13). */
const secondMode = 4
/** Time for the ring to fall to 1/e, seconds; the second mode and the mallet die sooner. */
const ringDecay = 0.09
const overDecay = 0.02
/** A felt mallet presses before it lets go, seconds: no click at the beginning. */
const attack = 0.004
const tail = 0.55
/** Well below the metronome and the piano: a word aside, not a call. */
const level = 0.3

/** A signal as samples between -1 and 1; the same each time. */
export const makeSignal = (signal: Signal, sampleRate: number): Float32Array<ArrayBuffer> => {
  const struck = strokes[signal]
  const length = (struck.at(-1)?.at ?? 0) + tail
  const samples = new Float32Array(Math.round(length * sampleRate))
  for (const { at, hertz } of struck) {
    const from = Math.round(at * sampleRate)
    for (let i = from; i < samples.length; i++) {
      const t = (i - from) / sampleRate
      const ring = Math.sin(2 * Math.PI * hertz * t) * Math.exp(-t / ringDecay)
      const over = Math.sin(2 * Math.PI * hertz * secondMode * t) * Math.exp(-t / overDecay)
      const fade = Math.min(1, (samples.length - i) / (0.05 * sampleRate))
      const here = level * Math.min(1, t / attack) * (0.8 * ring + 0.2 * over) * fade
      samples[i] = (samples[i] ?? 0) + here
    }
  }
  return samples
}
