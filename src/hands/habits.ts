import { isSameLength, places, type Column, type Onsets, type Places } from './onsets'
import { habitWeights } from './weights'
import { mostStruck, type Ways } from './ways'

/**
 * What a piece does again and again, it does with the same hands. From the way that each onset took
 * at first: the weights of all ways, with what became of the other onsets of the same kind.
 */
export const weighHabits = (onsets: Onsets, ways: Ways, taken: Places): Column => {
  const weight = ways.weight.slice()
  const { figureOf, sizes, votes } = countFigures(onsets, ways, taken)
  for (let onset = 0; onset < onsets.count; onset++) {
    if (!isOpen(ways, onset)) continue
    const figure = figureOf[onset] ?? 0
    weighFigure(weight, onset, sizes[figure] ?? 0, votes, figure * waysAtMost, onsets, ways, taken)
  }
  weighOctaves(weight, onsets, ways, taken)
  return weight
}

/** Whether there are several ways: of one alone the weight is of no account. */
const isOpen = ({ first }: Ways, onset: number): boolean =>
  (first[onset + 1] ?? 0) - (first[onset] ?? 0) > 1

/** Lengths within a 24th of a quarter are of one kind, and so are all beyond some forty quarters. */
const lengthKinds = 24
const mostKinds = 1000
const waysAtMost = mostStruck + 1

interface Figures {
  /** The kind of each onset, numbered from 0. */
  readonly figureOf: Places
  /** How many onsets are of each kind, and how many of them gave the left hand 0, 1, 2 … notes. */
  readonly sizes: Places
  readonly votes: Places
}

/**
 * Onsets by kind: as many notes, of such lengths. As a rule a kind is a figure of the accompaniment,
 * or a step of one. Onsets with one way alone are not counted, so that a piece whose hands keep apart
 * is soon done; counted, they would put right 0.04 % of the notes.
 */
const countFigures = (onsets: Onsets, ways: Ways, taken: Places): Figures => {
  const numbers = new Map<number, number>()
  const figureOf = places(onsets.count)
  for (let onset = 0; onset < onsets.count; onset++) {
    if (!isOpen(ways, onset)) continue
    const kind = kindOf(onsets, onsets.first[onset] ?? 0, onsets.first[onset + 1] ?? 0)
    const number = numbers.get(kind) ?? numbers.size
    if (number === numbers.size) numbers.set(kind, number)
    figureOf[onset] = number
  }
  const sizes = places(numbers.size)
  const votes = places(numbers.size * waysAtMost)
  for (let onset = 0; onset < onsets.count; onset++) {
    const way = taken[onset] ?? 0
    if (!isOpen(ways, onset)) continue
    const figure = figureOf[onset] ?? 0
    const vote = figure * waysAtMost + (ways.lower[way] ?? 0)
    sizes[figure] = (sizes[figure] ?? 0) + 1
    votes[vote] = (votes[vote] ?? 0) + 1
  }
  return { figureOf, sizes, votes }
}

/** A number for the kind: how many notes, which neighbours differ in length, the outer lengths. */
const kindOf = ({ lengths }: Onsets, from: number, to: number): number => {
  let kind = 1
  for (let i = from + 1; i < to; i++)
    kind = kind * 2 + (isSameLength(lengths[i - 1] ?? 0, lengths[i] ?? 0) ? 1 : 0)
  return (
    (kind * mostKinds + lengthKind(lengths[from] ?? 0)) * mostKinds +
    lengthKind(lengths[to - 1] ?? 0)
  )
}

const lengthKind = (length: number): number =>
  Math.min(mostKinds - 1, Math.round(lengthKinds * length))

/** Adds how much more often than by chance the others of the kind went each way. */
const weighFigure = (
  weight: Column,
  onset: number,
  size: number,
  votes: Places,
  firstVote: number,
  onsets: Onsets,
  ways: Ways,
  taken: Places,
): void => {
  const choices = (onsets.first[onset + 1] ?? 0) - (onsets.first[onset] ?? 0) + 1
  for (let way = ways.first[onset] ?? 0; way < (ways.first[onset + 1] ?? 0); way++) {
    const own = way === taken[onset] ? 1 : 0
    const others = (votes[firstVote + (ways.lower[way] ?? 0)] ?? 0) - own
    const share = (others + 0.5) / (size - 1 + 0.5 * choices)
    weight[way] = (weight[way] ?? 0) + habitWeights.figure * Math.log(share * choices)
  }
}

/** Adds how much more often than not the piece keeps octaves that are all of an onset in one hand. */
const weighOctaves = (weight: Column, onsets: Onsets, ways: Ways, taken: Places): void => {
  const octaves = octavesOf(onsets)
  let tornOnes = 0
  for (const onset of octaves) if (ways.lower[taken[onset] ?? 0] === 1) tornOnes++
  for (const onset of octaves) {
    const own = ways.lower[taken[onset] ?? 0] === 1 ? 1 : 0
    const torn = tornOnes - own
    const kept = octaves.length - tornOnes - (1 - own)
    const odds = (habitWeights.octave * Math.log((kept + 0.5) / (torn + 0.5))) / 2
    for (let way = ways.first[onset] ?? 0; way < (ways.first[onset + 1] ?? 0); way++)
      weight[way] = (weight[way] ?? 0) + (ways.lower[way] === 1 ? -odds : odds)
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
