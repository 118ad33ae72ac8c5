import * as v from 'valibot'
import { failed, ok, type Result } from '@/music/result'
import { chunkId, pieceId, tempo } from '@/music/units'
import { storageText } from '@/text/storage'
import { decodeEvent, type JournalProblem } from './decode'
import { drillId, eventId, sessionId } from './ids'
import { journalVersion, type JournalEvent, type RepetitionRecorded } from './journal'
import { compareEvents } from './merge'
import { isPlayed, type Summed } from './sumDays'
import { recordedVerdicts } from './words'

/**
 * Many events as one record: a database reads a thousand of them as quickly as one row. What sums need
 * of the repetitions stands in columns of numbers, the rest as JSON, unpacked only when it is asked for.
 *
 * Example: 900 repetitions and 100 other events -> `at`, `took` ... of 900 numbers, `others` a JSON
 * array of 100.
 */
export interface PackedBlock {
  /** The version of its events. */
  readonly v: number
  /** The times of the first and the last event. */
  readonly from: number
  readonly to: number
  /** Who and what occurs, each once: to find the block by, and what the columns count in. */
  readonly sessions: readonly string[]
  readonly pieces: readonly string[]
  readonly chunks: readonly string[]
  readonly drills: readonly string[]
  readonly at: Float64Array
  readonly took: Float64Array
  readonly rung: Float64Array
  /** Index in `recordedVerdicts`, in `sessions`, and so on. */
  readonly verdict: Uint8Array
  readonly session: Uint16Array
  readonly drill: Uint16Array
  readonly piece: Uint16Array
  readonly chunk: Uint16Array
  /** JSON: the ids of all events, those of repetitions first. */
  readonly ids: string
  /** JSON: for each repetition its flaws. */
  readonly flaws: string
  /** JSON: for each repetition what else there is of it. */
  readonly rest: string
  /** JSON: the events that are no repetitions. */
  readonly others: string
}

/** The events as one record, in whatever order they come. */
export const packBlock = (events: readonly JournalEvent[]): PackedBlock => {
  const sorted = events.toSorted(compareEvents)
  const repetitions = sorted.filter((event) => event.kind === 'repetition')
  const others = sorted.filter((event) => event.kind !== 'repetition')
  const names = (nameOf: (event: JournalEvent) => readonly string[]): readonly string[] => [
    ...new Set(sorted.flatMap(nameOf)),
  ]
  const sessions = names((event) => [event.session])
  const pieces = names((event) => ('piece' in event ? [event.piece] : []))
  const chunks = names((event) => ('chunk' in event ? [event.chunk] : []))
  const drills = names((event) => ('drill' in event ? [event.drill] : []))
  const numbers = (numberOf: (repetition: RepetitionRecorded) => number): Float64Array =>
    Float64Array.from(repetitions, numberOf)
  const places = (
    all: readonly string[],
    nameOf: (repetition: RepetitionRecorded) => string,
  ): Uint16Array => {
    const placeOf = new Map(all.map((name, i) => [name, i]))
    return Uint16Array.from(repetitions, (repetition) => placeOf.get(nameOf(repetition)) ?? 0)
  }
  return {
    v: journalVersion,
    from: sorted[0]?.atEpochMs ?? 0,
    to: sorted.at(-1)?.atEpochMs ?? 0,
    sessions,
    pieces,
    chunks,
    drills,
    at: numbers((r) => r.atEpochMs),
    took: numbers((r) => r.tookMs),
    rung: numbers((r) => r.rung),
    verdict: Uint8Array.from(repetitions, (r) => recordedVerdicts.indexOf(r.verdict)),
    session: places(sessions, (r) => r.session),
    drill: places(drills, (r) => r.drill),
    piece: places(pieces, (r) => r.piece),
    chunk: places(chunks, (r) => r.chunk),
    ids: JSON.stringify([...repetitions, ...others].map(({ id }) => id)),
    flaws: JSON.stringify(repetitions.map(({ flaws }) => flaws)),
    rest: JSON.stringify(repetitions.map(restOf)),
    others: JSON.stringify(others),
  }
}

const restOf = ({
  standard,
  forgiveBrushed,
  clickMs,
  figures,
  take,
}: RepetitionRecorded): Readonly<Record<string, unknown>> => ({
  standard,
  forgiveBrushed,
  ...(clickMs === undefined ? {} : { clickMs }),
  figures,
  take,
})

/** All events of a block, each decoded like any that comes from outside. */
export const unpackBlock = (record: unknown): Result<readonly JournalEvent[], JournalProblem> => {
  const block = readColumns(record)
  if (!block.ok) return block
  const rest = parseList(block.value.rest)
  if (rest?.length !== block.value.at.length) return broken('rest')
  const raw = [
    ...block.value.repetitions.map((repetition, i) => ({
      ...repetition,
      ...(typeof rest[i] === 'object' ? rest[i] : {}),
    })),
    ...block.value.events,
  ]
  const events: JournalEvent[] = []
  for (const each of raw) {
    const event = decodeEvent(each)
    if (!event.ok) return event
    events.push(event.value)
  }
  return ok(events.toSorted(compareEvents))
}

/** Since this version nothing that sums need has got another shape. */
const summedAsTheyAre = 2

/** What sums need of a block, sorted. Takes and figures are left packed. */
export const summedEvents = (record: unknown): Result<readonly Summed[], JournalProblem> => {
  const block = readColumns(record)
  if (!block.ok) return block
  if (block.value.v < summedAsTheyAre || block.value.v > journalVersion) {
    const unpacked = unpackBlock(record)
    return unpacked.ok ? ok(unpacked.value.filter(isPlayed)) : unpacked
  }
  const { repetitions, events } = block.value
  // Packed by `packBlock` of decoded events of a like version, so not decoded once more.
  const summed = [...repetitions, ...events] as unknown as readonly Summed[]
  return ok(summed.toSorted(compareEvents))
}

/** The ids of a block's events; none when it cannot be read. */
export const idsOfBlock = (record: unknown): readonly string[] => {
  const block = readColumns(record)
  return block.ok ? block.value.names : []
}

const count = v.pipe(v.number(), v.integer(), v.minValue(0))
const names = v.array(v.string())
const blockSchema = v.object({
  v: count,
  from: v.number(),
  to: v.number(),
  sessions: names,
  pieces: names,
  chunks: names,
  drills: names,
  at: v.instance(Float64Array),
  took: v.instance(Float64Array),
  rung: v.instance(Float64Array),
  verdict: v.instance(Uint8Array),
  session: v.instance(Uint16Array),
  drill: v.instance(Uint16Array),
  piece: v.instance(Uint16Array),
  chunk: v.instance(Uint16Array),
  ids: v.string(),
  flaws: v.string(),
  rest: v.string(),
  others: v.string(),
})

interface Columns extends v.InferOutput<typeof blockSchema> {
  readonly names: readonly string[]
  /** Without takes, figures and settings. */
  readonly repetitions: readonly object[]
  readonly events: readonly unknown[]
}

const readColumns = (record: unknown): Result<Columns, JournalProblem> => {
  const parsed = v.safeParse(blockSchema, record, { abortEarly: true })
  if (!parsed.success) return broken(v.getDotPath(parsed.issues[0]) ?? '')
  const block = parsed.output
  const ids = parseList(block.ids)
  const flaws = parseList(block.flaws)
  const others = parseList(block.others)
  const { length } = block.at
  if (!others || ids?.length !== length + others.length) return broken('ids')
  if (flaws?.length !== length) return broken('flaws')
  for (const name of ['took', 'rung', 'verdict', 'session', 'drill', 'piece', 'chunk'] as const)
    if (block[name].length !== length) return broken(name)
  const repetitions = Array.from(block.at, (atEpochMs, i) => ({
    v: block.v,
    id: eventId(String(ids[i])),
    session: sessionId(block.sessions[block.session[i] ?? 0] ?? ''),
    atEpochMs,
    kind: 'repetition',
    drill: drillId(block.drills[block.drill[i] ?? 0] ?? ''),
    piece: pieceId(block.pieces[block.piece[i] ?? 0] ?? ''),
    chunk: chunkId(block.chunks[block.chunk[i] ?? 0] ?? ''),
    rung: tempo(block.rung[i] ?? 0),
    verdict: recordedVerdicts[block.verdict[i] ?? 0],
    tookMs: block.took[i] ?? 0,
    flaws: flaws[i],
  }))
  return ok({ ...block, names: ids.map(String), repetitions, events: others })
}

const broken = (path: string): { readonly ok: false; readonly reason: JournalProblem } =>
  failed({ kind: 'wrongShape', path, message: storageText.shapes.damagedBlock })

const parseList = (text: string): readonly unknown[] | undefined => {
  try {
    const list: unknown = JSON.parse(text)
    return Array.isArray(list) ? list : undefined
  } catch {
    return undefined
  }
}
