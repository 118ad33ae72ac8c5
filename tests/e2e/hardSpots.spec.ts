import type { Locator, Page } from '@playwright/test'
import { violations } from './support/axe'
import { drawn, openApp } from './support/app'
import { overflow } from './support/screens'
import { expect, test } from './support/test'

const section = (page: Page): Locator => page.getByRole('region', { name: 'Hard spots' })
const rows = (page: Page): Locator => section(page).locator('.spot')
const hatched = (page: Page): Locator => page.locator('.line .spot-mark')

/** The first piece, with the notes of all lines and the spots on the page. */
const openSpots = async (page: Page): Promise<void> => {
  await openApp(page)
  await drawn(page)
  await expect(rows(page).first()).toBeVisible()
  await page
    .locator('.line')
    .first()
    .evaluate((line) => line.scrollIntoView({ block: 'center' }))
  await expect(hatched(page).first()).toBeVisible()
}

test('the hard spots of a piece stand in a list with reasons, and are hatched on the music', async ({
  page,
}) => {
  await openSpots(page)
  const first = rows(page).first()
  await expect(first).toContainText('right hand')
  await expect(first).toContainText('onsets a second')
  await expect(first.getByText('groups of three and four')).toBeHidden()
  await first.locator('summary').click()
  await expect(first.getByText('groups of three and four')).toBeVisible()
  await expect(section(page)).toContainText('voicing, pedalling, memory and nerves')
  // Each of three depths has its own pattern, whatever its colour.
  const pattern = (depth: 1 | 3) =>
    page
      .locator(`.whole-how .spot-depth[data-depth="${depth}"]`)
      .evaluate((swatch) => getComputedStyle(swatch).backgroundImage)
  expect(await pattern(1)).not.toBe(await pattern(3))
  expect(await overflow(page)).toEqual({ by: 0, out: [] })
})

test('a rejected spot stays folded away after a reload, and comes back', async ({ page }) => {
  await openSpots(page)
  const before = await rows(page).count()
  const first = (await rows(page).first().locator('b').textContent()) ?? ''
  await page.getByRole('button', { name: `Reject: ${first}` }).click()
  await expect(rows(page)).toHaveCount(before - 1)
  await page.reload()
  await expect(rows(page)).toHaveCount(before - 1)
  await expect(rows(page).filter({ hasText: first })).toHaveCount(0)
  await section(page).getByText('1 rejected spot').click()
  await page.getByRole('button', { name: `Take back: ${first}` }).click()
  await expect(rows(page)).toHaveCount(before)
  await expect(section(page).getByText('rejected spot')).toHaveCount(0)
})

test('a rank of the person’s own stands after a reload', async ({ page }) => {
  await openSpots(page)
  const names = () => rows(page).locator('b').allTextContents()
  const [first = '', second = '', ...rest] = await names()
  const up = page.getByRole('button', { name: `Move up: ${second}` })
  await up.focus()
  await page.keyboard.press('Enter')
  await expect.poll(names).toEqual([second, first, ...rest])
  await expect(page.getByRole('button', { name: `Move up: ${second}` })).toBeDisabled()
  await page.reload()
  await expect.poll(names).toEqual([second, first, ...rest])
})

test('one leads to its build-up in one step', async ({ page }) => {
  await openSpots(page)
  await rows(page).first().getByRole('button', { name: 'To its build-up' }).click()
  await expect(page).toHaveURL(/#\/buildup\/.*\/right\/brisk\/forward/)
  await expect(page.getByRole('main')).toContainText('group of')
})

test('chosen bars are added, a spot chooses its bars, and accepted ones stand as passages', async ({
  page,
}) => {
  await openSpots(page)
  const passages = page.locator('.line .spot-mark[data-passage=true]')
  await expect(passages).toHaveCount(0)
  await page.getByRole('combobox', { name: 'to bar', exact: true }).selectOption({ label: '12' })
  await page.getByRole('combobox', { name: 'From bar' }).selectOption({ label: '12' })
  const before = await rows(page).count()
  await section(page).getByRole('button', { name: 'Add bar 12' }).click()
  await expect(rows(page)).toHaveCount(before + 1)
  await expect(rows(page).last()).toContainText('by your word')
  await expect(passages).toHaveCount(1)
  await page.reload()
  await expect(rows(page)).toHaveCount(before + 1)
  await page.getByRole('button', { name: /^Choose: bar 7/ }).click()
  await expect(page.getByRole('status')).toHaveText('Bar 7, right hand')
  await page.getByRole('button', { name: 'Make passages of these' }).click()
  await expect(rows(page).locator('[data-passage=true]')).toHaveCount(before + 1)
  await expect(page.getByRole('button', { name: 'Make passages of these' })).toBeDisabled()
})

test('the page breaks no rule for assistive technology with spots accepted, rejected and opened', async ({
  page,
}) => {
  await openSpots(page)
  await rows(page).nth(1).getByRole('button', { name: 'Accept' }).click()
  await rows(page).last().getByRole('button', { name: 'Reject' }).click()
  await rows(page).first().locator('summary').click()
  await section(page).getByText('1 rejected spot').click()
  expect(await violations(page)).toEqual([])
  await page.emulateMedia({ colorScheme: 'dark' })
  expect(await violations(page, 'colours')).toEqual([])
})
