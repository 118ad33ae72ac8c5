import { gatherForeign, openForeign } from './foreignKey'
import { gatherAuxiliary, gatherBounce, gatherEcho } from './furtherKey'
import type { Ground } from './ground'
import type { Harvest } from './harvest'
import type { Reading, Strike } from './reading'
import { gatherNotes } from './writtenKey'

/** Every way of taking one strike as a part of the repetition that goes on. */
export const gatherMoves = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  harvest: Harvest,
  isBest: boolean,
): void => {
  gatherNotes(ground, from, strike, harvest, isBest)
  if (ground.allowed.has(strike.key)) gatherAuxiliary(ground, from, strike, harvest)
  gatherBounce(from, strike, harvest)
  gatherEcho(ground, from, strike, harvest)
  gatherForeign(ground, from, strike, harvest)
  if (from.top < ground.last) openForeign(ground, from, strike, harvest)
}
