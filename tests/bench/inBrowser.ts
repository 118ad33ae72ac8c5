/**
 * `npm run bench:store`: an append to the journal, and the review of all time, in a real browser over a
 * real database of no, 100,000 and two million repetitions; exit code 1 when a budget is exceeded.
 */
import { chromium } from '@playwright/test'
import { mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { findBrowser } from '../support/browser'
import { record } from './record'
import { dayCount } from './tenYears'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** The page's script as one text. */
const bundle = async (): Promise<string> => {
  const built = await build({
    configFile: false,
    root,
    logLevel: 'error',
    resolve: { alias: { '@': join(root, 'src') } },
    build: {
      write: false,
      minify: false,
      target: 'es2023',
      rollupOptions: { input: join(root, 'tests/bench/keptJournal.ts') },
    },
  })
  const [output] = [built].flat()
  const chunk = output && 'output' in output ? output.output[0] : undefined
  if (!chunk) throw new Error('nothing was built')
  return chunk.code
}

const script = await bundle()
const server = createServer(({ url }, answer) => {
  answer.setHeader('content-type', url === '/s.js' ? 'text/javascript' : 'text/html')
  answer.end(url === '/s.js' ? script : '<script type="module" src="/s.js"></script>')
})
await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening))
const address = server.address()
const port = typeof address === 'object' ? address?.port : undefined

const { executablePath, args, env } = await findBrowser()
// On the disk, as a person's journal is.
const profile = mkdtempSync(join(tmpdir(), 'passagework-bench-'))
const context = await chromium.launchPersistentContext(profile, {
  executablePath,
  args: [...args],
  env: { ...process.env, ...env },
})
const page = await context.newPage()
await page.goto(`http://127.0.0.1:${port}/`)
await page.waitForFunction(() => 'keptJournal' in window)
const tools = await context.newCDPSession(page)
const heapMb = async (): Promise<number> => {
  await tools.send('HeapProfiler.collectGarbage')
  return (await tools.send('Runtime.getHeapUsage')).usedSize / 1e6
}

const at = (times: readonly number[], share: number): number =>
  times.toSorted((a, b) => a - b)[Math.floor(times.length * share)] ?? NaN
/** Of the middle eight tenths, since a clock in steps of 0.1 ms makes a poor median of so little. */
const mean = (times: readonly number[]): number => {
  const middle = times
    .toSorted((a, b) => a - b)
    .slice(Math.floor(times.length * 0.1), Math.ceil(times.length * 0.9))
  return middle.reduce((sum, time) => sum + time, 0) / middle.length
}
const lines: string[] = []
let exceeded = false
const tell = (name: string, value: number, unit: string, budget?: number): void => {
  const over = budget !== undefined && !(value <= budget)
  exceeded ||= over
  const limit = budget === undefined ? '' : `  (budget ${budget}${over ? ', EXCEEDED' : ''})`
  lines.push(`${name.padEnd(58)} ${value.toPrecision(3).padStart(8)} ${unit}${limit}`)
  console.log(lines.at(-1))
}

try {
  const journals: { name: string; days: number; repetitions: number }[] = []
  for (const days of [0, 184, dayCount]) {
    const name = `journal of ${days}`
    const filling = [name, days] as const
    const repetitions = await page.evaluate(([to, n]) => window.keptJournal.fill(to, n), filling)
    journals.push({ name, days, repetitions })
  }
  const times = await page.evaluate((all) => window.keptJournal.append(all), journals)
  const [empty = []] = times
  for (const [i, { name, repetitions }] of journals.entries()) {
    const mine = times[i] ?? []
    const after = `after ${repetitions.toLocaleString('en')} repetitions`
    tell(`an append ${after}, median`, at(mine, 0.5), 'ms')
    tell(`an append ${after}, 99 of 100 within`, at(mine, 0.99), 'ms')
    // Constant means: no growth that the noise of a disk would not explain.
    const growth = mean(mine) / mean(empty)
    if (i > 0) tell(`an append ${after}, against none`, growth, 'times', 1.5)
    const review = await page.evaluate((of) => window.keptJournal.openReview(of), name)
    if (review.repetitions < repetitions) throw new Error(`${review.repetitions} were reviewed`)
    tell(`review opens ${after}`, review.ms, 'ms', 1000)
    tell(`memory of the page ${after}`, await heapMb(), 'MB', 200)
  }
  record('npm run bench:store', lines)
} finally {
  await context.close()
  server.close()
  rmSync(profile, { recursive: true, force: true, maxRetries: 3 })
}
process.exitCode = exceeded ? 1 : 0
