import type { Hand } from '@/music/music'

export const clefs = ['treble', 'bass'] as const
export type Clef = (typeof clefs)[number]

/** The staff steps (C4 is 28) of the lowest and the highest line. */
const lines = { treble: { low: 30, high: 38 }, bass: { low: 18, high: 26 } } as const

/** A change of clef costs as much as this many ledger lines; the hand's own clef is worth this much a bar. */
const change = 10
const own = 2

/** How many ledger lines a head needs: C4 one below the treble staff. */
export const ledgerLines = (step: number, clef: Clef): number => {
  const { low, high } = lines[clef]
  const outside = Math.max(low - step, step - high, 0)
  return Math.floor(outside / 2)
}

/** The clef of each bar of a staff, with few ledger lines and few changes. `bars`: the steps written in each. */
export const chooseClefs = (bars: readonly (readonly number[])[], hand: Hand): readonly Clef[] => {
  const home: Clef = hand === 'right' ? 'treble' : 'bass'
  type Way = { readonly cost: number; readonly clefs: readonly Clef[] }
  let ways: Record<Clef, Way> = { treble: { cost: 0, clefs: [] }, bass: { cost: 0, clefs: [] } }
  for (const steps of bars) {
    const extend = (clef: Clef): Way => {
      const stay = ways[clef]
      const other = ways[clef === 'treble' ? 'bass' : 'treble']
      const from = other.cost + change < stay.cost && stay.clefs.length > 0 ? other : stay
      const fee = from === other ? change : 0
      const price = steps.reduce((sum, step) => sum + ledgerCost(step, clef), 0)
      return {
        cost: from.cost + fee + price + (clef === home ? 0 : own),
        clefs: [...from.clefs, clef],
      }
    }
    ways = { treble: extend('treble'), bass: extend('bass') }
  }
  return ways.treble.cost === ways.bass.cost
    ? ways[home].clefs
    : (ways.treble.cost < ways.bass.cost ? ways.treble : ways.bass).clefs
}

/** The first two ledger lines are read at ease; each more weighs heavier. */
const ledgerCost = (step: number, clef: Clef): number => {
  const count = ledgerLines(step, clef)
  return count <= 1 ? count / 2 : count * (count - 1)
}
