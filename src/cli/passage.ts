import type { Chunk } from '@/music/chunk'
import { cutBars } from '@/music/cutBars'
import type { Score } from '@/music/music'
import { failed, ok, type Result } from '@/music/result'
import { choiceOf, numberOf, type Options } from './options'

/** The bars and the hand that the options choose, both bars included; by default all of both hands. */
export const choosePassage = (score: Score, options: Options): Result<Chunk, string> => {
  const hand = choiceOf(options, 'hand', ['both', 'left', 'right'])
  if (!hand.ok) return hand
  const first = score.bars[0]?.number ?? 1
  const last = score.bars.at(-1)?.number ?? 1
  const bounds = { from: first, to: last, whole: true }
  const from = numberOf(options, 'from', bounds)
  if (!from.ok) return failed(`The piece has bars ${first} to ${last}: ${from.reason}`)
  const to = numberOf(options, 'to', bounds)
  if (!to.ok) return failed(`The piece has bars ${first} to ${last}: ${to.reason}`)
  const [fromBar, toBar] = [from.value ?? first, to.value ?? last]
  if (fromBar > toBar) return failed(`--from ${fromBar} comes after --to ${toBar}.`)
  const chunk = cutBars(score, fromBar, toBar, hand.value)
  if (chunk) return ok(chunk)
  const which = hand.value === 'both' ? 'no notes' : `no notes for the ${hand.value} hand`
  return failed(`Bars ${fromBar} to ${toBar} have ${which}.`)
}
