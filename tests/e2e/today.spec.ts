import { fileURLToPath } from 'node:url'
import type { Page } from '@playwright/test'
import { parseRoute } from '@/app/route'
import { chunkAt } from '@/music/place'
import { monthOfPractice, sampleScore } from '../support/monthOfPractice'
import {
  drawn,
  goTo,
  heard,
  idOf,
  journal,
  openApp,
  shown,
  stage,
  withoutTrial,
} from './support/app'
import { violations } from './support/axe'
import { takeIn } from './support/record'
import { overflow } from './support/screens'
import { expect, test } from './support/test'

const shots = fileURLToPath(new URL('./shots', import.meta.url))
// Days are those of the machine's own time zone.
test.use({ timezoneId: 'UTC' })

const ferry = idOf('ferry-at-dusk.mid')
const scores = ['ferry-at-dusk.mid', 'morning-at-the-mill.mid'].map(sampleScore)

/** A profile with a month of practice behind it. */
const openMonth = async (page: Page): Promise<void> => {
  await openApp(page, { address: '#/taptest' })
  await page.getByRole('heading', { name: 'Tap test' }).waitFor()
  await withoutTrial(page)
  await takeIn(page, monthOfPractice(Date.now()))
  await goTo(page, '#/')
  await page.getByRole('heading', { name: 'Pieces', exact: true }).waitFor()
}

/** Milliseconds a quarter: brisk, and steady. */
const quarter = 220

/** Plays once what is on the desk, as written, and waits for the verdict. */
const playThrough = async (page: Page): Promise<void> => {
  const route = parseRoute(new URL(page.url()).hash)
  if (route.kind !== 'practice') throw new Error(`no drill at ${page.url()}`)
  const score = scores.find(({ id }) => id === route.piece)
  const chunk = score && chunkAt(score, route.place)
  if (!chunk) throw new Error(`no chunk at ${page.url()}`)
  const at = (tick: number): number => (tick / chunk.ticksPerQuarter) * quarter
  const messages = chunk.onsets
    .flatMap(({ start, notes }) =>
      notes.flatMap(({ key }) => [
        { bytes: [0x90, key, 64], at: at(start) },
        { bytes: [0x80, key, 0], at: at(start) + 0.3 * quarter },
      ]),
    )
    .toSorted((a, b) => a.at - b.at)
  await heard(page)
  const said = await shown(page).message.innerText()
  await page.evaluate(([name, all]) => window.fakeMidi.play(name, all), [stage, messages] as const)
  await expect(shown(page).message).not.toHaveText(said)
}

/** The item of today that is on the desk. */
const onDesk = (page: Page) => page.locator('.day-line')
const number = async (page: Page): Promise<number> =>
  Number(await onDesk(page).getAttribute('data-number'))
const reached = (page: Page, item: number): Promise<void> =>
  expect(onDesk(page)).toHaveAttribute('data-number', String(item), { timeout: 15_000 })

test('after a month: today’s plan is made, and played item after item with the hands on the keys', async ({
  page,
}) => {
  test.slow()
  await openMonth(page)
  await page.keyboard.press('t')
  await page.getByRole('heading', { name: 'Today' }).waitFor()
  const rows = page.locator('.day-list li')
  await expect(rows.first()).toHaveAttribute('data-kind', 'warmUp')
  const kinds = (): Promise<(string | null)[]> =>
    rows.evaluateAll((all) => all.map((row) => row.getAttribute('data-kind')))
  await page.keyboard.press('ArrowUp')
  await expect(page.locator('.day-minutes')).toContainText('35 minutes')
  await page.keyboard.press('ArrowDown')
  await expect(page.locator('.today-sum')).toContainText('30 minutes')
  const planned = await kinds()
  expect(planned).toContain('coldCheck')
  const begun = Date.now()
  // From here on no mouse.
  await page.keyboard.press('Enter')
  await page.locator('.practice').waitFor()
  await reached(page, 1)
  await expect(onDesk(page)).toContainText('3 min left')
  await drawn(page)
  await playThrough(page)
  await expect(shown(page).message).toContainText('Clean.')
  // Shortened: on to the cold checks.
  await page.keyboard.press('ArrowRight')
  await reached(page, 2)
  await expect(onDesk(page)).toContainText('cold check')
  await playThrough(page)
  await expect(shown(page).message).toContainText('Next:')
  // One item flows into the next after a breath.
  await reached(page, 3)
  const third = await onDesk(page).getAttribute('data-kind')
  expect(third).toBe('coldCheck')
  const before = page.url()
  // Played later: the next place comes first, and this one after it.
  await page.keyboard.press('ArrowLeft')
  await page.waitForURL((url) => url.href !== before)
  await reached(page, 3)
  await expect(onDesk(page)).not.toHaveAttribute('data-kind', 'coldCheck')
  // What is said of today pushes nothing out of the window.
  await expect(page.locator('.passage-line')).toBeVisible()
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBe(800)
  await page.reload()
  await page.locator('.practice').waitFor()
  await reached(page, 3)
  await drawn(page)
  await playThrough(page)
  const after = await number(page)
  // Skipped without having been played: left for another day.
  await page.keyboard.press('ArrowRight')
  await reached(page, after + 1)
  await page.keyboard.press('ArrowRight')
  await reached(page, after + 2)
  await page.keyboard.press('Escape')
  await page.getByRole('heading', { name: 'This session' }).waitFor()
  await expect(page.locator('.share')).toHaveAttribute('data-share', '1')
  await goTo(page, '#/today')
  await expect(page.locator('.day-list li[data-outcome=done]')).not.toHaveCount(0)
  await expect(page.locator('.day-list li[data-outcome=left]')).toHaveCount(1)
  await expect(page.locator('.day-list li[data-on=true]')).toHaveCount(1)
  // A check is one repetition of a whole place at its goal tempo.
  const events = (await journal(page)).filter(({ atEpochMs }) => atEpochMs >= begun)
  const checks = events.flatMap((e) =>
    e.kind === 'drillBegun' && !e.reach && !e.passage ? [e.drill] : [],
  )
  const played = checks.map(
    (drill) => events.filter((e) => e.kind === 'repetition' && e.drill === drill).length,
  )
  expect(played).toContain(1)
  expect(Math.max(...played)).toBe(1)
})

test('the pages of the plan are whole, readable and accessible, narrow and wide, by day and in the evening', async ({
  page,
}) => {
  test.slow()
  await openMonth(page)
  await expect(page.locator('.today-way a')).toBeVisible()
  const found: string[] = []
  for (const [name, address, ready] of [
    ['today', '#/today', '.day-list li'],
    ['weeks', `#/plan/${ferry}`, '.plan-word[data-word] p'],
  ] as const) {
    await goTo(page, address)
    await page.locator(ready).first().waitFor()
    await page.getByText('The same as a table').or(page.locator('.day-list')).first().click()
    for (const width of [320, 390, 820, 1280, 1920]) {
      await page.setViewportSize({ width, height: width < 500 ? 844 : 1080 })
      await expect.poll(() => overflow(page), `${name} ${width}`).toEqual({ by: 0, out: [] })
      for (const colorScheme of width === 320 ? [] : (['light', 'dark'] as const)) {
        await page.emulateMedia({ colorScheme })
        if (width === 390)
          for (const each of await violations(page, colorScheme === 'light' ? 'all' : 'colours'))
            found.push(`${name}, ${width}, ${colorScheme}: ${each}`)
        const path = `${shots}/${name}-${width}-${colorScheme}.png`
        await page.screenshot({ path, animations: 'disabled', fullPage: true })
      }
    }
  }
  expect(found).toEqual([])
})

test('the weeks of a piece: a stretch of the picture leads to its build-up, and its estimate goes with the minutes', async ({
  page,
}) => {
  await openApp(page, { address: `#/plan/${ferry}` })
  const weeks = page.locator('.plan-weeks b')
  await expect(weeks).toContainText('weeks')
  // Without a record it says what the estimate rests on.
  await expect(page.getByText('Estimated without a record')).toBeVisible()
  await expect(page.locator('.plan-word')).toContainText('Nothing is kept yet')
  const usual = await weeks.innerText()
  await page.getByRole('combobox', { name: 'Minutes a day' }).selectOption('10')
  await expect(weeks).not.toHaveText(usual)
  const left = page.locator('.plan-stretches[data-lane=left] a').first()
  await expect(left).toHaveAttribute('data-state', 'untouched')
  await left.click()
  await page.getByRole('heading', { name: 'Build-up' }).waitFor()
  await expect(page.getByRole('combobox', { name: 'Hands' })).toHaveValue('left')
  // Nothing is practised yet: today asks for a piece, and begins with its hardest place.
  await goTo(page, '#/today')
  await expect(page.getByText('Choose a piece: its hardest place comes first.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Start' })).toBeDisabled()
  await page.getByRole('checkbox', { name: 'Ferry at Dusk' }).check()
  await expect(page.locator('.day-list li[data-kind=newGroup]').first()).toContainText('bars 9–12')
  await expect(page.getByRole('button', { name: 'Start' })).toBeEnabled()
})
