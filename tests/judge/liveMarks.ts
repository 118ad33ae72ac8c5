import type { Finding } from '@/judge/judge'

/** How the marks at the moment of the key agree with the final ones. */
export interface Agreement {
  readonly marks: number
  readonly atOnce: number
  /** Notes played right that were shown as false meanwhile. */
  readonly slandered: number
}

/** What a key itself is; a stop or a crooked pulse is known only afterwards, and a restart by its return. */
const ofKeys: ReadonlySet<string> = new Set(['right', 'wrong', 'extra', 'repeated', 'order'])

/** Compares the first mark of each key, right or not, with the final one; a mark held back counts as not right. */
export const compareMarks = (findings: readonly Finding[]): Agreement => {
  let first = new Map<string, string>()
  let everFalse = new Set<string>()
  let [marks, atOnce, slandered] = [0, 0, 0]
  for (const finding of findings) {
    switch (finding.kind) {
      case 'began':
        first = new Map()
        everFalse = new Set()
        break
      case 'mark':
        if (!first.has(finding.slot)) first.set(finding.slot, finding.mark.kind)
        if (finding.mark.kind !== 'right') everFalse.add(finding.slot)
        break
      case 'ended':
        for (const mark of finding.repetition.marks) {
          if (!ofKeys.has(mark.kind) || !mark.played) continue
          const slot = `k${mark.played.index}`
          const isRight = mark.kind === 'right'
          marks++
          if ((first.get(slot) === 'right') === isRight) atOnce++
          if (isRight && everFalse.has(slot)) slandered++
        }
        break
      case 'unmark':
      case 'stray':
        break
    }
  }
  return { marks, atOnce, slandered }
}

export const addUp = (a: Agreement, b: Agreement): Agreement => ({
  marks: a.marks + b.marks,
  atOnce: a.atOnce + b.atOnce,
  slandered: a.slandered + b.slandered,
})
