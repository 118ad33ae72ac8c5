import type { Page } from '@playwright/test'
import { openDrill, repetition, shown, verdicts } from './support/app'
import { expect, test } from './support/test'

/** The figures of the session; what stands below them is engraved, and so comes in its own time. */
const figures = (page: Page): Promise<string[]> =>
  page.locator('.share, [aria-labelledby=drilled], [aria-labelledby=flaws]').allInnerTexts()

test('after a reload a drill goes on with streak, rung and strokes as they were, and the summary stands', async ({
  page,
}) => {
  await openDrill(page)
  const { streak, rung, strokes } = shown(page)
  await page.keyboard.press('ArrowUp')
  await repetition(page, 'C5 D5 E5 F#5 G5')
  await repetition(page)
  await repetition(page)
  const before = await verdicts(strokes)
  await page.reload()
  await expect(streak).toHaveAttribute('data-streak', '2')
  await expect(rung).toHaveAttribute('data-rung', '54')
  expect(await verdicts(strokes)).toEqual(before)
  await repetition(page)
  await expect(streak).toHaveAttribute('data-streak', '3')
  await page.keyboard.press('Escape')
  const share = page.locator('.share')
  await expect(share).toHaveAttribute('data-share', '0.75')
  const told = await figures(page)
  expect(told).toHaveLength(3)
  await page.reload()
  await expect(share).toHaveAttribute('data-share', '0.75')
  expect(await figures(page)).toEqual(told)
})
