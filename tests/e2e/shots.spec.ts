import { fileURLToPath } from 'node:url'
import type { Page } from '@playwright/test'
import { drawn } from './support/app'
import { overflow, visitScreens, type ScreenName } from './support/screens'
import { expect, test } from './support/test'

const folder = fileURLToPath(new URL('./shots', import.meta.url))
const sizes = [
  { width: 390, height: 844 },
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
] as const

/** Screens with a page of notation, and the notes that it must show: the eight of bar 9. */
const withNotes: readonly ScreenName[] = [
  'piece',
  'practice-start',
  'options',
  'no-keyboard',
  'practice-flaws',
  'practice-paused',
]

for (const viewport of sizes)
  test.describe(`${viewport.width} × ${viewport.height}`, () => {
    test.use({ viewport })

    test('every screen stands within the window, its notes drawn, by day and in the evening', async ({
      page,
    }) => {
      const inks = new Set<string>()
      await visitScreens(page, async (screen) => {
        await expectWhole(page, screen)
        for (const colorScheme of ['light', 'dark'] as const) {
          await page.emulateMedia({ colorScheme })
          await page.screenshot({
            path: `${folder}/${screen}-${viewport.width}-${colorScheme}.png`,
            animations: 'disabled',
            fullPage: true,
          })
          inks.add(await page.evaluate(() => getComputedStyle(document.body).color))
        }
      })
      expect(inks.size, 'an ink by day and one for the evening').toBe(2)
    })
  })

const expectWhole = async (page: Page, screen: ScreenName): Promise<void> => {
  expect.soft(await overflow(page), screen).toEqual({ by: 0, out: [] })
  if (!withNotes.includes(screen)) return
  await drawn(page)
  await expect.soft(page.locator('.notation svg .note'), screen).toHaveCount(8)
  const sheet = await page.locator('.notation .sheet').boundingBox()
  const box = await page.locator('.notation').boundingBox()
  if (!sheet || !box) throw new Error(`${screen} has no notation`)
  expect.soft(sheet.x, `${screen}: the notes begin in their box`).toBeGreaterThanOrEqual(box.x - 1)
  expect
    .soft(sheet.x + sheet.width, `${screen}: the notes end in their box`)
    .toBeLessThanOrEqual(box.x + box.width + 1)
  expect
    .soft(sheet.y + sheet.height, `${screen}: the notes end in their box below`)
    .toBeLessThanOrEqual(box.y + box.height + 1)
}
