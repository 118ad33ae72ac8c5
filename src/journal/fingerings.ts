import { parseFingers, type Fingers } from '@/music/fingers'
import type { Finger } from '@/music/music'
import { noteId, type NoteId, type PieceId } from '@/music/units'
import type { EventId } from './ids'
import type { FingeringWritten, JournalEvent } from './journal'
import { compareEvents } from './merge'
import type { FingeringOrigin } from './words'

/** One of the person's fingerings of a piece, for both hands; not every note need have a digit. */
export interface FingeringVersion {
  /** Of the event that began it. */
  readonly id: EventId
  readonly name: string
  readonly origin: FingeringOrigin
  /** Where it comes from, in the person's words; may be empty. */
  readonly remark: string
  readonly fingers: Fingers
}

/** The fingerings of a piece, the oldest first. */
export interface PieceFingerings {
  readonly versions: readonly FingeringVersion[]
  /** Absent: the digits of the file are shown. */
  readonly chosen?: EventId
}

/**
 * The fingerings of each piece as they stand now. Of each name, remark and digit the newest word holds,
 * and what was erased stays erased, so that the union of two journals says the same in any order.
 */
export const fingeringsOf = (
  events: readonly JournalEvent[],
): ReadonlyMap<PieceId, PieceFingerings> => {
  const pieces = new Map<PieceId, Map<EventId, FingeringVersion>>()
  const erased = new Set<EventId>()
  const chosen = new Map<PieceId, EventId | undefined>()
  for (const event of events.toSorted(compareEvents)) {
    if (event.kind === 'fingeringWritten') {
      const versions = pieces.get(event.piece) ?? new Map<EventId, FingeringVersion>()
      const id = event.fingering ?? event.id
      versions.set(id, changed(versions.get(id) ?? { ...blank, id }, event))
      pieces.set(event.piece, versions)
    } else if (event.kind === 'fingeringErased') erased.add(event.fingering)
    else if (event.kind === 'fingeringChosen') chosen.set(event.piece, event.fingering)
  }
  return new Map(
    [...pieces].map(([piece, all]) => {
      const versions = [...all.values()].filter(({ id }) => !erased.has(id))
      const word = chosen.get(piece)
      const isHere = word !== undefined && versions.some(({ id }) => id === word)
      return [piece, { versions, ...(isHere ? { chosen: word } : {}) }]
    }),
  )
}

const blank = { name: '', origin: 'mine', remark: '', fingers: new Map() } as const

const changed = (version: FingeringVersion, event: FingeringWritten): FingeringVersion => {
  const { name = version.name, origin = version.origin, remark = version.remark } = event
  return { ...version, name, origin, remark, fingers: withDigits(version.fingers, event) }
}

const withDigits = (before: Fingers, { fingers: written }: FingeringWritten): Fingers => {
  if (!written) return before
  const after = new Map<NoteId, readonly Finger[]>(before)
  for (const [note, digits] of digitsOf(written))
    if (digits.length > 0) after.set(note, digits)
    else after.delete(note)
  return after
}

const digitsOf = (
  written: NonNullable<FingeringWritten['fingers']>,
): readonly (readonly [NoteId, readonly Finger[]])[] =>
  Object.entries(written).map(([note, digits]) => [noteId(note), parseFingers(digits)])
