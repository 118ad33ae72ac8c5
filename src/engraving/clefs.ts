export const clefs = ['treble', 'bass'] as const
export type Clef = (typeof clefs)[number]

/** The staff steps (C4 is 28) of the lowest and the highest line. */
const lines = { treble: { low: 30, high: 38 }, bass: { low: 18, high: 26 } } as const

/** How many ledger lines a head needs: C4 one below the treble staff. */
export const ledgerLines = (step: number, clef: Clef): number => {
  const { low, high } = lines[clef]
  const outside = Math.max(low - step, step - high, 0)
  return Math.floor(outside / 2)
}

/** What it costs to read a chord of these steps: its outermost ledger lines above and below the staff. */
export const readingCost = (low: number, high: number, clef: Clef): number => {
  // An octave is known by its nearer note: the farther one counts a ledger line less.
  const known = high - low === 7 ? 2 : 0
  const { high: top, low: bottom } = lines[clef]
  return ledgerCost(high - top - known) + ledgerCost(bottom - low - known)
}

/** The first two ledger lines are read at ease; each more weighs heavier, up to the fourth. */
const ledgerCost = (outside: number): number => {
  const count = Math.max(0, Math.floor(outside / 2))
  if (count > 4) return 12 + 4 * (count - 4)
  return count <= 1 ? count / 2 : count * (count - 1)
}
