import type { Score } from '@/music/music'

/** One line of the whole piece, by the indices of its first and last bar. */
export interface SystemBars {
  readonly fromBar: number
  readonly toBar: number
}

// Widths in staff spaces, fitted to what the engraver needs: for our samples within 7 % in most bars,
// for dense music with many accidentals up to a quarter too little.
const barLineWidth = 2
const onsetWidth = 3.32
/** An onset needs as much more as the power of the quarters to the next, as the engraver spaces them. */
const spacingPower = 0.55
/** Heads and the accidentals before them keep apart, however quick they are. */
const leastOnsetWidth = 1.7
/** Brace, clef, key and time signature. */
const headWidth = 9
/** A line is filled so far by the estimate, so that what needs more still fits. */
const fullness = 0.96

/**
 * Which bars stand in which line of a page that is so many staff spaces wide: as many as fit, at
 * least one. Depends on the onsets alone, so that it stays when a hand is corrected.
 */
export const planSystems = (score: Score, spacesWide: number): readonly SystemBars[] => {
  const room = spacesWide * fullness - headWidth
  const systems: SystemBars[] = []
  let filled = 0
  for (const [bar, width] of barWidths(score).entries()) {
    const line = systems.at(-1)
    if (line && filled + width <= room) {
      systems[systems.length - 1] = { ...line, toBar: bar }
      filled += width
    } else {
      systems.push({ fromBar: bar, toBar: bar })
      filled = width
    }
  }
  return systems
}

/** What each bar needs, in staff spaces. */
export const barWidths = ({ bars, notes, ticksPerQuarter }: Score): readonly number[] => {
  const starts = bars.map((): number[] => [])
  for (const { barIndex, start } of notes) {
    const bar = starts[barIndex]
    if (bar && bar.at(-1) !== start) bar.push(start)
  }
  return bars.map((bar, i) => {
    const onsets = starts[i] ?? []
    const quarters = onsets.map(
      (at, n) => ((onsets[n + 1] ?? bar.start + bar.length) - at) / ticksPerQuarter,
    )
    const wanted = quarters.length > 0 ? quarters : [bar.length / ticksPerQuarter]
    return (
      barLineWidth +
      wanted.reduce((sum, q) => sum + Math.max(leastOnsetWidth, onsetWidth * q ** spacingPower), 0)
    )
  })
}
