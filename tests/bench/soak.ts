/**
 * `npm run soak`: an hour's worth of keys in one sitting, as fast as a drill can be played: 10,000
 * strikes, each with its release, slips among them, the metronome on, the notation engraved anew each
 * time the window changes. Looks at memory and nodes of the page, at every key, and at the frame of
 * each mark; then plays on with the processor four times slower. Needs a built page (`npm run build`).
 * Exit code 1 where something grows, is lost, or comes late.
 */
import { chromium, type CDPSession } from '@playwright/test'
import { preview } from 'vite'
import { drawn, heard, journal, openDrill, shown, stage } from '../e2e/support/app'
import { describeSights, playAndLook, sixteenEighths, type Sight } from '../e2e/support/playAndLook'
import { findBrowser } from '../support/browser'
import { record } from './record'

const { place, keys } = sixteenEighths
const gapMs = 60
const strikes = Number(process.argv.slice(2).find((word) => !word.startsWith('--')) ?? 10_000)
const batches = 10
const repetitions = Math.ceil(strikes / keys.length / batches)
/** Between the second batch, when all code is warm, and the last: more than that is a leak. */
const mayGrow = { heap: 1.25, nodes: 1.1 }

interface Weight {
  readonly heapMb: number
  readonly nodes: number
  readonly listeners: number
}

const weigh = async (cdp: CDPSession): Promise<Weight> => {
  await cdp.send('HeapProfiler.collectGarbage')
  const { metrics } = await cdp.send('Performance.getMetrics')
  const of = (name: string): number => metrics.find((metric) => metric.name === name)?.value ?? NaN
  return {
    heapMb: of('JSHeapUsedSize') / 1e6,
    nodes: of('Nodes'),
    listeners: of('JSEventListeners'),
  }
}

const told: string[] = []
const say = (line: string): void => {
  told.push(line)
  console.log(line)
}
let failures = 0
const check = (what: string, holds: boolean, seen: string): void => {
  if (!holds) failures++
  say(`${holds ? 'holds ' : 'FAILS '} ${what}: ${seen}`)
}

const server = await preview({ preview: { port: 0 }, logLevel: 'error' })
const baseURL = server.resolvedUrls?.local[0] ?? ''
const { executablePath, args, env } = await findBrowser()
const browser = await chromium.launch({
  executablePath,
  args: [...args],
  env: { ...process.env, ...env } as Record<string, string>,
})
const context = await browser.newContext({
  baseURL,
  viewport: { width: 1280, height: 800 },
  serviceWorkers: 'block',
})
const page = await context.newPage()
// What runs these files leaves calls of this name in functions that are sent into the page.
await page.addInitScript('globalThis.__name = (made) => made')
const problems: string[] = []
page.on('pageerror', (error) => problems.push(error.message))
await openDrill(page, place)
await drawn(page)
await page.getByRole('button', { name: 'Metronome' }).click()
await heard(page)
const cdp = await context.newCDPSession(page)
await cdp.send('Performance.enable')

const sights: Sight[] = []
const weights: Weight[] = []
const playOn = async (times: number): Promise<void> => {
  sights.push(
    ...(await playAndLook(page, { keyboard: stage, keys, gapMs, repetitions: times, slipEach: 3 })),
  )
}
for (let batch = 0; batch < batches; batch++) {
  // The notation is engraved anew, as when a tablet is turned.
  await page.setViewportSize({ width: 1280 - (batch % 2) * 80, height: 800 })
  await drawn(page)
  await page.waitForTimeout(500)
  await playOn(repetitions)
  const weight = await weigh(cdp)
  weights.push(weight)
  say(
    `${sights.length} keys: ${weight.heapMb.toFixed(1)} MB, ${weight.nodes} nodes, ${weight.listeners} listeners`,
  )
}
for (const line of describeSights(sights)) say(line)

const [warm, last] = [weights[1] ?? weights[0], weights.at(-1)]
if (warm && last) {
  check(
    'memory is flat',
    last.heapMb < warm.heapMb * mayGrow.heap,
    `${warm.heapMb.toFixed(1)} MB, then ${last.heapMb.toFixed(1)}`,
  )
  check(
    'so is the page',
    last.nodes < warm.nodes * mayGrow.nodes,
    `${warm.nodes}, then ${last.nodes} nodes`,
  )
}
const recorded = (await journal(page)).filter(({ kind }) => kind === 'repetition')
check(
  'every repetition is in the record',
  recorded.length === batches * repetitions,
  `${recorded.length} of ${batches * repetitions}`,
)
const unmarked = sights.filter(({ marks, wanted }) => marks < wanted).length
check(
  'every key is marked in the frame after it',
  unmarked === 0,
  `${unmarked} not, of ${sights.length}`,
)

const quick = sights.length
await cdp.send('Emulation.setCPUThrottlingRate', { rate: 4 })
await playOn(20)
await cdp.send('Emulation.setCPUThrottlingRate', { rate: 1 })
const slow = sights.slice(quick)
for (const line of describeSights(slow)) say(`four times slower, ${line}`)
const late = slow.filter(({ marks, wanted }) => marks < wanted).length
check('the mark is in the frame all the same', late === 0, `${late} not, of ${slow.length}`)
check('the streak is shown', (await shown(page).streak.count()) === 1, 'the drill is on the page')
check('no error on the page', problems.length === 0, problems.join('; ') || 'none')

record('npm run soak', told)
await browser.close()
await server.close()
process.exitCode = failures > 0 ? 1 : 0
