import { parseDay } from '@/journal/day'
import type { RecordedPlace } from '@/journal/journal'
import { forms } from '@/music/form'
import { handChoices } from '@/music/music'
import { chunkId, pieceId, tempo, type Tempo } from '@/music/units'
import { itemKinds } from '@/plan/itemKinds'
import type { DayItem } from '@/plan/items'
import type { DayRun, RunItem } from './dayRun'
import { minuteBounds, usualMinutes, type DayWish } from './dayWish'
import { decodeReason } from './decodeReason'
import { fieldsOf, isAmount, isCount } from './stored'

/** A day that is kept: what was wanted last, and the plan that was begun. */
export interface KeptDay {
  readonly wish: DayWish
  readonly run?: DayRun
}

/** As it was stored; a plan of another shape is planned anew. */
export const decodeDay = (stored: unknown): KeptDay => {
  const { wish, run } = fieldsOf(stored)
  const decoded = decodeRun(run)
  return { wish: decodeWish(wish), ...(decoded ? { run: decoded } : {}) }
}

const decodeWish = (stored: unknown): DayWish => {
  const { minutes, pieces } = fieldsOf(stored)
  const wanted = isAmount(minutes) ? Math.round(minutes) : usualMinutes
  return {
    minutes: Math.min(minuteBounds.most, Math.max(minuteBounds.least, wanted)),
    ...(Array.isArray(pieces)
      ? { pieces: pieces.flatMap((id) => (typeof id === 'string' ? [pieceId(id)] : [])) }
      : {}),
  }
}

const decodeRun = (stored: unknown): DayRun | undefined => {
  const { day, items, at } = fieldsOf(stored)
  const known = typeof day === 'string' ? parseDay(day) : undefined
  if (known === undefined || !Array.isArray(items) || !isCount(at)) return undefined
  const decoded = items.flatMap((each) => decodeItem(each) ?? [])
  return decoded.length === items.length && at <= items.length
    ? { day: known, items: decoded, at }
    : undefined
}

const outcomes = ['ahead', 'done', 'begun', 'left'] as const

const decodeItem = (stored: unknown): RunItem | undefined => {
  const fields = fieldsOf(stored)
  const { spentMs, goalTempo } = fields
  const outcome = outcomes.find((each) => each === fields['outcome'])
  const item = decodeDayItem(fields['item'])
  if (!item || !outcome || !isAmount(spentMs)) return undefined
  return { item, spentMs, outcome, ...(isTempo(goalTempo) ? { goalTempo } : {}) }
}

const decodeDayItem = (stored: unknown): DayItem | undefined => {
  const fields = fieldsOf(stored)
  const { minutes, piece, title, chunk, startTempo, goalTempo } = fields
  const reason = decodeReason(fields['reason'])
  if (!isAmount(minutes) || !reason) return undefined
  if (fields['kind'] === 'rest') return { kind: 'rest', minutes, reason }
  const kind = itemKinds.find((each) => each === fields['kind'])
  const form = forms.find((each) => each === fields['form'])
  const [place, passage] = [decodePlace(fields['place']), decodePlace(fields['passage'])]
  if (!kind || !form || !place || !isTempo(startTempo) || !isTempo(goalTempo)) return undefined
  if (typeof piece !== 'string' || typeof title !== 'string' || typeof chunk !== 'string')
    return undefined
  return {
    kind,
    piece: pieceId(piece),
    title,
    chunk: chunkId(chunk),
    place,
    form,
    ...(passage ? { passage } : {}),
    startTempo: tempo(startTempo),
    goalTempo: tempo(goalTempo),
    minutes,
    reason,
  }
}

const decodePlace = (stored: unknown): RecordedPlace | undefined => {
  const { from, to, hand, fromBar, toBar } = fieldsOf(stored)
  const known = handChoices.find((each) => each === hand)
  if (typeof from !== 'string' || typeof to !== 'string' || !known) return undefined
  return isCount(fromBar) && isCount(toBar) ? { from, to, hand: known, fromBar, toBar } : undefined
}

const isTempo = (value: unknown): value is Tempo => isAmount(value) && value > 0
