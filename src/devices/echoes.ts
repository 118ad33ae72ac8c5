import type { Ms } from '@/music/units'

/** Some instruments send back what is sent to them: that was played by nobody. */
export interface Echoes {
  /** A message that was sent out, and when it is due. */
  readonly sent: (bytes: readonly number[], at: Ms) => void
  /** Whether a message that comes in is one of those; each comes back once. */
  readonly isEcho: (bytes: readonly number[], at: Ms) => boolean
}

/** There and back takes some milliseconds by cable, more by wireless (common practice, no source). */
const latest = 300
/** The clocks of both ways may be apart by this much. */
const earliest = -20

export const createEchoes = (): Echoes => {
  let open: readonly { readonly bytes: readonly number[]; readonly at: Ms }[] = []
  return {
    sent: (bytes, at) => {
      open = [...open, { bytes, at }]
    },
    isEcho: (bytes, at) => {
      open = open.filter((each) => at - each.at <= latest)
      const found = open.find((each) => at - each.at >= earliest && isSame(each.bytes, bytes))
      open = open.filter((each) => each !== found)
      return found !== undefined
    },
  }
}

const isSame = (one: readonly number[], other: readonly number[]): boolean =>
  one.length === other.length && one.every((byte, i) => byte === other[i])
