import type { Accent } from './sound'

interface Timbre {
  /** Two partials of a struck wooden bar: it rings high and short, and so cuts through a piano. */
  readonly hertz: number
  readonly level: number
}

export const timbres: Readonly<Record<Accent, Timbre>> = {
  strong: { hertz: 2350, level: 0.95 },
  medium: { hertz: 1960, level: 0.75 },
  weak: { hertz: 1570, level: 0.6 },
  soft: { hertz: 1570, level: 0.25 },
}

/** A free bar's second mode lies 2.76 times above its first (Rossing, The Science of Sound, ch. 13). */
export const secondMode = 2.756
const seconds = 0.07
/** Time for the ring to fall to 1/e; the tap of the beater dies ten times sooner. */
const ringDecay = 0.011
const tapDecay = 0.0011

/** One click as samples between -1 and 1; the same each time, its attack at the first sample. */
export const makeClick = (accent: Accent, sampleRate: number): Float32Array<ArrayBuffer> => {
  const { hertz, level } = timbres[accent]
  const samples = new Float32Array(Math.round(seconds * sampleRate))
  let noise = 0x2545f491
  for (let i = 0; i < samples.length; i++) {
    const t = i / sampleRate
    // Xorshift (Marsaglia 2003): the beater's tap is noise, but the same noise each time.
    noise ^= noise << 13
    noise ^= noise >>> 17
    noise ^= noise << 5
    const ring = Math.cos(2 * Math.PI * hertz * t) * Math.exp(-t / ringDecay)
    const over = Math.cos(2 * Math.PI * hertz * secondMode * t) * Math.exp(-t / (ringDecay / 3))
    const tap = (noise / 2 ** 31) * Math.exp(-t / tapDecay)
    const fade = Math.min(1, (samples.length - i) / (0.01 * sampleRate))
    samples[i] = level * (0.6 * ring + 0.2 * over + 0.2 * tap) * fade
  }
  return samples
}
