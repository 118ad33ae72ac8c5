import { useEffect, useMemo, useState } from 'react'
import { none, type FingeredPiece } from '@/app/fingerings'
import type { Compared, Impossible } from '@/fingering/compare'
import type { FingeringSettings, HandFingering } from '@/fingering/fingering'
import type { HandReach } from '@/fingering/spans'
import type { Unreachable } from '@/fingering/unreachable'
import type { Fingers } from '@/music/fingers'
import {
  hands,
  type Finger,
  type Hand,
  type HandChoice,
  type Note,
  type Score,
} from '@/music/music'
import type { NoteId } from '@/music/units'
import { useApp, useSelected } from './context'
import type { OfHands } from './fingeringWords'

/** The chosen passage, whose digits are written, proposed and compared. */
export interface Fingering {
  readonly piece: FingeredPiece
  readonly hand: HandChoice
  /** Indices of bars. */
  readonly from: number
  readonly to: number
}

/** A fingering of the program's for the passage, in all the hands that were asked for. */
export interface Proposal {
  readonly fingers: ReadonlyMap<NoteId, Finger>
  /** From the first: none for that one. */
  readonly differences: OfHands
}

export interface Proposals {
  readonly proposals: readonly Proposal[]
  readonly unreachable: readonly Unreachable[]
}

export const handsOf = (choice: HandChoice): readonly Hand[] =>
  choice === 'both' ? hands : [choice]

export const notesIn = ({ notes }: Score, from: number, to: number): readonly Note[] =>
  notes.filter(({ barIndex }) => barIndex >= from && barIndex <= to)

export const firstFingers = (fingers: Fingers): ReadonlyMap<NoteId, Finger> =>
  new Map(
    [...fingers].flatMap(([id, [first]]) => (first === undefined ? [] : [[id, first] as const])),
  )

export const usePieceFingerings = ({ score }: FingeredPiece) => {
  const app = useApp()
  const { pieces, problem } = useSelected(app.fingerings.store, (state) => state)
  return { ...(pieces.get(score.id) ?? none), problem }
}

/** Asks the model for the passage; digits that are to be kept are kept. */
export const useProposing = ({ piece, hand, from, to }: Fingering) => {
  const app = useApp()
  const [asked, setAsked] = useState<{ readonly where: string; readonly proposals: Proposals }>()
  const [isLooking, setLooking] = useState(false)
  /** Why none could be looked for. */
  const [problem, setProblem] = useState<string>()
  const { score } = piece
  const where = `${score.id} ${from} ${to} ${hand}`
  const propose = async (keep: boolean): Promise<void> => {
    const { span } = app.settings.getState()
    setLooking(true)
    try {
      const notes = notesIn(score, from, to)
      const open = keep ? notes : notes.map((note) => ({ ...note, fingers: [] }))
      const ofHands = await Promise.all(
        handsOf(hand).map(async (each) => ({
          hand: each,
          found: await app.fingerings.propose(open, settingsOf(score, each, span)),
        })),
      )
      setAsked({ where, proposals: joinHands(ofHands) })
      setProblem(undefined)
    } catch (cause) {
      setProblem(cause instanceof Error ? cause.message : String(cause))
    }
    setLooking(false)
  }
  const found = asked?.where === where ? asked.proposals : undefined
  return { found, isLooking, problem, propose, close: () => setAsked(undefined) }
}

const settingsOf = (
  { ticksPerQuarter }: Score,
  hand: Hand,
  span: HandReach,
): FingeringSettings => ({ hand, ticksPerQuarter, span })

/** The n-th of one hand goes with the n-th of the other, or with its last. */
const joinHands = (
  ofHands: readonly { readonly hand: Hand; readonly found: HandFingering }[],
): Proposals => {
  const all = ofHands.flatMap(({ hand, found: { best, alternatives } }) =>
    best ? [{ hand, ways: [{ ...best, difference: undefined }, ...alternatives] }] : [],
  )
  const most = Math.max(0, ...all.map(({ ways }) => ways.length))
  return {
    proposals: Array.from({ length: most }, (_, i) => {
      const each = all.flatMap(({ hand, ways }) => {
        const way = ways[Math.min(i, ways.length - 1)]
        return way ? [{ hand, ...way }] : []
      })
      return {
        fingers: new Map(each.flatMap(({ notes }) => notes.map(({ id, finger }) => [id, finger]))),
        differences: each.flatMap(({ hand, difference }) =>
          difference ? [{ hand, difference }] : [],
        ),
      }
    }),
    unreachable: ofHands.flatMap(({ found }) => found.unreachable),
  }
}

/** Digits are typed quickly: versions are compared when the hand rests, milliseconds. */
const typingPause = 300

/** A version beside the first of them, in the passage. */
export interface ComparedVersion {
  readonly differences: OfHands
  readonly impossible: readonly Impossible[]
}

/** How the versions differ in the passage, and what of the first cannot be; empty until it is known. */
export const useCompared = (
  { piece, hand, from, to }: Fingering,
  versions: readonly Fingers[],
): readonly ComparedVersion[] => {
  const app = useApp()
  const span = useSelected(app.settings, (state) => state.span)
  const [compared, setCompared] = useState<readonly ComparedVersion[]>([])
  const { score } = piece
  const asked = useMemo(() => versions.map(firstFingers), [versions])
  useEffect(() => {
    let isOver = false
    const compare = async (): Promise<void> => {
      const notes = notesIn(score, from, to)
      const ofHands = await Promise.all(
        handsOf(hand).map((each) =>
          app.fingerings.compare(notes, settingsOf(score, each, span), asked),
        ),
      )
      if (!isOver) setCompared(asked.map((_, i) => joinCompared(ofHands, handsOf(hand), i)))
    }
    // A comparison that fails leaves the last one: the digits themselves stand on the page.
    const timer = window.setTimeout(() => void compare().catch(() => setCompared([])), typingPause)
    return () => {
      isOver = true
      window.clearTimeout(timer)
    }
  }, [app, score, hand, from, to, span, asked])
  return compared
}

const joinCompared = (
  ofHands: readonly (readonly Compared[])[],
  which: readonly Hand[],
  i: number,
): ComparedVersion => ({
  differences: which.flatMap((hand, h) => {
    const compared = ofHands[h]?.[i]
    return compared?.difference ? [{ hand, difference: compared.difference }] : []
  }),
  impossible: ofHands.flatMap((versions) => versions[i]?.impossible ?? []),
})
