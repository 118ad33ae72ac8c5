import { parseKey } from '@/music/pitch'
import type { Key } from '@/music/units'

/** 'audio/D#4v8.ogg' -> D sharp 4; the number after v is the layer of force. */
export const readSampleName = (path: string): Key | undefined => {
  const name = /([A-G]#?\d)v\d+\.ogg$/.exec(path)?.[1]
  return name === undefined ? undefined : parseKey(name)
}

/** The sampled key nearest to a key; the lower of two, since a sample sounds better raised than lowered. */
export const nearestSample = (sampled: readonly Key[], key: Key): Key | undefined =>
  sampled
    .toSorted((a, b) => a - b)
    .reduce<Key | undefined>(
      (best, one) =>
        best === undefined || Math.abs(one - key) < Math.abs(best - key) ? one : best,
      undefined,
    )

/** How much faster a sample is played to sound as a key: a semitone is the twelfth root of 2. */
export const playbackRate = (sampled: Key, key: Key): number => 2 ** ((key - sampled) / 12)

/** Force to loudness: 40 log10(v / 127) dB (MIDI, General MIDI Level 2 recommendation; from memory). */
export const gainOf = (velocity: number): number => (velocity / 127) ** 2

/** No note of a slow chunk is held longer; thirty samples decoded whole would fill 170 MB. */
const keptSeconds = 6
const fadeSeconds = 0.5
/** -46 dB under the sample's own peak: over the hiss, under the hammer. */
const silenceShare = 0.005
/** No sample is silent for longer at its start; what comes after is not even looked at, seconds. */
const mostSilence = 1
/** Kept before the attack, so that it does not begin with a crack. */
const leadSeconds = 0.001

/** One channel, from just before the attack, a few seconds long, faded out at the cut. */
export const trimSample = (
  channels: readonly Float32Array[],
  sampleRate: number,
): Float32Array<ArrayBuffer> => {
  const whole = mixDown(channels, Math.round((keptSeconds + mostSilence) * sampleRate))
  const peak = whole.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
  const attack = whole.findIndex((sample) => Math.abs(sample) > peak * silenceShare)
  const from = Math.max(0, attack - Math.round(leadSeconds * sampleRate))
  const kept = whole.slice(from, from + Math.round(keptSeconds * sampleRate))
  const fade = Math.min(kept.length, Math.round(fadeSeconds * sampleRate))
  for (let i = 0; i < fade; i++) {
    const at = kept.length - 1 - i
    kept[at] = (kept[at] ?? 0) * (i / fade)
  }
  return kept
}

const mixDown = (channels: readonly Float32Array[], most: number): Float32Array<ArrayBuffer> => {
  const mixed = new Float32Array(Math.min(channels[0]?.length ?? 0, most))
  for (const channel of channels)
    for (let i = 0; i < mixed.length; i++)
      mixed[i] = (mixed[i] ?? 0) + (channel[i] ?? 0) / channels.length
  return mixed
}
