import type { Page } from '@playwright/test'
import { firstPiece, goTo, openApp } from './support/app'
import { violations } from './support/axe'
import { overflow } from './support/screens'
import { expect, test } from './support/test'

const waltz = `time 3/4  key G  tempo 80
right: D5:1 G4:1/2 A4 B4 C5 | D5:1 G4 G4
left: [G3 B3 D4]:2 A3:1 | B3:3
`

const openWriting = async (page: Page): Promise<void> => {
  await openApp(page)
  await page.getByRole('heading', { name: firstPiece }).waitFor()
  await goTo(page, '#/')
  await page.getByRole('link', { name: 'Write a fragment' }).click()
  await page.getByRole('heading', { name: 'Write a fragment' }).waitFor()
}

const notes = (page: Page) => page.getByRole('textbox', { name: 'Notes' })
const keep = (page: Page) => page.getByRole('button', { name: 'Keep it as a piece' })
const drawnNotes = (page: Page) => page.locator('.fragment svg .note')

test('a fragment is drawn as it is typed, kept as a piece, and there after a reload', async ({
  page,
}) => {
  await openWriting(page)
  await expect(keep(page)).toBeDisabled()
  await notes(page).pressSequentially('right: C4 E4 ')
  await expect(drawnNotes(page)).toHaveCount(2)
  await notes(page).fill(waltz)
  await expect(drawnNotes(page)).toHaveCount(13)
  await page.getByRole('textbox', { name: 'Title' }).fill('Waltz on the Landing')
  await keep(page).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Waltz on the Landing')
  await page.reload()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Waltz on the Landing')
  await goTo(page, '#/')
  await expect(page.getByRole('link', { name: 'Waltz on the Landing' })).toHaveCount(1)
})

test('what cannot be read is said in a sentence, underlined, and led to', async ({ page }) => {
  await openWriting(page)
  await notes(page).fill('time 3/4\nright: C4 H4 E4')
  await expect(page.locator('.typed-problem')).toHaveText(
    /^Line 2, column 11 “H4” is no pitch: .*\.$/,
  )
  await expect(page.locator('.typed-behind mark')).toHaveText('H4')
  await expect(notes(page)).toHaveAttribute('aria-invalid', 'true')
  await expect(keep(page)).toBeDisabled()
  await page.getByRole('button', { name: 'Line 2, column 11' }).click()
  await page.keyboard.type('G4')
  await expect(notes(page)).toHaveValue('time 3/4\nright: C4 G4 E4')
  await expect(page.locator('.typed-problem')).toHaveText('')
  await expect(drawnNotes(page)).toHaveCount(3)
})

test('the underline stands beneath its word, in a long text too, and nothing lies over what is typed', async ({
  page,
}) => {
  await openWriting(page)
  await notes(page).focus()
  const empty = await notes(page).screenshot()
  await notes(page).fill('C4')
  expect((await notes(page).screenshot()).equals(empty)).toBe(false)
  await notes(page).fill('')
  expect((await notes(page).screenshot()).equals(empty)).toBe(true)
  const long = Array.from({ length: 30 }, () => 'right: C4 D4 E4 F4 G4 A4 B4 C5').join('\n')
  await notes(page).fill(`${long}\nright: X9`)
  await page.getByRole('button', { name: 'Line 31, column 8' }).click()
  const field = await notes(page).evaluate((element) => ({
    scroll: element.scrollTop,
    width: element.clientWidth,
  }))
  const behind = await page.locator('.typed-behind').evaluate((element) => ({
    scroll: element.scrollTop,
    width: element.clientWidth,
  }))
  expect(field.scroll).toBeGreaterThan(0)
  expect(behind).toEqual(field)
})

test('an example can be put in; the screen breaks no rule of access, and fits a narrow window', async ({
  page,
}) => {
  await openWriting(page)
  await page.getByText('How it is written').click()
  await page.getByRole('button', { name: 'Put an example in' }).click()
  await expect(drawnNotes(page)).toHaveCount(13)
  await notes(page).fill('C4 H4')
  await page.locator('.typed-problem button').waitFor()
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    expect(await violations(page), colorScheme).toEqual([])
  }
  await page.setViewportSize({ width: 320, height: 640 })
  expect(await overflow(page)).toEqual({ by: 0, out: [] })
})
