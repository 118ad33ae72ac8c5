import type { Tick } from '@/music/units'
import type { Grip } from './grips'
import { isThumbPassing, sumOf, type Costs } from './rules'
import type { Path } from './search'
import type { Spans } from './spans'
import { addCosts, isLine, weighGrip, linePosition, weighStep, type Weight } from './weights'

/** What one onset costs: its grip and the way to it. */
export interface OnsetCost {
  readonly start: Tick
  readonly cost: number
  /** Whether the thumb goes under, or a finger over it, to get here. */
  readonly isThumbPassing: boolean
}

/** What a fingering costs, in all, by rule and by onset. */
export interface Weighed {
  readonly cost: number
  readonly costs: Costs
  /** How often it asks for what cannot be done. */
  readonly impractical: number
  readonly onsets: readonly OnsetCost[]
}

export const weighPath = (grips: readonly Grip[], path: Path, spans: Spans): Weighed => {
  const parts = grips.map((_, i) => weightsAt(grips, path, i, spans))
  const costs = addCosts(parts.flat().map((weight) => weight.costs))
  return {
    cost: sumOf(costs),
    costs,
    impractical: parts.flat().reduce((sum, weight) => sum + weight.impractical, 0),
    onsets: grips.map(({ start }, i) => ({
      start,
      cost: (parts[i] ?? []).reduce((sum, weight) => sum + weight.cost, 0),
      isThumbPassing: passesThumb(grips, path, i, spans),
    })),
  }
}

const weightsAt = (
  grips: readonly Grip[],
  path: Path,
  i: number,
  spans: Spans,
): readonly Weight[] => {
  const [one, two, three] = [grips[i - 2], grips[i - 1], grips[i]]
  const [first, second, third = []] = [path.holds[i - 2], path.holds[i - 1], path.holds[i]]
  if (!three) return []
  const own = weighGrip(three, third, spans)
  if (!two || !second) return [own]
  const step = weighStep(two, second, three, third, spans)
  if (!one || !first || !isLine(one, two, three)) return [own, step]
  return [own, step, linePosition(first, second, third, spans)]
}

const passesThumb = (grips: readonly Grip[], path: Path, i: number, spans: Spans): boolean => {
  const [from, to] = [path.holds[i - 1], path.holds[i]]
  const [one, other] = [from?.[0], to?.[0]]
  if (from?.length !== 1 || to?.length !== 1 || grips[i]?.isAfterRest !== false) return false
  return one !== undefined && other !== undefined && isThumbPassing(one, other, spans)
}
