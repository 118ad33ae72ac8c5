import { correctHands, handCorrection, type HandCorrection } from '@/hands/correctHands'
import type { Note, Score } from '@/music/music'
import type { Tick } from '@/music/units'

/** What becomes of the person's word on hands when a better edition takes the place of a piece. */
export interface CarriedHands {
  /** For the better edition. */
  readonly corrections: readonly HandCorrection[]
  /** How many corrections hold for it, of these how many for some of their notes only. */
  readonly carried: number
  readonly inPart: number
  /** How many are no longer needed, since the file tells those hands. */
  readonly told: number
  /** How many are dropped, since their notes are not in it. */
  readonly dropped: number
}

/**
 * Carries each correction to the notes that agree: the same key at the same place, which is what a
 * note's name says. Both scores are as read, without corrections.
 */
export const carryHands = (
  corrections: readonly HandCorrection[],
  old: Score,
  better: Score,
): CarriedHands => {
  const present = new Map(better.notes.map((note) => [note.id, note]))
  const all = corrections.map((correction) => {
    const meant = notesOf(correction, old)
    const agreeing = meant.filter(({ id }) => present.has(id))
    const open = agreeing.filter(({ id }) => present.get(id)?.handFrom !== 'file')
    return {
      meant: meant.length,
      agreeing: agreeing.length,
      carried: open.length === 0 ? [] : carryOne(correction, better, new Set(open.map(idOf))),
    }
  })
  const count = (holds: (one: (typeof all)[number]) => boolean): number => all.filter(holds).length
  return {
    corrections: all.flatMap(({ carried }) => carried),
    carried: count(({ carried }) => carried.length > 0),
    inPart: count(({ carried, agreeing, meant }) => carried.length > 0 && agreeing < meant),
    told: count(({ carried, agreeing }) => carried.length === 0 && agreeing > 0),
    dropped: count(({ agreeing }) => agreeing === 0),
  }
}

const idOf = ({ id }: Note): Note['id'] => id

/** The notes that a correction is about. */
const notesOf = (correction: HandCorrection, score: Score): readonly Note[] =>
  correctHands(score, [correction]).notes.filter(({ handFrom }) => handFrom === 'person')

/** One correction for each run of onsets that agree as a whole; where others stand besides, the keys that agree. */
const carryOne = (
  correction: HandCorrection,
  better: Score,
  agreeing: ReadonlySet<Note['id']>,
): readonly HandCorrection[] => {
  const { hand, keys } = correction
  const carried: HandCorrection[] = []
  let run: { readonly from: Tick; readonly to: Tick } | undefined
  const endRun = (): void => {
    if (run) carried.push(handCorrection(better, run.from, run.to, hand, keys))
    run = undefined
  }
  for (const [start, notes] of byOnset(notesOf(correction, better))) {
    const same = notes.filter(({ id }) => agreeing.has(id))
    if (same.length === notes.length) run = { from: run?.from ?? start, to: start }
    else {
      endRun()
      const alone = same.map(({ key }) => key)
      if (alone.length > 0) carried.push(handCorrection(better, start, start, hand, alone))
    }
  }
  endRun()
  return carried
}

const byOnset = (notes: readonly Note[]): ReadonlyMap<Tick, readonly Note[]> => {
  const onsets = new Map<Tick, Note[]>()
  for (const note of notes) {
    const others = onsets.get(note.start)
    if (others) others.push(note)
    else onsets.set(note.start, [note])
  }
  return onsets
}
