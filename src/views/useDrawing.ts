import { useEffect, useState } from 'react'
import type { Engraver, Engraving, EngravingRequest } from '@/engraving/engraving'
import type { EngraverFault } from '@/engraving/fault'
import type { Score } from '@/music/music'
import { ok } from '@/music/result'
import { useEngraver } from './context'

export type Stretch = Pick<EngravingRequest, 'score' | 'start' | 'end' | 'hand'>

export interface Size {
  readonly width: number
  readonly height: number
}

/** How the notation stands on the page: being drawn, drawn, or not to be had. */
type Drawing =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'drawn'; readonly engraving: Engraving }
  | { readonly kind: 'failed'; readonly fault: EngraverFault }

/** The drawing of a stretch in a box; what stood there stays until the new one is there. */
export const useDrawing = (
  { score, start, end, hand }: Stretch,
  ahead: Stretch | undefined,
  caller: string,
  size: Size | undefined,
): Drawing => {
  const engraver = useEngraver()
  const [drawing, setDrawing] = useState<Drawing>({ kind: 'waiting' })
  const isDrawn = drawing.kind === 'drawn'
  useEffect(() => {
    if (!size || size.width < 40 || size.height < 40) return
    let current = true
    const request = { score, start, end, hand, ...size, caller }
    void engrave(engraver, request).then((result) => {
      if (!current) return
      if (result.ok) setDrawing({ kind: 'drawn', engraving: result.value })
      else if (result.reason.kind === 'failed')
        setDrawing({ kind: 'failed', fault: result.reason.fault })
    })
    return () => {
      current = false
    }
  }, [engraver, score, start, end, hand, caller, size])
  useEffect(() => {
    if (!isDrawn || !ahead || !size) return
    const request = { ...ahead, ...size, caller: `${caller}, ahead` }
    void engrave(engraver, request)
  }, [engraver, isDrawn, ahead, caller, size])
  return drawing
}

/** What was drawn of each score lately. */
const drawings = new WeakMap<Score, Map<string, Engraving>>()
/** A drawing is some 20 kB of text: those of one sitting at a passage, in two sizes. */
const mostDrawings = 24

const nameOf = ({ start, end, hand, width, height }: EngravingRequest): string =>
  `${start} ${end} ${hand} ${width} ${height}`

const engrave = async (
  engraver: Engraver,
  request: EngravingRequest,
): ReturnType<Engraver['engrave']> => {
  const known = drawings.get(request.score) ?? new Map<string, Engraving>()
  drawings.set(request.score, known)
  const drawn = known.get(nameOf(request))
  if (drawn) return ok(drawn)
  const result = await engraver.engrave(request)
  if (!result.ok) return result
  const [oldest] = known.keys()
  if (known.size >= mostDrawings && oldest !== undefined) known.delete(oldest)
  known.set(nameOf(request), result.value)
  return result
}
