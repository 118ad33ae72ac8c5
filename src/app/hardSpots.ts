/**
 * The hard spots of a piece, and the person's word on them (spotWords.ts): kept with the piece, and carried
 * to a better edition where its notes agree.
 *
 * find: what the analysis finds at the goal tempo, and how difficult the piece is as a whole. words:
 * which spots the person accepted (these stand as passages, and are what a plan for the piece may
 * take), rejected or added, and in what order they are to be worked at. What stands in the list of a piece, the record of the playing included, is made of
 * both by `listSpots` (spotList.ts) and `correctByPlaying` (fromPlaying.ts).
 *
 * Example: { said: [{ from: '16', to: '24', hand: 'right', word: 'accepted' }], order: [] } is a passage
 * of the right hand from the 17th quarter to the end of the 24th.
 */
import type { Difficulty } from '@/difficulty/difficulty'
import type { HandReach } from '@/fingering/spans'
import type { Score } from '@/music/music'
import type { Result } from '@/music/result'
import type { PieceId, Tempo } from '@/music/units'
import type { CarriedSpots } from './carrySpots'
import type { Ports } from './ports'
import { decodeWords, type SpotWords } from './spotWords'

export type ToldSpots = Omit<CarriedSpots, 'words'> & {
  /** Why they hold only until the page is closed. */
  readonly problem?: string
}

export interface HardSpots {
  /** Looked for anew only where score or tempo are others. */
  readonly find: (score: Score, goal: Tempo) => Promise<Difficulty>
  readonly words: (id: PieceId) => Promise<Result<SpotWords, string>>
  readonly save: (id: PieceId, words: SpotWords) => Promise<Result<void, string>>
  /** To the edition that takes the place of a piece; what became of them is told when it is opened next. */
  readonly carry: (old: Score, better: Score) => Promise<void>
  /** Of a better edition that has just taken the place of a piece: what became of the words on that one, told once. */
  readonly takeCarried: (id: PieceId) => ToldSpots | undefined
}

export const createHardSpots = (
  {
    storage,
    assess,
  }: Pick<Ports, 'assess'> & {
    readonly storage: Pick<Ports['storage'], 'spots' | 'saveSpots'>
  },
  /** How far the person's hand reaches now. */
  reach: () => HandReach = () => 'medium',
): HardSpots => {
  let last:
    | {
        readonly score: Score
        readonly goal: Tempo
        readonly span: HandReach
        readonly found: Difficulty
      }
    | undefined
  const toTell = new Map<PieceId, ToldSpots>()
  const read = async (id: PieceId): Promise<Result<SpotWords, string>> => {
    const stored = await storage.spots(id)
    return stored.ok ? { ok: true, value: decodeWords(stored.value) } : stored
  }
  return {
    find: async (score, goal) => {
      const span = reach()
      if (last?.score === score && last.goal === goal && last.span === span) return last.found
      const found = await assess(score, goal, span)
      last = { score, goal, span, found }
      return found
    },
    words: read,
    save: (id, words) => storage.saveSpots(id, words),
    carry: async (old, better) => {
      // Of the same music they are kept under the same name already.
      if (old.id === better.id) return
      const [former, own] = await Promise.all([read(old.id), read(better.id)])
      if (!former.ok || (former.value.said.length === 0 && former.value.order.length === 0)) return
      if (!own.ok) return
      const { carrySpots } = await import('./carrySpots')
      const { words, ...carried } = carrySpots(former.value, own.value, old, better)
      const saved = await storage.saveSpots(better.id, words)
      toTell.set(better.id, { ...carried, ...(saved.ok ? {} : { problem: saved.reason }) })
    },
    takeCarried: (id) => {
      const carried = toTell.get(id)
      toTell.delete(id)
      return carried
    },
  }
}
