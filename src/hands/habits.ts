import { isSameLength, places, type Column, type Onsets, type Places } from './onsets'
import { habitWeights } from './weights'
import { mostStruck, type Ways } from './ways'

/**
 * What a piece does again and again, it does with the same hands. From the way that each onset took
 * at first: the weights of all ways, with what became of the other onsets of the same kind.
 */
export const weighHabits = (onsets: Onsets, ways: Ways, taken: Places): Column => {
  const weight = ways.weight.slice()
  for (const figure of groupFigures(onsets, ways)) weighFigure(weight, figure, onsets, ways, taken)
  weighOctaves(weight, onsets, ways, taken)
  return weight
}

/** Lengths within a 24th of a quarter are of one kind, and so are all beyond some forty quarters. */
const lengthKinds = 24
const mostKinds = 1000

/**
 * Onsets by kind: as many notes, of such lengths. As a rule a kind is a figure of the accompaniment,
 * or a step of one.
 */
const groupFigures = (onsets: Onsets, ways: Ways): Iterable<readonly number[]> => {
  const groups = new Map<number, number[]>()
  for (let onset = 0; onset < onsets.count; onset++) {
    if ((ways.first[onset] ?? 0) === (ways.first[onset + 1] ?? 0)) continue
    const figure = figureOf(onsets, onsets.first[onset] ?? 0, onsets.first[onset + 1] ?? 0)
    const group = groups.get(figure)
    if (group) group.push(onset)
    else groups.set(figure, [onset])
  }
  return groups.values()
}

/** A number for the kind: how many notes, which neighbours differ in length, the outer lengths. */
const figureOf = ({ lengths }: Onsets, from: number, to: number): number => {
  let figure = 1
  for (let i = from + 1; i < to; i++)
    figure = figure * 2 + (isSameLength(lengths[i - 1] ?? 0, lengths[i] ?? 0) ? 1 : 0)
  const kindOf = (note: number): number =>
    Math.min(mostKinds - 1, Math.round(lengthKinds * (lengths[note] ?? 0)))
  return (figure * mostKinds + kindOf(from)) * mostKinds + kindOf(to - 1)
}

/** Adds how much more often than by chance the others of the kind went each way. */
const weighFigure = (
  weight: Column,
  figure: readonly number[],
  onsets: Onsets,
  ways: Ways,
  taken: Places,
): void => {
  const votes = places(mostStruck + 1)
  for (const onset of figure) {
    const lower = ways.lower[taken[onset] ?? 0] ?? 0
    votes[lower] = (votes[lower] ?? 0) + 1
  }
  for (const onset of figure) {
    const choices = (onsets.first[onset + 1] ?? 0) - (onsets.first[onset] ?? 0) + 1
    for (let way = ways.first[onset] ?? 0; way < (ways.first[onset + 1] ?? 0); way++) {
      const own = way === taken[onset] ? 1 : 0
      const others = (votes[ways.lower[way] ?? 0] ?? 0) - own
      const share = (others + 0.5) / (figure.length - 1 + 0.5 * choices)
      weight[way] = (weight[way] ?? 0) + habitWeights.figure * Math.log(share * choices)
    }
  }
}

/** Adds how much more often than not the piece keeps octaves that are all of an onset in one hand. */
const weighOctaves = (weight: Column, onsets: Onsets, ways: Ways, taken: Places): void => {
  const octaves = octavesOf(onsets)
  const isTorn = (way: number): boolean => ways.lower[way] === 1
  const tornOnes = octaves.filter((onset) => isTorn(taken[onset] ?? 0)).length
  for (const onset of octaves) {
    const own = isTorn(taken[onset] ?? 0) ? 1 : 0
    const torn = tornOnes - own
    const kept = octaves.length - tornOnes - (1 - own)
    const odds = (habitWeights.octave * Math.log((kept + 0.5) / (torn + 0.5))) / 2
    for (let way = ways.first[onset] ?? 0; way < (ways.first[onset + 1] ?? 0); way++)
      weight[way] = (weight[way] ?? 0) + (isTorn(way) ? -odds : odds)
  }
}

const octavesOf = ({ count, first, keys, lengths }: Onsets): readonly number[] => {
  const octaves: number[] = []
  for (let onset = 0; onset < count; onset++) {
    const low = first[onset] ?? 0
    if ((first[onset + 1] ?? 0) - low !== 2) continue
    const isOctave = (keys[low + 1] ?? 0) - (keys[low] ?? 0) === 12
    if (isOctave && isSameLength(lengths[low] ?? 0, lengths[low + 1] ?? 0)) octaves.push(onset)
  }
  return octaves
}
