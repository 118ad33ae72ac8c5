import type { Page } from '@playwright/test'
import { drawn } from './support/app'
import { violations } from './support/axe'
import { keyboardFaults } from './support/keyboard'
import { overflow, shots, visitScreens, type ScreenName } from './support/screens'
import { expect, test } from './support/test'

/** Nothing may scroll sideways there (WCAG 2.2, 1.4.10 Reflow). */
const narrowest = { width: 320, height: 640 }
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

test('every screen stands within the window, its notes drawn, axe finds no violation, in four sizes, by day and in the evening, and all of it is done by keys', async ({
  page,
}) => {
  test.slow()
  const inks = new Set<string>()
  const found: string[] = []
  await visitScreens(page, async (screen) => {
    await page.setViewportSize(narrowest)
    await expect.poll(() => overflow(page), `${screen}, narrowest`).toEqual({ by: 0, out: [] })
    for (const viewport of sizes) {
      await page.setViewportSize(viewport)
      await expectWhole(page, screen)
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme })
        await page.screenshot({
          path: `${shots}/${screen}-${viewport.width}-${colorScheme}.png`,
          animations: 'disabled',
          fullPage: true,
        })
        inks.add(await page.evaluate(() => getComputedStyle(document.body).color))
        if (viewport.width === 1920) continue
        for (const each of await violations(page, colorScheme === 'light' ? 'all' : 'colours'))
          found.push(`${screen}, ${viewport.width}, ${colorScheme}: ${each}`)
      }
    }
    for (const each of await keyboardFaults(page)) found.push(`${screen}: ${each}`)
  })
  expect(found).toEqual([])
  expect(inks.size, 'an ink by day and one for the evening').toBe(2)
})

/** What stands beyond its place, once the notes have been drawn anew for the size of the window. */
const expectWhole = async (page: Page, screen: ScreenName): Promise<void> => {
  await expect.poll(() => overflow(page), screen).toEqual({ by: 0, out: [] })
  if (!withNotes.includes(screen)) return
  await drawn(page)
  await expect(page.locator('.notation svg .note'), screen).toHaveCount(8)
  // The sheet fills its box in width or in height, and nothing of it stands out.
  await expect
    .poll(async () => {
      const sheet = await page.locator('.notation .sheet').boundingBox()
      const box = await page.locator('.notation').boundingBox()
      if (!sheet || !box) return 'no notation'
      if (sheet.width > box.width + 1 || sheet.height > box.height + 1) return 'too large'
      return sheet.width < 0.8 * box.width && sheet.height < 0.8 * box.height ? 'too small' : 'fits'
    }, screen)
    .toBe('fits')
}
