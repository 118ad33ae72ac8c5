/**
 * Real staff notation of a stretch of a score, and pencil marks on it.
 *
 * A stretch is [start, end) of the score, for one hand or both. It is quantised for the eye
 * (quantise.ts), written out bar by bar (writing.ts) as MEI, an open standard for notation (mei.ts),
 * and engraved by verovio in a worker (engraver.worker.ts), which loads with the first drawing. Each
 * note of the score is one SVG element whose id is the note's id; pencil.ts puts marks on it without
 * engraving again.
 *
 * Example: `const engraver = createEngraver()`, then `await engraver.engrave({ score, start, end,
 * hand: 'right', width: 900, height: 300 })` gives `svg` to put on the page.
 */
import { failed } from '@/music/result'
import { unableToDraw, type Answer, type Engraver } from './engraver'

export type { Engraver, Engraving, EngravingRequest, SystemRequest } from './engraver'

type Load = () => Promise<{ readonly openEngraver: () => Engraver }>

/** Nothing of the engraver belongs to the first load of the page: its parts come with the first call. */
export const createEngraver = (load: Load = () => import('./openEngraver')): Engraver => {
  let opened: Promise<Engraver> | undefined
  const open = (): Promise<Engraver> => {
    opened ??= load().then(({ openEngraver }) => openEngraver())
    return opened
  }
  /** The next call tries again. */
  const giveUp = (cause: unknown): Answer => {
    opened = undefined
    return failed(
      unableToDraw(
        cause instanceof Error ? { kind: 'said', message: cause.message } : { kind: 'unloaded' },
      ),
    )
  }
  const ask = (draw: (engraver: Engraver) => Promise<Answer>): Promise<Answer> =>
    open().then(draw, giveUp)
  return {
    warm: () => void open().then((engraver) => engraver.warm(), giveUp),
    engrave: (request) => ask((engraver) => engraver.engrave(request)),
    engraveSystem: (request) => ask((engraver) => engraver.engraveSystem(request)),
    dispose: () => void opened?.then((engraver) => engraver.dispose(), giveUp),
  }
}
