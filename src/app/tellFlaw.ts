import type { RecordedFlaw } from '@/journal/journal'
import { describeFlaw } from '@/judge/describeFlaw'
import type { Key } from '@/music/units'

/** A recorded flaw in a few words, as its verdict was told: 'E♭4 in place of E4'. */
export const tellFlaw = (
  { kind, written, played }: RecordedFlaw,
  nameKey: (key: Key) => string,
): string =>
  describeFlaw(
    kind,
    written === undefined ? undefined : nameKey(written),
    played === undefined ? undefined : nameKey(played),
  )
