import { assessDifficulty, type Difficulty } from '@/difficulty/difficulty'
import type { Score } from '@/music/music'
import { ok, type Result } from '@/music/result'
import { tempo, type Tick } from '@/music/units'
import { spotsText, tellReason } from '@/text/spots'
import { loadPiece } from './files'
import { spanOf } from './finger'
import { checkNames, numberOf, wordOf, type Options } from './options'
import { firstDownbeat } from './read'
import type { Answer } from './verb'

const known = ['piece', 'tempo', 'span']
/** Quarter notes a minute that a person or a metronome can mean. */
const tempoBounds = { from: 5, to: 1000 }

/** `spots --piece FILE ...`: how difficult a piece is, and where it is hard and why, the hardest spot first. */
export const spots = (options: Options): Result<Answer, string> => {
  const names = checkNames(options, known)
  const path = names.ok ? wordOf(options, 'piece') : names
  if (!path.ok) return path
  const goal = numberOf(options, 'tempo', tempoBounds)
  if (!goal.ok) return goal
  const span = spanOf(options)
  if (!span.ok) return span
  const piece = loadPiece(path.value)
  if (!piece.ok) return piece
  const { score } = piece.value
  const found = assessDifficulty(score, {
    span: span.value,
    ...(goal.value === undefined ? {} : { tempo: tempo(goal.value) }),
  })
  return ok({ json: foundJson(found, score), text: () => describe(found, score) })
}

/** Beats count as `read` does; `toBeat` and `toBar` are where the last beat of the spot ends and lies. */
const foundJson = ({ spots: all, ...whole }: Difficulty, score: Score): object => ({
  difficulty: round(whole.difficulty),
  uncertainty: round(whole.uncertainty),
  local: round(whole.local),
  length: round(whole.length),
  compass: round(whole.compass),
  signature: round(whole.signature),
  spots: all.map((spot) => ({
    ...barsOf(spot, score),
    fromBeat: (spot.from - firstDownbeat(score)) / score.ticksPerQuarter,
    toBeat: (spot.to - firstDownbeat(score)) / score.ticksPerQuarter,
    hand: spot.hand,
    difficulty: round(spot.difficulty),
    reasons: spot.reasons.map(tellReason),
    practise: spot.reasons.map(({ kind }) => spotsText.ways[kind]),
  })),
})

interface Stretch {
  readonly from: Tick
  readonly to: Tick
}

const barsOf = ({ from, to }: Stretch, { bars }: Score): { fromBar: number; toBar: number } => ({
  fromBar: bars.findLast((bar) => bar.start <= from)?.number ?? 0,
  toBar: bars.findLast((bar) => bar.start < to)?.number ?? 0,
})

/** To a hundredth of a point; more would say more than is known. */
const round = (n: number): number => Math.round(n * 100) / 100

const describe = ({ spots: all, ...whole }: Difficulty, score: Score): string => {
  const rough = [
    `difficulty about ${whole.difficulty.toFixed(1)}, give or take ${whole.uncertainty.toFixed(1)}`,
    `${whole.local.toFixed(0)} points a second in its hard places`,
    `${whole.length.toFixed(2)} times by its length`,
  ].join('; ')
  const lines = all.flatMap((spot) => {
    const { fromBar, toBar } = barsOf(spot, score)
    const bars = fromBar === toBar ? `bar ${fromBar}` : `bars ${fromBar} to ${toBar}`
    const hand = spot.hand === 'both' ? 'both hands' : `${spot.hand} hand`
    return [
      `${bars}, ${hand} (${spot.difficulty.toFixed(0)})`,
      ...spot.reasons.map((reason) => `  ${tellReason(reason)} (${spotsText.ways[reason.kind]})`),
    ]
  })
  return [rough, ...lines, unseen].join('\n')
}

const unseen = 'It hears no voicing and no pedalling, and knows nothing of memory and nerves.'
