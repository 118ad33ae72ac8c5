import { failed, ok } from '@/music/result'
import { unableToDraw, type Answer, type Engraver } from './engraver'
import type { WorkerAnswer, WorkerRequest } from './exchange'
import type { EngraverFault } from './fault'
import { cutStretch, cutSystem, type Stretch } from './stretch'

/** A first drawing waits for 7 MB to load and compile; after this long the worker counts as hung. */
const patience = 30_000

interface Waiting {
  readonly caller: string
  readonly request: WorkerRequest
  readonly settle: (answer: Answer) => void
}

/** One worker, one drawing at a time; a failed worker is replaced at the next request. */
export const openEngraver = (startWorker: () => Worker = startEngraver): Engraver => {
  let worker: Worker | undefined
  let count = 0
  let queue: Waiting[] = []
  let timer: ReturnType<typeof setTimeout> | undefined

  const start = (): Worker => {
    const started = worker ?? startWorker()
    if (!worker) {
      worker = started
      started.addEventListener('message', ({ data }: MessageEvent<WorkerAnswer>) => hear(data))
      started.addEventListener('error', ({ message }) =>
        giveUp(message ? { kind: 'said', message } : { kind: 'stopped' }),
      )
    }
    return started
  }

  /** The head of the queue is what the worker draws now. */
  const sendNext = (): void => {
    clearTimeout(timer)
    const next = queue[0]
    if (!next) return
    timer = setTimeout(() => giveUp({ kind: 'unanswered', seconds: patience / 1000 }), patience)
    start().postMessage(next.request)
  }

  const hear = (answer: WorkerAnswer): void => {
    switch (answer.kind) {
      case 'ready':
        return
      case 'unloadable':
        return giveUp(said(answer.message))
      case 'drawn':
        return settleHead(answer.number, ok(answer.drawing))
      case 'failed':
        return settleHead(answer.number, failed(unableToDraw(said(answer.message))))
    }
  }

  const settleHead = (number: number, answer: Answer): void => {
    const head = queue[0]
    if (head?.request.number !== number) return
    queue = queue.slice(1)
    head.settle(answer)
    sendNext()
  }

  const giveUp = (fault: EngraverFault): void => {
    clearTimeout(timer)
    worker?.terminate()
    worker = undefined
    const lost = queue
    queue = []
    for (const { settle } of lost) settle(failed(unableToDraw(fault)))
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
    marks?: WorkerRequest['marks'],
  ): Promise<Answer> => {
    if (!stretch || box.width < 1 || box.height < 1)
      return Promise.resolve(failed({ kind: 'empty' }))
    supersede(caller)
    const request = { number: count++, stretch, box, ...(marks ? { marks } : {}) }
    return new Promise<Answer>((settle) => {
      queue = [...queue, { caller, request, settle }]
      if (queue.length === 1) sendNext()
    })
  }

  return {
    warm: () => void start(),
    engrave: ({ score, start: from, end, hand, width, height, fingers, caller }) =>
      ask(cutStretch(score, from, end, hand, fingers), { width, height }, caller),
    engraveSystem: ({ score, fromBar, toBar, width, space, fingers, marks, caller }) =>
      ask(
        cutSystem(score, fromBar, toBar, fingers),
        { width, height: Infinity, space },
        caller,
        marks,
      ),
    dispose: () => giveUp({ kind: 'closed' }),
  }
}

const said = (message: string): EngraverFault => ({ kind: 'said', message })

const startEngraver = (): Worker =>
  new Worker(new URL('./engraver.worker.ts', import.meta.url), { type: 'module' })
