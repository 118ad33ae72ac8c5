import type { Engraver, Engraving } from '@/engraving/engraving'
import type { EngraverFault } from '@/engraving/fault'
import type { WeighedMark } from '@/engraving/pencilMark'
import type { SystemPlaces } from '@/engraving/systemPlaces'
import type { SystemBars } from '@/engraving/systems'
import type { Score } from '@/music/music'

/** What is to be drawn: the lines of a piece, and how wide and how large. */
export interface Sheet {
  readonly score: Score
  readonly plan: readonly SystemBars[]
  /** CSS pixels. */
  readonly width: number
  readonly space: number
  /** Pencilled on a line, by its index; other marks are another list. */
  readonly marks?: ReadonlyMap<number, readonly WeighedMark[]>
}

export interface Line {
  readonly engraving: Engraving
  readonly places: SystemPlaces
}

/** Draws the lines of a piece one after the other, those in sight first, the rest when there is time. */
export interface Lines {
  /** Another sheet; of the same lines only those whose hands or fingers have changed are drawn again. */
  readonly show: (sheet: Sheet) => void
  readonly line: (index: number) => Line | undefined
  /** How many lines are drawn. */
  readonly progress: () => number
  /** Why no further line can be drawn. */
  readonly problem: () => EngraverFault | undefined
  readonly setNear: (index: number, near: boolean) => void
  readonly watch: (see: () => void) => () => void
  readonly stop: () => void
}

interface Drawn extends Line {
  /** The hands and fingers of its notes: when they are others, the line is drawn again. */
  readonly hands: string
  readonly marks: readonly WeighedMark[] | undefined
}

export const createLines = (engraver: Engraver): Lines => {
  let sheet: Sheet | undefined
  let hands: readonly string[] = []
  let drawn = new Map<number, Drawn>()
  let problem: EngraverFault | undefined
  let isDrawing = false
  let isStopped = false
  const near = new Set<number>()
  const watchers = new Set<() => void>()
  const tell = (): void => {
    for (const see of watchers) see()
  }

  /** Lines in which nothing stands; asking again would never end. */
  let empty = new Set<number>()
  const isOpen = (index: number): boolean => {
    const line = drawn.get(index)
    const isSame = line?.hands === hands[index] && line?.marks === sheet?.marks?.get(index)
    return !isSame && !empty.has(index)
  }
  const next = (): number | undefined => {
    const inSight = [...near].toSorted((a, b) => a - b).find(isOpen)
    if (inSight !== undefined) return inSight
    const first = hands.findIndex((_, index) => isOpen(index))
    return first < 0 ? undefined : first
  }

  const drawAll = async (): Promise<void> => {
    if (isDrawing) return
    isDrawing = true
    for (let index = next(); index !== undefined && !isStopped && !problem; index = next())
      await drawOne(index)
    isDrawing = false
  }
  const drawOne = async (index: number): Promise<void> => {
    const asked = sheet
    const bars = asked?.plan[index]
    const wanted = hands[index]
    if (!asked || !bars || wanted === undefined) return
    const { score, width, space } = asked
    const marks = asked.marks?.get(index)
    const request = { score, ...bars, width, space, ...(marks ? { marks } : {}), caller: 'line' }
    const result = await engraver.engraveSystem(request)
    if (sheet && !sameLines(sheet, asked)) return
    if (result.ok) {
      const { places = nowhere } = result.value
      drawn.set(index, { engraving: result.value, places, hands: wanted, marks })
    } else if (result.reason.kind === 'failed') problem = result.reason.fault
    else empty.add(index)
    tell()
  }

  return {
    show: (shown) => {
      if (!sheet || !sameLines(sheet, shown)) {
        drawn = new Map()
        empty = new Set()
      }
      sheet = shown
      isStopped = false
      hands = handsOfLines(shown)
      tell()
      void drawAll()
    },
    line: (index) => drawn.get(index),
    progress: () => drawn.size,
    problem: () => problem,
    setNear: (index, isNear) => {
      if (isNear) near.add(index)
      else near.delete(index)
    },
    watch: (see) => {
      watchers.add(see)
      return () => watchers.delete(see)
    },
    stop: () => {
      isStopped = true
    },
  }
}

const nowhere: SystemPlaces = { bars: [], notes: new Map(), top: 0, bottom: 1, space: 0 }

const sameLines = (a: Sheet, b: Sheet): boolean =>
  a.plan === b.plan && a.width === b.width && a.space === b.space

/** 'LR1R2…' for the notes of each line. */
const handsOfLines = ({ score, plan }: Sheet): readonly string[] => {
  const lineOfBar = plan.flatMap(({ fromBar, toBar }, line) =>
    Array.from({ length: toBar - fromBar + 1 }, () => line),
  )
  const hands = plan.map(() => '')
  for (const { barIndex, hand, fingers = [] } of score.notes) {
    const line = lineOfBar[barIndex]
    if (line !== undefined) hands[line] += `${hand === 'left' ? 'L' : 'R'}${fingers.join('')}`
  }
  return hands
}
