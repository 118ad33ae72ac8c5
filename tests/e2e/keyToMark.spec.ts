import { parseKey } from '@/music/pitch'
import { drawn, heard, openDrill, shown, stage } from './support/app'
import { playAndLook } from './support/playAndLook'
import { expect, test } from './support/test'

/** Bars 9 and 10 of the first piece, right hand: sixteen eighths. */
const passage = {
  place: '32-79_2/right',
  keys: 'C5 D5 E5 F5 G5 A5 B5 C6 D6 C6 B5 A5 G5 F5 E5 D5'
    .split(' ')
    .map((name) => parseKey(name) ?? 0),
}
/** 192 keys; the soak plays ten thousand. */
const repetitions = 12
const gapMs = 60

test('the mark of a key is in the next frame, while the metronome runs, and no task is long', async ({
  page,
  browser,
}) => {
  await openDrill(page, passage.place)
  await drawn(page)
  const metronome = page.getByRole('button', { name: 'Metronome' })
  await metronome.click()
  await expect(metronome).toHaveAttribute('aria-pressed', 'true')
  await heard(page)
  await browser.startTracing(page, { categories: ['toplevel', '__metadata'] })
  const sights = await playAndLook(page, { ...passage, keyboard: stage, gapMs, repetitions })
  const tasks = tasksOf(await browser.stopTracing())
  tell(
    'in the judge, the coach and the page',
    sights.map((sight) => sight.heard),
  )
  tell(
    'key to mark in the document',
    sights.map((sight) => sight.marked),
  )
  tell(
    'key to the end of the frame with the mark',
    sights.map((sight) => sight.painted),
  )
  expect(sights).toHaveLength(repetitions * passage.keys.length)
  await expect(shown(page).strokes).toHaveCount(repetitions)
  expect(sights.filter(({ marks, wanted }) => marks < wanted)).toEqual([])
  // Other programs may take the processor away amid a task: what counts is the page's own work.
  expect(tasks.length).toBeGreaterThan(sights.length)
  expect(tasks.filter(({ work }) => work > 50)).toEqual([])
  await expect(metronome).toHaveAttribute('aria-pressed', 'true')
})

interface TraceEvent {
  readonly name: string
  readonly pid: number
  readonly tid: number
  /** Microseconds: of the wall clock, and of the processor's work for this thread alone. */
  readonly dur?: number
  readonly tdur?: number
  readonly args?: { readonly name?: string }
}

/** The tasks of the page's main thread in a trace of the browser, ms. */
const tasksOf = (trace: Buffer): { readonly wall: number; readonly work: number }[] => {
  const { traceEvents } = JSON.parse(trace.toString()) as { traceEvents: readonly TraceEvent[] }
  const mains = traceEvents.filter(
    ({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain',
  )
  return traceEvents
    .filter(({ name }) => name.endsWith('RunTask'))
    .filter(({ pid, tid }) => mains.some((main) => main.pid === pid && main.tid === tid))
    .map(({ dur = 0, tdur = 0 }) => ({ wall: dur / 1000, work: tdur / 1000 }))
}

const tell = (what: string, times: readonly number[]): void => {
  const sorted = times.toSorted((a, b) => a - b)
  const at = (share: number): string =>
    (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN).toFixed(1)
  console.log(`${what}, ms: median ${at(0.5)}, p99 ${at(0.99)}, max ${at(1)}`)
}
