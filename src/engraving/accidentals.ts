import { alterInSignature, type Spelling } from '@/music/spelling'

/** A head as it comes in reading order on one staff. */
export interface Head extends Spelling {
  readonly id: string
  /** Counted from the first drawn bar. */
  readonly bar: number
  readonly at: number
  readonly fifths: number
  /** The continuation of a tie: its accidental is not printed again. */
  readonly tiedFrom: boolean
}

/** What the reader holds for a step in this bar: its alteration, where it differs from the signature. */
export type InForce = ReadonlyMap<number, number>

export interface PrintedHead {
  /** To be printed before the head; `undefined` when the reader knows already. */
  readonly accidental: number | undefined
  /** After all heads of this onset, by staff step: what a further head would have to contradict. */
  readonly inForce: InForce
}

/**
 * Which accidentals to print on one staff: those that differ from what is in force in the bar at that
 * line, and a courtesy where the same letter was just altered in another octave or in the bar before.
 */
export const printAccidentals = (heads: readonly Head[]): ReadonlyMap<string, PrintedHead> => {
  const printed = new Map<string, PrintedHead>()
  const inForce = new Map<number, number>()
  let recent = new Map<number, { alter: number; bar: number }>()
  let bar = -1
  for (const group of byOnset(heads)) {
    const first = group[0]
    if (first && first.bar !== bar) {
      inForce.clear()
      recent = new Map([...recent].filter(([, { bar: seen }]) => seen === first.bar - 1))
      bar = first.bar
    }
    const accidentals = group.map((head) => ({
      head,
      accidental: clashes(head, group) ? head.alter : needed(head, inForce, recent),
    }))
    for (const { head, accidental } of accidentals) {
      if (head.tiedFrom) continue
      if (accidental !== undefined || inForce.has(head.step)) inForce.set(head.step, head.alter)
      recent.set(head.step % 7, { alter: head.alter, bar: head.bar })
    }
    const after = new Map(inForce)
    for (const { head, accidental } of accidentals)
      printed.set(head.id, { accidental, inForce: after })
  }
  return printed
}

/** Two alterations of one letter in one chord are both printed. */
const clashes = (head: Head, chord: readonly Head[]): boolean =>
  !head.tiedFrom && chord.some((other) => other.step === head.step && other.alter !== head.alter)

const needed = (
  head: Head,
  inForce: InForce,
  recent: ReadonlyMap<number, { alter: number; bar: number }>,
): number | undefined => {
  if (head.tiedFrom) return undefined
  const read = inForce.get(head.step) ?? alterInSignature(head.step, head.fifths)
  if (read !== head.alter) return head.alter
  if (inForce.has(head.step)) return undefined
  const last = recent.get(head.step % 7)
  return last !== undefined && last.alter !== head.alter ? head.alter : undefined
}

const byOnset = (heads: readonly Head[]): Head[][] => {
  const groups: Head[][] = []
  for (const head of heads) {
    const before = groups.at(-1)?.[0]
    if (before && before.at === head.at && before.bar === head.bar) groups.at(-1)?.push(head)
    else groups.push([head])
  }
  return groups
}
