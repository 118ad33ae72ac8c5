import type { Page } from '@playwright/test'
import { goTo, heard, idOf, openApp, openDrill, repetition, shown } from './support/app'
import { violations } from './support/axe'
import { takeIn } from './support/record'
import { overflow, shots } from './support/screens'
import { expect, test } from './support/test'
import { yearOfPractice } from './support/yearOfPractice'

// Days are those of the machine's own time zone.
test.use({ timezoneId: 'UTC' })

const mill = idOf('morning-at-the-mill.mid')

const openReview = async (page: Page, piece?: string): Promise<void> => {
  await goTo(page, piece === undefined ? '#/review' : `#/review/${piece}`)
  await page.locator('.review .share').waitFor()
}

test('before anything is practised the review says so, and where to begin', async ({ page }) => {
  await openApp(page, { address: '#/review' })
  await expect(page.getByText('Nothing practised here yet.')).toBeVisible()
  await page.getByRole('main').getByRole('link', { name: 'pieces' }).click()
  await expect(page.getByRole('heading', { name: 'Pieces', exact: true })).toBeVisible()
})

test('what was just drilled stands in the review, and every chunk leads back to its drill', async ({
  page,
}) => {
  await openDrill(page)
  for (const notes of ['C5 D5 E5 F5 G5', 'C5 D5 E5 F5 G5', 'C5 D5 E5 F5 G5', 'C5 D5 E5 F#5 G5'])
    await repetition(page, notes)
  await page.keyboard.press('Escape')
  await page.getByRole('navigation').getByRole('link', { name: 'Review' }).click()
  await expect(page.locator('.review .share')).toHaveAttribute('data-share', '0.75')
  // 3 of 4, score interval of Wilson 1927 with z = 1.96, worked by hand: (0.75 + 0.4802) / 1.9604 ± 0.327.
  await expect(page.locator('.review .share')).toContainText(
    'between 30 and 95 % in 95 of 100 cases',
  )
  await expect(page.locator('.review .share')).toContainText('3 clean, 1 flawed; 0 broken off')
  await expect(page.getByText('Not enough days yet')).toBeVisible()
  await page.getByRole('main').getByRole('link', { name: 'Morning at the Mill' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Morning at the Mill')
  const keys = page.getByRole('table').filter({ hasText: 'Written' })
  await expect(keys.getByRole('row').nth(1)).toHaveText('F5F♯51')
  await page.locator('.where').scrollIntoViewIfNeeded()
  await expect(page.locator('.flaw-line .pencil-flaw[data-shape=wrong]')).toHaveCount(1)
  await expect(page.locator('.bar-table tbody tr').first()).toContainText('F5: another key, once')
  await page.locator('.chunk-table a').first().click()
  await page.locator('.practice').waitFor()
  await heard(page)
  await repetition(page)
  await expect(shown(page).message).toHaveText('Clean.')
})

test('one repetition, and only broken off ones, are told as the little that they are', async ({
  page,
}) => {
  const events = yearOfPractice(Date.UTC(2026, 5, 1, 18))
  const some = (verdict: string) =>
    events.filter((e) => e.kind === 'repetition' && e.verdict === verdict)
  await openApp(page, { address: '#/journal' })
  await takeIn(page, some('brokenOff').slice(0, 2))
  await goTo(page, '#/review')
  await expect(page.getByText('No repetition has come to its end so far')).toBeVisible()
  await expect(page.locator('.share')).toHaveText('2 broken off')
  await expect(page.locator('.plot')).toHaveCount(0)
  expect(await overflow(page)).toEqual({ by: 0, out: [] })
  expect(await violations(page, 'all')).toEqual([])
  await page.screenshot({ path: `${shots}/review-broken-off.png`, fullPage: true })
  await page.getByRole('link', { name: '2', exact: true }).first().click()
  await expect(page.locator('.repetition')).toHaveCount(2)
  await expect(page.locator('.seen')).toContainText('it cannot be heard')
  await takeIn(page, some('clean').slice(0, 1))
  await openReview(page)
  // One of one, score interval of Wilson 1927 by hand: from 1 / (1 + 1.96²) = 0.21.
  await expect(page.locator('.share')).toContainText('between 21 and 100 %')
  await expect(page.locator('.plot figcaption')).toContainText('Only one')
  await page.screenshot({ path: `${shots}/review-one.png`, fullPage: true })
})

test('a year of practice: the sums are those of the record, in every picture and its table; on paper it is black on white, within the sheet', async ({
  page,
}) => {
  const events = yearOfPractice(Date.UTC(2026, 5, 1, 18))
  const count = (verdict: string, month = ''): number =>
    events.filter(
      (e) =>
        e.kind === 'repetition' &&
        e.verdict === verdict &&
        new Date(e.atEpochMs - 4 * 3_600_000).toISOString().startsWith(month),
    ).length
  await openApp(page, { address: '#/journal' })
  await takeIn(page, events)
  await openReview(page)
  const [clean, flawed] = [count('clean'), count('flawed')]
  await expect(page.locator('.review .share')).toHaveAttribute(
    'data-share',
    String(clean / (clean + flawed)),
  )
  await page.getByText('The figures as a table').click()
  const row = page.locator('.plot-table tbody tr').nth(3)
  const [name = '', , monthClean, monthFlawed] = await row.locator('th, td').allInnerTexts()
  expect(name).toBe('March 2026')
  expect(monthClean).toBe(String(count('clean', '2026-03')))
  expect(monthFlawed).toBe(String(count('flawed', '2026-03')))
  await expect(page.locator('.plot-point')).toHaveCount(13)
  await expect(page.locator('.plot figcaption')).toContainText('Clean share by month')
  await page.getByRole('radio', { name: 'by day' }).check()
  await expect(page.locator('.plot figcaption')).toContainText('Clean share by day')
  await expect(page.getByText('not on this machine')).toHaveCount(1)
  await openReview(page, mill)
  await expectOnPaper(page)
})

test('the review is whole, readable and accessible in three sizes, by day and in the evening', async ({
  page,
}) => {
  test.slow()
  await openApp(page, { address: '#/journal' })
  await takeIn(page, yearOfPractice(Date.UTC(2026, 5, 1, 18)))
  const found: string[] = []
  const inks = new Set<string>()
  for (const [name, piece] of [
    ['all', undefined],
    ['piece', mill],
    ['elsewhere', 'p-elsewhere'],
  ] as const) {
    await openReview(page, piece)
    if (name === 'piece')
      await expect(page.locator('.flaw-line[data-drawing=waiting]')).toHaveCount(0)
    for (const width of [320, 390, 1280, 1920]) {
      await page.setViewportSize({ width, height: width < 400 ? 844 : 900 })
      await expect.poll(() => overflow(page), `${name} ${width}`).toEqual({ by: 0, out: [] })
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme })
        if (width === 320) continue
        for (const each of await violations(page, colorScheme === 'light' ? 'all' : 'colours'))
          found.push(`${name}, ${width}, ${colorScheme}: ${each}`)
        const path = `${shots}/review-${name}-${width}-${colorScheme}.png`
        await page.screenshot({ path, animations: 'disabled', fullPage: true })
        inks.add(
          await page
            .locator('.plot-point')
            .first()
            .evaluate((e) => getComputedStyle(e).fill),
        )
      }
    }
  }
  expect(found).toEqual([])
  expect(inks.size, 'an ink by day and one for the evening').toBe(2)
})

/** Black on white, without buttons, within the width of the sheet. */
const expectOnPaper = async (page: Page): Promise<void> => {
  await expect(page.locator('.flaw-line[data-drawing=waiting]')).toHaveCount(0)
  // A4 less its margins of 15 mm, at 96 dots an inch.
  await page.setViewportSize({ width: 680, height: 1009 })
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
  expect(await overflow(page)).toEqual({ by: 0, out: [] })
  await expect(page.getByRole('button', { name: 'Print' })).toBeHidden()
  await expect(page.locator('.head')).toBeHidden()
  const colours = await page.locator('body').evaluate((body) => {
    const [page, text] = [getComputedStyle(document.documentElement), getComputedStyle(body)]
    return [page.backgroundColor, text.color]
  })
  expect(colours).toEqual(['rgb(255, 255, 255)', 'rgb(0, 0, 0)'])
  const wide = await page
    .locator('.review .scroll')
    .evaluateAll((all) => all.filter((each) => each.scrollWidth > each.clientWidth + 1).length)
  expect(wide, 'tables cut at the edge of the sheet').toBe(0)
  // Every line of the music is on the paper, in sight of the window or not.
  await expect(page.locator('.flaw-line:not(:has(svg))')).toHaveCount(0)
  await page.screenshot({ path: `${shots}/review-print.png`, fullPage: true })
}
