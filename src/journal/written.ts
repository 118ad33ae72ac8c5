import type { JournalEvent } from './journal'
import { compareEvents } from './merge'

/**
 * What the person wrote or decided, unlike what was played. It is no practice, so no day's sums count it;
 * it is read whole, apart from the practice of years, so it is never packed (storage).
 */
export const writtenKinds = [
  'notebookWritten',
  'notebookErased',
  'pieceDecided',
  'fingeringWritten',
  'fingeringErased',
  'fingeringChosen',
] as const

export type Written = Extract<JournalEvent, { readonly kind: (typeof writtenKinds)[number] }>

export const isWritten = <E extends Pick<JournalEvent, 'kind'>>(event: E): event is E & Written =>
  isWrittenKind(event.kind)

export const isWrittenKind = (kind: unknown): boolean => writtenKinds.some((each) => each === kind)

/** A page of a book has some 2,000 letters; more than ten in one entry would be a slip of the clipboard. */
export const longestText = 20_000
/** The name of a fingering, or a remark on where it comes from. */
export const longestRemark = 500

/**
 * The events that no other one replaces, in the order of time: so a change or a removal is an event of
 * its own that names the one it `replaces`, and the union of two journals says the same in any order.
 * Where two machines change one event, both changes stand: nothing that was written is lost.
 *
 * Example: a; b replaces a; c replaces a -> b c.
 */
export const standing = <E extends JournalEvent>(events: readonly E[]): readonly E[] => {
  const replaced = new Set(
    events.flatMap((event) => ('replaces' in event && event.replaces ? [event.replaces] : [])),
  )
  return events.filter(({ id }) => !replaced.has(id)).toSorted(compareEvents)
}
