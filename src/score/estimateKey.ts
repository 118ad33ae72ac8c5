import type { KeySignature } from '@/music/music'
import { tick, type Key, type Tick } from '@/music/units'

interface Sounding {
  readonly key: Key
  readonly length: Tick
}

/**
 * How well each of the twelve keys fits a tonic, from the tonic up: ratings of listeners.
 * Krumhansl & Kessler 1982, Psychol. Rev. 89:334-368 (from memory).
 */
const profiles = {
  major: [6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88],
  minor: [6.33, 2.68, 3.52, 5.38, 2.6, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17],
} as const

/** Fewer notes than this say too little; a file without a key signature then stays in C major. */
const leastNotes = 12
/** Below this correlation no key stands out (inference; tonal pieces lie at 0.7 to 0.95). */
const leastCorrelation = 0.6

/**
 * The key signature that the notes suggest, where a file gives none: the duration of each of the
 * twelve keys is correlated with the profile of every major and minor key (Krumhansl & Schmuckler, in
 * Krumhansl 1990, Cognitive Foundations of Musical Pitch; from memory). `undefined` when none stands out.
 */
export const estimateKey = (notes: readonly Sounding[]): KeySignature | undefined => {
  if (notes.length < leastNotes) return undefined
  const durations = Array.from({ length: 12 }, () => 0)
  for (const { key, length } of notes) durations[key % 12] = (durations[key % 12] ?? 0) + length
  const candidates = (['major', 'minor'] as const).flatMap((mode) =>
    Array.from({ length: 12 }, (_, tonic) => ({
      mode,
      tonic,
      fit: correlate(durations, tonic, profiles[mode]),
    })),
  )
  const best = candidates.reduce((a, b) => (b.fit > a.fit ? b : a))
  if (best.fit < leastCorrelation) return undefined
  return { start: tick(0), fifths: fifthsOf(best.tonic, best.mode), mode: best.mode }
}

/** Sharps positive, -5 to 6: F-sharp major rather than G-flat. C major 0, G 1, F -1; A minor 0. */
const fifthsOf = (tonic: number, mode: 'major' | 'minor'): number => {
  const relative = mode === 'major' ? tonic : (tonic + 3) % 12
  return ((relative * 7 + 5) % 12) - 5
}

/** Pearson's correlation of the durations, counted from the tonic, with a profile. */
const correlate = (
  durations: readonly number[],
  tonic: number,
  profile: readonly number[],
): number => {
  const heard = profile.map((_, i) => durations[(tonic + i) % 12] ?? 0)
  const [meanHeard, meanProfile] = [mean(heard), mean(profile)]
  let [product, heardSquare, profileSquare] = [0, 0, 0]
  for (const [i, expected] of profile.entries()) {
    const a = (heard[i] ?? 0) - meanHeard
    const b = expected - meanProfile
    product += a * b
    heardSquare += a * a
    profileSquare += b * b
  }
  const scale = Math.sqrt(heardSquare * profileSquare)
  return scale === 0 ? 0 : product / scale
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length
