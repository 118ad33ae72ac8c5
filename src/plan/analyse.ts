import { assessDifficulty, type DifficultySettings, type HardSpot } from '@/difficulty/difficulty'
import type { Score } from '@/music/music'
import type { Tempo } from '@/music/units'
import type { Analysis } from './layOut'

/** How hard a piece and each stretch of it is for a hand at the goal tempo, or at that of the score; by no means quick. */
export const analyse = (
  score: Score,
  goalTempo?: Tempo,
  span: DifficultySettings['span'] = 'medium',
): Analysis & { readonly spots: readonly HardSpot[] } => {
  const settings = { span, ...(goalTempo === undefined ? {} : { tempo: goalTempo }) }
  const { spots, difficulty, uncertainty } = assessDifficulty(score, settings)
  return {
    spots,
    difficulty,
    uncertainty,
    difficultyIn: ({ from, to }) => {
      const notes = score.notes.filter(({ start }) => start >= from && start < to)
      return assessDifficulty({ ...score, notes }, settings).local
    },
  }
}
