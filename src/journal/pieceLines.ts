/**
 * What a saved record holds beside the events: of each piece its file, and the person's word on its hands
 * and on its hard spots. An event says what happened; such a line says how something stands, and since
 * when. So of two lines of one kind on one piece the newer holds, and the union of records says the same
 * in any order (`mergePieceLines`).
 *
 * Example: { v: 4, kind: 'pieceHands', piece: 'p1', atEpochMs: 5, corrections: [{ from: '0', to: '3_2', hand: 'left' }] }
 */
import * as v from 'valibot'
import { handChoices, hands, type Hand, type HandChoice } from '@/music/music'
import { failed, ok, type Result } from '@/music/result'
import { chunkId, key, pieceId, type ChunkId, type Key, type PieceId } from '@/music/units'
import { storageText } from '@/text/storage'
import { base64Size } from './base64'
import { canonical } from './canonical'
import type { JournalProblem } from './decode'

/** A program that knows events up to version 3 alone says of these lines that a newer one wrote them. */
export const pieceLineVersion = 4 as const

/** By which a line is known among others: of each there is one. */
export interface PieceLineName {
  readonly kind: PieceLine['kind']
  readonly piece: PieceId
  /** Since when it stands so; the wall clock, milliseconds since 1970 UTC. */
  readonly atEpochMs: number
}

interface Line extends PieceLineName {
  readonly v: typeof pieceLineVersion
}

export interface PieceFile extends Line {
  readonly kind: 'pieceFile'
  readonly title: string
  readonly composer?: string
  readonly fileName: string
  /** Which of the file's parts were chosen; absent where the reader chose. */
  readonly parts?: readonly number[]
  /** Chunks of older editions whose record counts for chunks of this one. */
  readonly carried?: readonly { readonly from: ChunkId; readonly to: ChunkId }[]
  readonly addedAtEpochMs: number
  /** The file itself as base64 (RFC 4648, section 4). */
  readonly bytes: string
}

/** Places in exact quarters: '3_2' is one and a half. */
export interface PieceHands extends Line {
  readonly kind: 'pieceHands'
  readonly corrections: readonly {
    readonly from: string
    readonly to: string
    readonly keys?: readonly Key[]
    readonly hand: Hand
  }[]
}

interface Spot {
  readonly from: string
  readonly to: string
  readonly hand: HandChoice
}

export interface PieceSpots extends Line {
  readonly kind: 'pieceSpots'
  readonly said: readonly (Spot & { readonly word: 'accepted' | 'rejected' })[]
  readonly order: readonly Spot[]
}

export type PieceLine = PieceFile | PieceHands | PieceSpots

/** 32 MB, as much as is read of a file of music. */
const largestFile = 32 * 1024 * 1024

const name = v.pipe(
  v.string(),
  v.nonEmpty(() => storageText.shapes.empty),
)
const count = v.pipe(v.number(), v.integer(), v.minValue(0))
const moment = v.pipe(v.number(), v.finite(), v.minValue(0))
const fraction = v.pipe(
  v.string(),
  v.regex(/^\d+(_[1-9]\d*)?$/, () => storageText.shapes.fraction),
)
const chunk = v.pipe(name, v.transform(chunkId))
const spot = { from: fraction, to: fraction, hand: v.picklist(handChoices) }
const bytes = v.pipe(
  v.string(),
  v.check(
    (text) => base64Size(text) <= largestFile,
    () => storageText.shapes.tooLarge,
  ),
  v.regex(/^[A-Za-z0-9+/]*$/, () => storageText.shapes.base64),
)

const line = <K extends string, E extends v.ObjectEntries>(kind: K, entries: E) =>
  v.strictObject({
    v: v.literal(pieceLineVersion),
    kind: v.literal(kind),
    piece: v.pipe(name, v.transform(pieceId)),
    atEpochMs: moment,
    ...entries,
  })

const schema: v.GenericSchema<unknown, PieceLine> = v.variant('kind', [
  line('pieceFile', {
    title: v.string(),
    composer: v.exactOptional(v.string()),
    fileName: v.string(),
    parts: v.exactOptional(v.array(count)),
    carried: v.exactOptional(v.array(v.strictObject({ from: chunk, to: chunk }))),
    addedAtEpochMs: moment,
    bytes,
  }),
  line('pieceHands', {
    corrections: v.array(
      v.strictObject({
        from: fraction,
        to: fraction,
        keys: v.exactOptional(v.array(v.pipe(count, v.maxValue(127), v.transform(key)))),
        hand: v.picklist(hands),
      }),
    ),
  }),
  line('pieceSpots', {
    said: v.array(v.strictObject({ ...spot, word: v.picklist(['accepted', 'rejected']) })),
    order: v.array(v.strictObject(spot)),
  }),
])

/** Whether it is meant as one of these lines, of whatever version. */
export const isPieceLine = (raw: unknown): boolean =>
  typeof raw === 'object' &&
  raw !== null &&
  'kind' in raw &&
  (raw.kind === 'pieceFile' || raw.kind === 'pieceHands' || raw.kind === 'pieceSpots')

/** Reads a line from outside. */
export const decodePieceLine = (raw: unknown): Result<PieceLine, JournalProblem> => {
  const parsed = v.safeParse(schema, raw, { abortEarly: true })
  if (parsed.success) return ok(parsed.output)
  const version = typeof raw === 'object' && raw !== null && 'v' in raw ? raw.v : undefined
  if (typeof version === 'number' && version > pieceLineVersion)
    return failed({ kind: 'newerVersion', version, known: pieceLineVersion })
  const [issue] = parsed.issues
  return failed({ kind: 'wrongShape', path: v.getDotPath(issue) ?? '', message: issue.message })
}

/** One line each as JSON, as events are (lines.ts). */
export const formatPieceLine = (each: PieceLine): string => `${JSON.stringify(each)}\n`

const nameOf = ({ kind, piece }: Pick<PieceLineName, 'kind' | 'piece'>): string =>
  `${kind} ${piece}`

/**
 * Whether a line holds before another one of the same name: the newer does, and should both be of one
 * moment, the one whose text sorts first, so that the order in which they come does not matter.
 */
export const holdsBefore = (one: PieceLine, other: PieceLine): boolean =>
  one.atEpochMs === other.atEpochMs
    ? canonical(one) < canonical(other)
    : one.atEpochMs > other.atEpochMs

/** The union: of each name the line that holds, in the order of their names. */
export const mergePieceLines = (
  ...all: readonly (readonly PieceLine[])[]
): readonly PieceLine[] => {
  const byName = new Map<string, PieceLine>()
  for (const each of all.flat()) {
    const known = byName.get(nameOf(each))
    if (!known || holdsBefore(each, known)) byName.set(nameOf(each), each)
  }
  return [...byName.values()].toSorted((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1))
}
