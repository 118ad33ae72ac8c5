import type { ExpectedNote } from '@/music/chunk'
import { ms, type Ms } from '@/music/units'
import type { Mark, PlayedNote } from './flaw'
import { groupByOnset, type Ground } from './ground'
import { chordSpread } from './thresholds'

/** What was heard of one onset in the final reading. */
export interface HeardOnset {
  readonly onset: number
  readonly start: number
  /** Mean of the strikes that belong to it. */
  readonly at: Ms
  /** From its first to its last strike. */
  readonly spread: Ms
  readonly rolled: boolean
  readonly expected: ExpectedNote
  readonly played: PlayedNote
  /** A key too many or the way back took its time before it: the gap says nothing about the pulse. */
  readonly afterStop: boolean
}

/** The onsets as they sounded: right and wrong keys in their places, exchanged notes aside. */
export const hearOnsets = (ground: Ground, named: readonly Mark[]): HeardOnset[] => {
  const byOnset = groupByOnset(named)
  const stops = named.flatMap((m) => (takesTime.has(m.kind) && m.played ? [m.played.at] : []))
  const heard: HeardOnset[] = []
  for (const [onset, { start, rolled }] of ground.onsets.entries()) {
    let lead: InPlace | undefined
    let latest = 0
    let sum = 0
    let count = 0
    for (const mark of byOnset.get(onset) ?? []) {
      const struck = inPlace(mark)
      if (!struck) continue
      if (!lead || struck.played.at < lead.played.at) lead = struck
      latest = Math.max(latest, struck.played.at)
      sum += struck.played.at
      count++
    }
    if (!lead) continue
    const first = lead.played.at
    const spread = ms(latest - first)
    // Where a chord is not together, the pulse is in its first note.
    const at = spread > chordSpread ? first : ms(sum / count)
    const before = heard.at(-1)
    const afterStop = before !== undefined && stops.some((s) => s >= before.at && s <= at)
    heard.push({ onset, start, at, spread, rolled, ...lead, afterStop })
  }
  return heard
}

/** One slip is one flaw: the time that such a strike took is not a stop besides. */
const takesTime: ReadonlySet<Mark['kind']> = new Set(['extra', 'repeated', 'restart'])

interface InPlace {
  readonly expected: ExpectedNote
  readonly played: PlayedNote
}

const inPlace = (mark: Mark): InPlace | undefined =>
  (mark.kind === 'right' || mark.kind === 'wrong') && mark.expected && mark.played
    ? { expected: mark.expected, played: mark.played }
    : undefined
