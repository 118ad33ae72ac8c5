import { packBlock, summedEvents } from '@/journal/block'
import { monthOf, type Day } from '@/journal/day'
import { groupBy } from '@/journal/groupBy'
import type { JournalEvent } from '@/journal/journal'
import { compareEvents } from '@/journal/merge'
import { sumDay, type Summed } from '@/journal/sumDays'
import type { DaySums } from '@/journal/sums'
import { isWritten } from '@/journal/written'
import { strict, type Change, type Database, type SumsState } from './connection'
import type { DayRule } from './days'
import { monthsOf, readable, replaceDays, sumLoose } from './sums'

/** Events in one block. Fewer make more records to read, more make one change of them dearer. */
export const usualBlockSize = 1_000

/** There is one record of it. */
const stateKey = 'state'

/** Raised when sums get another shape: kept ones are then counted anew. */
const sumsVersion = 4

const ruleOf = ({ name }: DayRule): string => `${sumsVersion} ${name}`

/**
 * Packs the tail's events of days that are over into blocks, and adds them to the kept sums, all in
 * one change. The newest day stays in the tail, where it is still being written. Gives how many events
 * were packed: none while there are only a few, or when another tab was quicker.
 */
export const packOldDays = async (
  database: Database,
  days: DayRule,
  blockSize: number,
): Promise<number> => {
  if ((await database.count('events')) < blockSize) return 0
  const state = await readState(database, days)
  const events = readable(await database.getAll('events'))
    // What the person wrote is read without the practice of years: it stays where it is at hand.
    .filter((event) => !isWritten(event))
    .toSorted(compareEvents)
  const newest = events.at(-1)
  if (!newest) return 0
  const today = days.dayOf(newest.atEpochMs)
  const old = events.filter((event) => days.dayOf(event.atEpochMs) !== today)
  if (old.length < blockSize) return 0
  const kept = new Set<Day>()
  for (const month of new Set(old.map(({ atEpochMs }) => monthOf(days.dayOf(atEpochMs)))))
    for (const { day } of (await database.get('monthSums', month))?.totals ?? []) kept.add(day)
  const sums = await sumLoose(database, old, days.dayOf, kept)
  const blocks = cut(old, blockSize).map(packBlock)
  const changed = await changeSums(database, state, sums, async (change) => {
    const tail = change.objectStore('events')
    await Promise.all([
      ...blocks.map((block) => change.objectStore('blocks').add(block)),
      ...old.map(({ id }) => tail.delete(id)),
    ])
  })
  return changed ? old.length : 0
}

/** Equal parts, none larger than a block. */
const cut = (
  events: readonly JournalEvent[],
  blockSize: number,
): readonly (readonly JournalEvent[])[] => {
  const parts = Math.ceil(events.length / blockSize)
  return Array.from({ length: parts }, (_, i) =>
    events.slice(
      Math.round((i * events.length) / parts),
      Math.round(((i + 1) * events.length) / parts),
    ),
  )
}

/** Where the kept sums stand; counted anew first when they go by another rule. */
export const readState = async (database: Database, days: DayRule): Promise<SumsState> => {
  const state = await database.get('sumsState', stateKey)
  if (state === undefined) return { rule: ruleOf(days), generation: 0 }
  return state.rule === ruleOf(days) ? state : countAnew(database, days)
}

/** Counts the kept sums anew from the blocks, month by month. */
const countAnew = async (database: Database, days: DayRule): Promise<SumsState> => {
  let state = await forgetSums(database)
  let open = new Map<Day, Summed[]>()
  const flush = async (before: Day | undefined): Promise<void> => {
    const over = [...open].filter(([day]) => before === undefined || day < before)
    open = new Map([...open].filter(([day]) => !over.some(([other]) => other === day)))
    const sums = over.map(([day, events]) => sumDay(day, events.toSorted(compareEvents)))
    if (!(await changeSums(database, state, sums))) throw new Error('another tab counts as well')
    state = { ...state, generation: state.generation + 1 }
  }
  const keys = await database.transaction('blocks').store.index('byFrom').getAllKeys()
  for (const key of keys) {
    const block = await database.get('blocks', key)
    const summed = summedEvents(block)
    if (!block || !summed.ok) continue
    const first = days.dayOf(block.from)
    if ([...open.keys()].some((day) => monthOf(day) < monthOf(first))) await flush(first)
    for (const event of summed.value) {
      const day = days.dayOf(event.atEpochMs)
      const of = open.get(day)
      if (of) of.push(event)
      else open.set(day, [event])
    }
  }
  state = { ...state, rule: ruleOf(days) }
  await flush(undefined)
  return state
}

type SumsChange = Change<'events' | 'blocks' | 'monthSums' | 'chunkSums' | 'sumsState'>

const begin = (database: Database): SumsChange =>
  database.transaction(
    ['events', 'blocks', 'monthSums', 'chunkSums', 'sumsState'],
    'readwrite',
    strict,
  )

/** From here on no one trusts the kept sums until the rule stands there again. */
const forgetSums = async (database: Database): Promise<SumsState> => {
  const change = begin(database)
  const state = change.objectStore('sumsState')
  const { generation = 0 } = (await state.get(stateKey)) ?? {}
  const next = { rule: '', generation: generation + 1 }
  await Promise.all([
    change.objectStore('monthSums').clear(),
    change.objectStore('chunkSums').clear(),
    state.put(next, stateKey),
    change.done,
  ])
  return next
}

/** Puts the sums of some days in the place of older ones, with whatever else belongs to the change. */
const changeSums = async (
  database: Database,
  { rule, generation }: SumsState,
  sums: readonly DaySums[],
  also: (change: SumsChange) => Promise<void> = () => Promise.resolve(),
): Promise<boolean> => {
  const change = begin(database)
  const changing = async (): Promise<boolean> => {
    const state = change.objectStore('sumsState')
    if (((await state.get(stateKey))?.generation ?? 0) !== generation) return false
    await also(change)
    await Promise.all([
      state.put({ rule, generation: generation + 1 }, stateKey),
      ...[...monthsOf(sums)].map((month) => putMonth(change, month, sums)),
    ])
    return true
  }
  try {
    const [changed] = await Promise.all([changing(), change.done])
    return changed
  } catch (error) {
    undo(change)
    throw error
  }
}

/** All of it or nothing; a change that has failed by itself is undone already. */
const undo = (change: SumsChange): void => {
  try {
    change.abort()
  } catch (error) {
    if (!(error instanceof DOMException && error.name === 'InvalidStateError')) throw error
  }
}

const putMonth = async (
  change: SumsChange,
  month: string,
  sums: readonly DaySums[],
): Promise<void> => {
  const of = sums.filter(({ total }) => monthOf(total.day) === month)
  const months = change.objectStore('monthSums')
  const known = await months.get(month)
  const totals = of.map(({ total }) => total)
  const pieces = of.flatMap((day) => day.pieces)
  await months.put(
    {
      totals: replaceDays(known?.totals ?? [], totals, of),
      pieces: replaceDays(known?.pieces ?? [], pieces, of),
    },
    month,
  )
  const chunks = change.objectStore('chunkSums')
  const rows = groupBy(
    of.flatMap((day) => day.chunks),
    ({ piece }) => piece,
  )
  for (const [piece, fresh] of rows) {
    const key: [string, string] = [piece, month]
    await chunks.put(replaceDays((await chunks.get(key)) ?? [], fresh, of), key)
  }
}
