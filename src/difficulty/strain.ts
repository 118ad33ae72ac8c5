import { widestOf, type HandReach } from '@/fingering/spans'
import type { Chunk, ExpectedNote } from '@/music/chunk'
import { hands } from '@/music/music'
import type { Tempo, Tick } from '@/music/units'

/** What tires or strains a hand when it is repeated. */
export const strains = ['octaves', 'stretches', 'trills', 'fastRepetitions'] as const
export type Strain = (typeof strains)[number]

/** Within a semitone of the widest that the hand reaches it stretches. */
const nearReach = 1
const octave = 12
/** A key again after no more than this, the pace at which one finger tires (common practice, no source). */
const fastSeconds = 0.2

/** To and fro at least as fast: four strokes are a trill that is written out. */
const trillSeconds = 1 / 6

/** What strains a hand in a chunk at its goal tempo: C4+C5 -> octaves. */
export const strainsOf = (chunk: Chunk, goal: Tempo, reach: HandReach): readonly Strain[] => {
  const found = new Set<Strain>()
  const seconds = 60 / goal / chunk.ticksPerQuarter
  for (const hand of hands) {
    const strokes = chunk.onsets.flatMap(({ start, notes }) => {
      const own = notes.filter((note) => note.hand === hand)
      return own.length > 0 ? [{ start, notes: own }] : []
    })
    for (const [i, { start, notes }] of strokes.entries()) {
      const before = strokes[i - 1]
      const wide = widthOf(notes)
      if (wide === octave) found.add('octaves')
      if (wide >= widestOf(reach) - nearReach) found.add('stretches')
      if (notes.some(({ ornament }) => ornament === 'trill')) found.add('trills')
      if (!before || (start - before.start) * seconds > fastSeconds) continue
      if (notes.some(({ key }) => before.notes.some((other) => other.key === key)))
        found.add('fastRepetitions')
    }
    if (hasWrittenTrill(strokes, seconds)) found.add('trills')
  }
  return strains.filter((strain) => found.has(strain))
}

interface Stroke {
  readonly start: Tick
  readonly notes: readonly ExpectedNote[]
}

const widthOf = (notes: readonly ExpectedNote[]): number => {
  const keys = notes.map(({ key }) => key)
  return Math.max(...keys) - Math.min(...keys)
}

/** A B A B. */
const hasWrittenTrill = (strokes: readonly Stroke[], seconds: number): boolean => {
  const names = strokes.map(({ notes }) => notes.map(({ key }) => key).join())
  const isFast = (i: number): boolean =>
    ((strokes[i]?.start ?? 0) - (strokes[i - 1]?.start ?? 0)) * seconds <= trillSeconds
  return names.some(
    (name, i) =>
      i >= 3 &&
      name === names[i - 2] &&
      names[i - 1] === names[i - 3] &&
      name !== names[i - 1] &&
      [i - 2, i - 1, i].every(isFast),
  )
}
