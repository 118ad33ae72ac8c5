import type { Page } from '@playwright/test'
import { drillId, eventId, sessionId } from '@/journal/ids'
import { journalVersion, type JournalEvent } from '@/journal/journal'
import type { Note } from '@/music/music'
import { chunkId, key, tempo, type PieceId } from '@/music/units'
import { readPiece } from '@/score/readPiece'
import { drawn, goTo, idOf, openApp, openDrill, repetition } from './support/app'
import { violations } from './support/axe'
import { longPiece } from './support/longPiece'
import { bring } from './support/pieces'
import { takeIn } from './support/record'
import { overflow, shots } from './support/screens'
import { expect, test } from './support/test'
import { yearOfPractice } from './support/yearOfPractice'

declare global {
  interface Window {
    /** When each sample was told to sound, seconds on the audio clock. */
    started: number[]
  }
}

test.use({ timezoneId: 'UTC' })

const mill = idOf('morning-at-the-mill.mid')
const rows = (page: Page) => page.locator('.repetition')
const verdictsIn = (page: Page) =>
  rows(page).evaluateAll((all) => all.map((row) => row.getAttribute('data-verdict')))

/** A key too high at a note, in a drill of that note alone. */
const flawAt = (piece: PieceId, { id, key: written }: Note, seconds: number): JournalEvent => ({
  v: journalVersion,
  id: eventId(`flaw ${seconds}`),
  session: sessionId('s1'),
  atEpochMs: Date.UTC(2026, 4, 1, 12) + seconds * 1_000,
  kind: 'repetition',
  drill: drillId('d1'),
  piece,
  chunk: chunkId(`${piece}:${id}`),
  rung: tempo(60),
  standard: 'flow',
  forgiveBrushed: false,
  verdict: 'flawed',
  tookMs: 500,
  flaws: [{ kind: 'wrong', onset: 0, notes: [id], written, played: key(written + 1) }],
  figures: {},
  take: '',
})

/** Every buffer that is started is still started. */
const watchSamples = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    window.started = []
    const start: (this: AudioBufferSourceNode, ...times: (number | undefined)[]) => void =
      Reflect.get(AudioBufferSourceNode.prototype, 'start')
    AudioBufferSourceNode.prototype.start = function (when = 0, ...rest) {
      if ((this.buffer?.duration ?? 0) > 0.5) window.started.push(when)
      return start.call(this, when, ...rest)
    }
  })

test('from a number to its repetitions, one seen with its marks and heard in its own time, and back to the number', async ({
  page,
}) => {
  await watchSamples(page)
  await openDrill(page)
  const wrong = 'C5 D5 E5 F#5 G5'
  for (const notes of ['C5 D5 E5 F5 G5', wrong, 'C5 D5 E5 F5 G5', 'C5 D5 E5 F5 G5'])
    await repetition(page, notes, { gap: notes === wrong ? 260 : 150 })
  await page.keyboard.press('Escape')
  await expect(page.locator('.flaw-line .pencil-flaw[data-shape=wrong]')).toHaveCount(1)
  await page.getByRole('main').getByRole('link', { name: '3', exact: true }).click()
  await expect(rows(page)).toHaveCount(3)
  expect(await verdictsIn(page)).toEqual(['clean', 'clean', 'clean'])
  // A condition taken away: all four, the last one first.
  await page.getByRole('link', { name: 'Not only: clean' }).click()
  await expect(rows(page)).toHaveCount(4)
  expect(await verdictsIn(page)).toEqual(['clean', 'clean', 'flawed', 'clean'])
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('ArrowDown')
  await expect(rows(page).nth(2)).toHaveAttribute('aria-pressed', 'true')
  const seen = page.locator('.seen')
  await expect(seen).toContainText('F♯5 in place of F5')
  await drawn(page)
  await expect(seen.locator('.pencil-right')).toHaveCount(4)
  await expect(seen.locator('.pencil-flaw[data-shape=wrong]')).toHaveCount(1)
  await expect(seen.locator('.strike')).toHaveCount(5)
  await expect(seen.locator('.strike.flaw')).toHaveCount(1)
  expect(await page.evaluate(() => window.started)).toEqual([])
  await page.keyboard.press('h')
  await expect.poll(() => page.evaluate(() => window.started.length)).toBe(5)
  const started = await page.evaluate(() => window.started)
  for (const [i, at] of started.slice(1).entries())
    expect(at - (started[i] ?? 0)).toBeCloseTo(0.26, 2)
  await expect(page.getByRole('button', { name: /^Stop/ })).toBeVisible()
  await page.keyboard.press('h')
  await expect(page.getByRole('button', { name: /^Hear it again/ })).toBeVisible()
  await page.getByText('Options', { exact: true }).click()
  await page.getByRole('checkbox', { name: 'Sound' }).uncheck()
  await page.getByText('Options', { exact: true }).click()
  await expect(page.getByRole('button', { name: /^Hear it again/ })).toBeDisabled()
  await page.keyboard.press('h')
  expect(await page.evaluate(() => window.started)).toHaveLength(5)
  // Back, and to the flaw at its note.
  await page.keyboard.press('Escape')
  await page.getByRole('checkbox', { name: 'how often, in numbers' }).check()
  const count = page.locator('.flaw-count')
  await expect(count).toHaveText('1')
  await count.click()
  await expect(page.getByLabel('Only these')).toContainText('at F5 in bar 9, beat 2')
  expect(await verdictsIn(page)).toEqual(['flawed'])
  await page.keyboard.press('Escape')
  await page.getByRole('heading', { name: 'This session' }).waitFor()
  await goTo(page, `#/review/${mill}`)
  const flawed = page.locator('.share').getByRole('link', { name: '1', exact: true })
  await flawed.click()
  await rows(page).first().waitFor()
  await page.keyboard.press('Escape')
  await expect(flawed).toBeFocused()
  // Of two ways to all repetitions, back to the one that was taken.
  for (const way of [
    page.locator('.amount a'),
    page.locator('.review-head a[href*=repetitions]'),
  ]) {
    await way.click()
    await rows(page).first().waitFor()
    await page.keyboard.press('Escape')
    await expect(way).toBeFocused()
  }
  await page.locator('.bar-table td.number').getByRole('link', { name: '1' }).click()
  await expect(page.getByLabel('Only these')).toContainText('with a flaw in bar 9')
  expect(await verdictsIn(page)).toEqual(['flawed'])
  await page.keyboard.press('Escape')
  // Two after the flawed one, where four were played.
  await page.locator('.chunk-table td[data-label="Longest streak"]').getByRole('link').click()
  await expect(rows(page)).toHaveCount(2)
  expect(await verdictsIn(page)).toEqual(['clean', 'clean'])
})

test('of a very long piece the flaws are marked line by line, where one looks', async ({
  page,
}) => {
  test.slow()
  const bytes = longPiece()
  const read = readPiece(bytes, 'long.mid')
  if (!read.ok) throw new Error(read.reason.kind)
  const { score } = read.value
  await openApp(page, { address: '#/journal' })
  await page.getByRole('heading', { name: 'The record' }).waitFor()
  await bring(page, 'long.mid', bytes)
  await page.getByRole('heading', { name: 'A Long Walk' }).waitFor()
  // At the first right-hand note of every second bar another key, once in the first half, three times in the second.
  const flawed = score.bars.flatMap((bar, i) => {
    const note = score.notes.find(({ start, hand }) => start === bar.start && hand === 'right')
    return i % 2 === 0 && note ? [{ note, times: i < 250 ? 1 : 3 }] : []
  })
  await takeIn(
    page,
    flawed.flatMap(({ note, times }, i) =>
      Array.from({ length: times }, (_, n) => flawAt(score.id, note, i * 10 + n)),
    ),
  )
  await goTo(page, `#/review/${score.id}`)
  const lines = page.locator('.flaw-line')
  await lines.first().waitFor()
  expect(await lines.count()).toBeGreaterThan(50)
  await lines.first().scrollIntoViewIfNeeded()
  await expect(lines.first().locator('.pencil-flaw[data-weight=light]').first()).toBeVisible()
  await lines.last().scrollIntoViewIfNeeded()
  await expect(lines.last().locator('.pencil-flaw[data-weight=heavy]').first()).toBeVisible()
  await expect(lines.first().locator('svg')).toHaveCount(0)
  expect(await page.locator('.flaw-line svg').count()).toBeLessThan(30)
})

test('packed days of a year are reached, as many as the review counts; the list is whole in every size', async ({
  page,
}) => {
  test.slow()
  const events = yearOfPractice(Date.UTC(2026, 5, 1, 18))
  await openApp(page, { address: '#/journal' })
  await takeIn(page, events)
  // Packed while the program opens.
  await page.reload()
  await goTo(page, '#/review')
  await page.getByText('The figures as a table').click()
  const cell = page.locator('.plot-table tbody tr').last().locator('td[data-label=Flawed] a')
  const flawed = Number(await cell.innerText())
  expect(flawed).toBe(
    events.filter(
      (e) =>
        e.kind === 'repetition' &&
        e.verdict === 'flawed' &&
        new Date(e.atEpochMs - 4 * 3_600_000).toISOString().startsWith('2025-06'),
    ).length,
  )
  await cell.click()
  await rows(page).first().waitFor()
  while (await page.getByRole('button', { name: /^Earlier days/ }).isVisible()) {
    const before = await rows(page).count()
    await page.keyboard.press('m')
    await expect.poll(() => rows(page).count()).toBeGreaterThan(before)
  }
  await expect(rows(page)).toHaveCount(flawed)
  await expect(page.getByRole('status')).toHaveText(`${flawed} repetitions.`)
  const found: string[] = []
  await goTo(page, `#/repetitions/piece=${mill}/flaw=wrong`)
  await rows(page).first().waitFor()
  await drawn(page)
  for (const [width, height] of [
    [320, 844],
    [390, 844],
    [820, 1180],
    [1280, 800],
    [1920, 1080],
  ] as const) {
    await page.setViewportSize({ width, height })
    await expect.poll(() => overflow(page), `${width}`).toEqual({ by: 0, out: [] })
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      if (width === 320 || (colorScheme === 'dark' && width !== 1280)) continue
      for (const each of await violations(page, colorScheme === 'light' ? 'all' : 'colours'))
        found.push(`${width}, ${colorScheme}: ${each}`)
      const path = `${shots}/repetitions-${width}-${colorScheme}.png`
      await page.screenshot({ path, animations: 'disabled' })
    }
  }
  expect(found).toEqual([])
})
