import type { TempoChange } from './music'
import { ms, tempo, tick, type Ms, type Tempo, type Tick } from './units'

/** When no tempo is given a Standard MIDI File goes at 120 quarters a minute (SMF 1.0). */
export const defaultTempo = tempo(120)

/** The tempo in force at a tick. */
export const tempoAt = (changes: readonly TempoChange[], at: Tick): Tempo =>
  changes.findLast((change) => change.start <= at)?.tempo ?? defaultTempo

/** Milliseconds from tick 0 to a tick through every tempo change. */
export const msAt = (changes: readonly TempoChange[], ticksPerQuarter: number, at: Tick): Ms => {
  const all =
    changes[0]?.start === 0 ? changes : [{ start: tick(0), tempo: defaultTempo }, ...changes]
  let total = 0
  for (const [i, change] of all.entries()) {
    if (change.start >= at) break
    const end = Math.min(at, all[i + 1]?.start ?? at)
    total += ((end - change.start) / ticksPerQuarter) * (60_000 / change.tempo)
  }
  return ms(total)
}
