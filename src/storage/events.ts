import { idsOfBlock, unpackBlock, type PackedBlock } from '@/journal/block'
import { decodeEvent } from '@/journal/decode'
import type { EventId } from '@/journal/ids'
import type { JournalEvent } from '@/journal/journal'
import { compareEvents, sameEvent } from '@/journal/merge'
import { isWrittenKind } from '@/journal/written'
import { strict, type Database } from './connection'
import { isIn } from './query'
import type { EventQuery, StoredEvents } from './storage'

/** What became of events that were to be added. */
export interface Added {
  readonly added: number
  /** Were there already. */
  readonly known: number
  /** Ids under which another event stands already. */
  readonly taken: readonly string[]
}

/** Adds events in one transaction; the first one under an id stays. */
export const addEvents = async (
  database: Database,
  events: readonly JournalEvent[],
): Promise<Added> => {
  const change = database.transaction(['events', 'blocks'], 'readwrite', strict)
  const tail = change.objectStore('events')
  const adding = async (): Promise<Added> => {
    const packed = await packedTwins(change.objectStore('blocks'), events)
    const outcomes = await Promise.all(
      events.map(async (event) => {
        const known = packed.get(event.id) ?? (await tail.get(event.id))
        if (known === undefined) await tail.add(event)
        return { event, known }
      }),
    )
    const taken = outcomes.flatMap(({ event, known }) =>
      known === undefined || isThis(known, event) ? [] : [event.id],
    )
    const added = outcomes.filter(({ known }) => known === undefined).length
    return { added, known: events.length - added - taken.length, taken }
  }
  const [added] = await Promise.all([adding(), change.done])
  return added
}

/** The ids of those events that stand here, whatever their content. */
export const whichAreThere = async (
  database: Database,
  events: readonly JournalEvent[],
): Promise<readonly EventId[]> => {
  const reading = database.transaction(['events', 'blocks'])
  const packed = await packedTwins(reading.objectStore('blocks'), events)
  const tail = reading.objectStore('events')
  const keys = await Promise.all(events.map(({ id }) => tail.getKey(id)))
  return events.map(({ id }) => id).filter((id, i) => packed.has(id) || keys[i] !== undefined)
}

/** The record may be of an older version. */
const isThis = (record: unknown, event: JournalEvent): boolean => {
  const known = decodeEvent(record)
  return known.ok && sameEvent(known.value, event)
}

/** The blocks, in whatever transaction they are read. */
interface Blocks {
  readonly index: (name: 'byFrom' | 'byTo') => {
    readonly getAllKeys: (range: IDBKeyRange) => Promise<number[]>
  }
  readonly get: (key: number) => Promise<PackedBlock | undefined>
}

/** What stands in blocks under the ids of these events; an event is looked for at its own time. */
const packedTwins = async (
  blocks: Blocks,
  events: readonly JournalEvent[],
): Promise<ReadonlyMap<string, JournalEvent>> => {
  const times = events.map(({ atEpochMs }) => atEpochMs)
  const from = times.reduce((a, b) => Math.min(a, b), Infinity)
  const to = times.reduce((a, b) => Math.max(a, b), -Infinity)
  const ids = new Set<string>(events.map(({ id }) => id))
  const twins = new Map<string, JournalEvent>()
  for (const key of await overlapping(blocks, from, to)) {
    const block = await blocks.get(key)
    if (!idsOfBlock(block).some((id) => ids.has(id))) continue
    const unpacked = unpackBlock(block)
    for (const event of unpacked.ok ? unpacked.value : [])
      if (ids.has(event.id)) twins.set(event.id, event)
  }
  return twins
}

/** The keys of the blocks that reach into a stretch of time, the earliest first. */
export const overlapping = async (
  blocks: Pick<Blocks, 'index'>,
  from: number,
  to: number,
): Promise<readonly number[]> => {
  // Hardly ever anything: what is played now comes after all that is packed.
  const ended = await blocks.index('byTo').getAllKeys(IDBKeyRange.lowerBound(from))
  if (ended.length === 0) return []
  const begun = await blocks.index('byFrom').getAllKeys(IDBKeyRange.upperBound(to))
  const still = new Set(ended)
  return begun.filter((key) => still.has(key))
}

/** Reads the events that a query names, from the tail and from the blocks. */
export const readEvents = async (database: Database, query: EventQuery): Promise<StoredEvents> => {
  const reading = database.transaction(['events', 'blocks'])
  const tail = reading.objectStore('events')
  const blocks = reading.objectStore('blocks')
  switch (query.kind) {
    case 'all':
      return decoded(await tail.getAll(), await blocks.getAll(), query)
    case 'session': {
      const own = await tail.index('bySession').getAll(query.session)
      return decoded(own, await blocks.index('bySession').getAll(query.session), query)
    }
    case 'piece': {
      const own = await tail.index('byPiece').getAll(query.piece)
      return decoded(own, await blocks.index('byPiece').getAll(query.piece), query)
    }
    case 'chunk': {
      const own = await tail.index('byChunk').getAll(query.chunk)
      return decoded(own, await blocks.index('byChunk').getAll(query.chunk), query)
    }
    case 'time': {
      const own = await tail
        .index('byTime')
        .getAll(IDBKeyRange.bound(query.from, query.to, false, true))
      const keys = await overlapping(blocks, query.from, query.to)
      const packed = await Promise.all(keys.map((key) => blocks.get(key)))
      return decoded(
        own,
        packed.filter((block) => block !== undefined),
        query,
      )
    }
    case 'written':
      return decoded((await tail.getAll()).filter(isWrittenRecord), [], query)
    case 'latest':
      return readLatest(database, query)
  }
}

/** Told before decoding, since hardly any of the tail is. */
const isWrittenRecord = (record: unknown): boolean =>
  typeof record === 'object' && record !== null && 'kind' in record && isWrittenKind(record.kind)

/** Backwards from the newest, so that the length of the journal does not matter. */
const readLatest = async (
  database: Database,
  query: Extract<EventQuery, { kind: 'latest' }>,
): Promise<StoredEvents> => {
  const reading = database.transaction(['events', 'blocks'])
  const records: unknown[] = []
  let found = 0
  let oldest = Infinity
  let row = await reading.objectStore('events').index('byTime').openCursor(null, 'prev')
  while (row && found < query.count) {
    records.push(row.value)
    // One that cannot be read must not stand in the place of one that can.
    if (decodeEvent(row.value).ok) found++
    oldest = row.key
    row = await row.continue()
  }
  const blocks: PackedBlock[] = []
  let packed = await reading.objectStore('blocks').index('byTo').openCursor(null, 'prev')
  while (packed && (found + packedIn(blocks) < query.count || packed.key >= oldest)) {
    blocks.push(packed.value)
    packed = await packed.continue()
  }
  return decoded(records, blocks, query)
}

const packedIn = (blocks: readonly PackedBlock[]): number =>
  blocks.reduce((sum, block) => sum + idsOfBlock(block).length, 0)

/**
 * All events, a block at a time, the oldest blocks first and at last what is not packed: so that a
 * journal of years passes through without standing in memory at once.
 */
export const readInParts = async (
  database: Database,
  see: (part: StoredEvents) => void,
): Promise<void> => {
  const reading = database.transaction(['events', 'blocks'])
  // Both at one moment: what is packed meanwhile must not be missed, or met twice.
  const [tail, keys] = await Promise.all([
    reading.objectStore('events').getAll(),
    reading.objectStore('blocks').index('byFrom').getAllKeys(),
  ])
  for (const key of keys) {
    const block = await database.get('blocks', key)
    if (block) see(decoded([], [block], { kind: 'all' }))
  }
  see(decoded(tail, [], { kind: 'all' }))
}

/** The time of the earliest event. */
export const readFirstAt = async (database: Database): Promise<number | undefined> => {
  const reading = database.transaction(['events', 'blocks'])
  const [loose, packed] = await Promise.all([
    reading.objectStore('events').index('byTime').openKeyCursor(),
    reading.objectStore('blocks').index('byFrom').openKeyCursor(),
  ])
  const times = [loose?.key, packed?.key].filter((time) => time !== undefined)
  return times.length === 0 ? undefined : Math.min(...times)
}

const decoded = (
  records: readonly unknown[],
  blocks: readonly PackedBlock[],
  query: EventQuery,
): StoredEvents => {
  const events: JournalEvent[] = []
  const unread: StoredEvents['unread'][number][] = []
  for (const record of records) {
    const event = decodeEvent(record)
    if (event.ok) events.push(event.value)
    else unread.push({ id: idOf(record), reason: event.reason, record })
  }
  for (const block of blocks) {
    const unpacked = unpackBlock(block)
    if (!unpacked.ok)
      unread.push({ id: `packed from ${block.from}`, reason: unpacked.reason, record: block })
    else for (const event of unpacked.value) if (isIn(query)(event)) events.push(event)
  }
  return { events: events.toSorted(compareEvents), unread }
}

const idOf = (record: unknown): string =>
  typeof record === 'object' && record !== null && 'id' in record ? String(record.id) : ''
