import type { Finger, Score } from './music'
import type { NoteId } from './units'

/** Digits by note: the first finger, and those that take over from it while the key is held. */
export type Fingers = ReadonlyMap<NoteId, readonly Finger[]>

export const fingers: readonly Finger[] = [1, 2, 3, 4, 5]

/** The digits that stand with the notes of a score. */
export const fingersOf = ({ notes }: Pick<Score, 'notes'>): Fingers =>
  new Map(
    notes.flatMap(({ id, fingers: own }) => (own && own.length > 0 ? [[id, own] as const] : [])),
  )

/** The score with these digits and no others. */
export const withFingers = (score: Score, chosen: Fingers): Score => ({
  ...score,
  notes: score.notes.map((note) => {
    const own = chosen.get(note.id)
    return own || note.fingers ? { ...note, fingers: own ?? [] } : note
  }),
})

/** '13' is 1, then 3 on the same key. Letters other than 1 to 5 are passed over. */
export const parseFingers = (digits: string): readonly Finger[] =>
  [...digits].flatMap((digit) => fingers.filter((finger) => `${finger}` === digit))

export const formatFingers = (own: readonly Finger[]): string => own.join('')
