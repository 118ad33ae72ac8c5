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
import type { HandChoice, Score } from '@/music/music'
import { failed, ok, type Result } from '@/music/result'
import type { Tick } from '@/music/units'
import type { WorkerAnswer, WorkerRequest } from './exchange'
import type { SystemPlaces } from './systemPlaces'
import { cutStretch, cutSystem, type Fingers, type Stretch } from './stretch'

export interface EngravingRequest {
  readonly score: Score
  readonly start: Tick
  /** Notes that start before it are drawn, in their full length. */
  readonly end: Tick
  readonly hand: HandChoice
  /** The box to fill, in CSS pixels. A long stretch may become higher than the box, never wider. */
  readonly width: number
  readonly height: number
  /** Printed in place of the digits that the score has, by note id. */
  readonly fingers?: Fingers
  /** A new request of the same caller takes the place of the older one. */
  readonly caller?: string
}

/** Whole bars of both hands as one line of the piece. */
export interface SystemRequest {
  readonly score: Score
  /** Indices into the bars of the score; `toBar` is the last one. */
  readonly fromBar: number
  readonly toBar: number
  /** CSS pixels: the width of the line, and the staff space. */
  readonly width: number
  readonly space: number
  readonly fingers?: Fingers
  readonly caller?: string
}

export interface Engraving {
  /** An `<svg>` element as text: ink is `currentColor`, there is no background. */
  readonly svg: string
  /** CSS pixels, as wide as the request at most. */
  readonly width: number
  readonly height: number
  /** Of a line of the whole piece: where its bars and notes stand. */
  readonly places?: SystemPlaces
}

export type EngravingProblem =
  /** A newer request of the same caller came: nothing to show. */
  | { readonly kind: 'superseded' }
  /** Nothing stands there: no bar, or no room. */
  | { readonly kind: 'empty' }
  /** The engraver could not be loaded, crashed or hangs. `message` is for the person. */
  | { readonly kind: 'failed'; readonly message: string }

export interface Engraver {
  /** Loads the engraver ahead of the first drawing. */
  readonly warm: () => void
  readonly engrave: (request: EngravingRequest) => Promise<Result<Engraving, EngravingProblem>>
  /** With `places`: the picture itself does not name its notes. */
  readonly engraveSystem: (request: SystemRequest) => Promise<Answer>
  readonly dispose: () => void
}

/** A first drawing waits for 7 MB to load and compile; after this long the worker counts as hung. */
const patience = 30_000

type Answer = Result<Engraving, EngravingProblem>

interface Waiting {
  readonly caller: string
  readonly request: WorkerRequest
  readonly settle: (answer: Answer) => void
}

/** One worker, one drawing at a time; a failed worker is replaced at the next request. */
export const createEngraver = (startWorker: () => Worker = startEngraver): Engraver => {
  let worker: Worker | undefined
  let count = 0
  let queue: Waiting[] = []
  let timer: ReturnType<typeof setTimeout> | undefined

  const start = (): Worker => {
    const started = worker ?? startWorker()
    if (!worker) {
      worker = started
      started.addEventListener('message', ({ data }: MessageEvent<WorkerAnswer>) => hear(data))
      started.addEventListener('error', (event) => giveUp(event.message || 'it stopped'))
    }
    return started
  }

  /** The head of the queue is what the worker draws now. */
  const sendNext = (): void => {
    clearTimeout(timer)
    const next = queue[0]
    if (!next) return
    timer = setTimeout(() => giveUp(`no answer within ${patience / 1000} seconds`), patience)
    start().postMessage(next.request)
  }

  const hear = (answer: WorkerAnswer): void => {
    switch (answer.kind) {
      case 'ready':
        return
      case 'unloadable':
        return giveUp(answer.message)
      case 'drawn':
        return settleHead(answer.number, ok(answer.drawing))
      case 'failed':
        return settleHead(answer.number, failed(problem(answer.message)))
    }
  }

  const settleHead = (number: number, answer: Answer): void => {
    const head = queue[0]
    if (head?.request.number !== number) return
    queue = queue.slice(1)
    head.settle(answer)
    sendNext()
  }

  const giveUp = (message: string): void => {
    clearTimeout(timer)
    worker?.terminate()
    worker = undefined
    const lost = queue
    queue = []
    for (const { settle } of lost) settle(failed(problem(message)))
  }

  /** The one at work cannot be stopped; its answer is settled now and dropped when it comes. */
  const supersede = (caller: string): void => {
    const isOld = (each: Waiting): boolean => each.caller === caller
    for (const { settle } of queue.filter(isOld)) settle(failed({ kind: 'superseded' }))
    queue = queue.filter((each, i) => i === 0 || !isOld(each))
  }

  const ask = (
    stretch: Stretch | undefined,
    box: WorkerRequest['box'],
    caller = '',
  ): Promise<Answer> => {
    if (!stretch || box.width < 1 || box.height < 1)
      return Promise.resolve(failed({ kind: 'empty' }))
    supersede(caller)
    const request = { number: count++, stretch, box }
    return new Promise<Answer>((settle) => {
      queue = [...queue, { caller, request, settle }]
      if (queue.length === 1) sendNext()
    })
  }

  return {
    warm: () => void start(),
    engrave: ({ score, start: from, end, hand, width, height, fingers, caller }) =>
      ask(cutStretch(score, from, end, hand, fingers), { width, height }, caller),
    engraveSystem: ({ score, fromBar, toBar, width, space, fingers, caller }) =>
      ask(cutSystem(score, fromBar, toBar, fingers), { width, height: Infinity, space }, caller),
    dispose: () => giveUp('the page was closed'),
  }
}

const startEngraver = (): Worker =>
  new Worker(new URL('./engraver.worker.ts', import.meta.url), { type: 'module' })

const problem = (cause: string): EngravingProblem => ({
  kind: 'failed',
  message: `The notation cannot be drawn (${cause}). Playing is still heard; reload the page to try again.`,
})
