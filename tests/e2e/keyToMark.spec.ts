import type { Page } from '@playwright/test'
import { parseKey } from '@/music/pitch'
import { drawn, heard, openDrill, shown, stage } from './support/app'
import { expect, test } from './support/test'

/** Bars 9 and 10 of the first piece, right hand: sixteen eighths. */
const passage = {
  place: '32-79_2/right',
  keys: 'C5 D5 E5 F5 G5 A5 B5 C6 D6 C6 B5 A5 G5 F5 E5 D5'.split(' ').map((name) => parseKey(name)),
}
/** 304 keys. */
const repetitions = 19
const gapMs = 60

interface Sight {
  /** From the dispatch of the key to its end: judge, coach and page together. */
  readonly heard: number
  /** From the dispatch to the moment at which the mark stands in the document. */
  readonly marked: number
  /** From the dispatch to the beginning of the frame after that one: the mark is painted by then. */
  readonly painted: number
  /** Marks on the notation in the first frame after the key, and how many there are with its own. */
  readonly marks: number
  readonly wanted: number
}

test('the mark of a key is in the next frame, while the metronome runs, and no task is long', async ({
  page,
}) => {
  test.setTimeout(120_000)
  await openDrill(page, passage.place)
  await drawn(page)
  const metronome = page.getByRole('button', { name: 'Metronome' })
  await metronome.click()
  await expect(metronome).toHaveAttribute('aria-pressed', 'true')
  await heard(page)
  await watchLongTasks(page)
  const sights = await playAndLook(page)
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
  expect(sights).toHaveLength(304)
  await expect(shown(page).strokes).toHaveCount(repetitions)
  expect(sights.filter(({ marks, wanted }) => marks < wanted)).toEqual([])
  expect(await longTasks(page), 'tasks over 50 ms').toEqual([])
  await expect(metronome).toHaveAttribute('aria-pressed', 'true')
})

/**
 * Plays the passage again and again, each time when the verdict of the last shows; each key is
 * dispatched with the present time. All of it runs in the page, so that nothing of the test's own
 * falls between two keys.
 */
const playAndLook = (page: Page): Promise<Sight[]> =>
  page.evaluate(
    async ([keyboard, keys, gap, times]) => {
      const frame = (): Promise<number> => new Promise((seen) => requestAnimationFrame(seen))
      const svg = document.querySelector('.notation svg')
      if (!svg) throw new Error('there is no notation')
      let changedAt = 0
      new MutationObserver(() => {
        changedAt = performance.now()
      }).observe(svg, { childList: true, subtree: true })
      const strokes = document.getElementsByClassName('stroke-clean')
      const look = async (key: number, place: number): Promise<Sight> => {
        const sent = performance.now()
        window.fakeMidi.send(keyboard, [0x90, key, 64], sent)
        const done = performance.now()
        await frame()
        const marks = svg.querySelectorAll('.pencil > g').length
        const marked = changedAt - sent
        const next = await frame()
        window.fakeMidi.send(keyboard, [0x80, key, 0])
        return { heard: done - sent, marked, painted: next - sent, marks, wanted: place + 1 }
      }
      const sights: Promise<Sight>[] = []
      for (let played = 0; played < times; played++) {
        while (strokes.length < played) await frame()
        const begin = performance.now()
        for (const [place, key] of keys.entries()) {
          const wait = begin + place * gap - performance.now()
          if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait))
          sights.push(look(key ?? 0, place))
        }
      }
      return Promise.all(sights)
    },
    [stage, passage.keys, gapMs, repetitions] as const,
  )

declare global {
  interface Window {
    longTasks: number[]
  }
}

const watchLongTasks = (page: Page): Promise<void> =>
  page.evaluate(() => {
    window.longTasks = []
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) window.longTasks.push(duration)
    }).observe({ type: 'longtask' })
  })
const longTasks = (page: Page): Promise<readonly number[]> => page.evaluate(() => window.longTasks)

const tell = (what: string, times: readonly number[]): void => {
  const sorted = times.toSorted((a, b) => a - b)
  const at = (share: number): string =>
    (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN).toFixed(1)
  console.log(`${what}, ms: median ${at(0.5)}, p99 ${at(0.99)}, max ${at(1)}`)
}
