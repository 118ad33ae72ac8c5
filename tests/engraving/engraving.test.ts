import { describe, expect, test } from 'vitest'
import { createEngraver, type EngravingRequest } from '@/engraving/engraving'
import { openEngraver } from '@/engraving/openEngraver'
import type { WorkerAnswer, WorkerRequest } from '@/engraving/exchange'
import { tick } from '@/music/units'
import { scoreOf } from './notation'

/** A worker below the standard interface that answers when it is told to. */
class FakeWorker extends EventTarget {
  readonly asked: WorkerRequest[] = []
  ended = false
  postMessage(request: WorkerRequest): void {
    this.asked.push(structuredClone(request))
  }
  terminate(): void {
    this.ended = true
  }
  say(answer: WorkerAnswer): void {
    this.dispatchEvent(new MessageEvent('message', { data: answer }))
  }
  draw(text: string): void {
    const number = this.asked.at(-1)?.number ?? -1
    this.say({ kind: 'drawn', number, drawing: { svg: text, width: 1, height: 1 } })
  }
  crash(): void {
    this.dispatchEvent(new Event('error'))
  }
}

const open = () => {
  const workers: FakeWorker[] = []
  const engraver = openEngraver(() => {
    const worker = new FakeWorker()
    workers.push(worker)
    return worker as unknown as Worker
  })
  return { engraver, workers, worker: (n = 0): FakeWorker => workers[n] ?? new FakeWorker() }
}

const score = scoreOf('C4 1 D4 1 E4 1 F4 1 | G4 4')
const request = (more: Partial<EngravingRequest> = {}): EngravingRequest => ({
  score,
  start: tick(0),
  end: score.end,
  hand: 'right',
  width: 600,
  height: 200,
  ...more,
})

describe('the engraver', () => {
  test('starts no worker before the first drawing, and one for all', async () => {
    const { engraver, workers, worker } = open()
    expect(workers).toHaveLength(0)
    const first = engraver.engrave(request())
    worker().draw('one')
    expect(await first).toEqual({ ok: true, value: { svg: 'one', width: 1, height: 1 } })
    const second = engraver.engrave(request())
    worker().draw('two')
    expect(await second).toMatchObject({ ok: true, value: { svg: 'two' } })
    expect(workers).toHaveLength(1)
  })

  test('the latest request of a caller wins; another caller is left alone', async () => {
    const { engraver, worker } = open()
    const first = engraver.engrave(request({ caller: 'page' }))
    const other = engraver.engrave(request({ caller: 'review' }))
    const second = engraver.engrave(request({ caller: 'page' }))
    const third = engraver.engrave(request({ caller: 'page' }))
    worker().draw('first, too late')
    worker().draw('other')
    worker().draw('third')
    expect(await first).toEqual({ ok: false, reason: { kind: 'superseded' } })
    expect(await second).toEqual({ ok: false, reason: { kind: 'superseded' } })
    expect(await other).toMatchObject({ value: { svg: 'other' } })
    expect(await third).toMatchObject({ value: { svg: 'third' } })
    expect(worker().asked).toHaveLength(3)
  })

  test('a crash fails what waits with a sentence, and the next request gets a new worker', async () => {
    const { engraver, workers, worker } = open()
    const lost = [
      engraver.engrave(request({ caller: 'a' })),
      engraver.engrave(request({ caller: 'b' })),
    ]
    worker().crash()
    for (const answer of await Promise.all(lost))
      expect(answer).toMatchObject({
        ok: false,
        reason: { kind: 'failed', fault: { kind: 'stopped' } },
      })
    expect(worker().ended).toBe(true)
    const next = engraver.engrave(request())
    worker(1).draw('again')
    expect(await next).toMatchObject({ value: { svg: 'again' } })
    expect(workers).toHaveLength(2)
  })

  test('an engraver that cannot be loaded is a problem, not a wait', async () => {
    const { engraver, worker } = open()
    const answer = engraver.engrave(request())
    worker().say({ kind: 'unloadable', message: 'offline' })
    expect(await answer).toMatchObject({
      reason: { fault: { kind: 'said', message: 'offline' } },
    })
  })

  test('a drawing that fails fails alone', async () => {
    const { engraver, workers, worker } = open()
    const bad = engraver.engrave(request({ caller: 'a' }))
    const good = engraver.engrave(request({ caller: 'b' }))
    worker().say({ kind: 'failed', number: 0, message: 'odd bar' })
    worker().draw('good')
    expect(await bad).toMatchObject({ ok: false, reason: { kind: 'failed' } })
    expect(await good).toMatchObject({ ok: true })
    expect(workers).toHaveLength(1)
  })

  test.each([
    ['no length', { end: tick(0) }],
    ['no room', { width: 0 }],
  ])('%s is said to be empty', async (_, more) => {
    const { engraver, workers } = open()
    expect(await engraver.engrave(request(more))).toEqual({ ok: false, reason: { kind: 'empty' } })
    expect(workers).toHaveLength(0)
  })

  test('the worker is sent the stretch alone, not the piece', async () => {
    const { engraver, worker } = open()
    void engraver.engrave(request({ start: tick(0), end: tick(480) }))
    expect(worker().asked[0]?.stretch.notes.map((n) => n.key)).toEqual([60])
    expect(worker().asked[0]?.stretch.bars).toHaveLength(2)
  })

  test('closing ends the worker', () => {
    const { engraver, worker } = open()
    engraver.warm()
    engraver.dispose()
    expect(worker().ended).toBe(true)
  })
})

describe('before the first drawing', () => {
  const problem = (answer: unknown) => expect(answer).toMatchObject({ reason: { kind: 'failed' } })

  test('nothing is loaded; then once, and requests keep their order', async () => {
    const { engraver, workers, worker } = open()
    let loads = 0
    const lazy = createEngraver(() => {
      loads++
      return Promise.resolve({ openEngraver: () => engraver })
    })
    expect(loads).toBe(0)
    const first = lazy.engrave(request({ caller: 'page' }))
    const second = lazy.engrave(request({ caller: 'page' }))
    expect(await first).toEqual({ ok: false, reason: { kind: 'superseded' } })
    worker().draw('first, too late')
    worker().draw('second')
    expect(await second).toMatchObject({ value: { svg: 'second' } })
    expect([loads, workers.length]).toEqual([1, 1])
  })

  test('what cannot be loaded is a problem, and the next request tries again', async () => {
    const { engraver, worker } = open()
    let isOnline = false
    const lazy = createEngraver(() =>
      isOnline
        ? Promise.resolve({ openEngraver: () => engraver })
        : Promise.reject(new Error('no network')),
    )
    lazy.warm()
    problem(await lazy.engrave(request()))
    isOnline = true
    const again = lazy.engrave(request())
    await Promise.resolve()
    await Promise.resolve()
    worker().draw('again')
    expect(await again).toMatchObject({ value: { svg: 'again' } })
  })
})
