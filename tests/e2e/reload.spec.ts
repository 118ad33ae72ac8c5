import { journal, openApp, openDrill, play, repetition, shown, verdicts } from './support/app'
import { expect, test } from './support/test'

test('a reload in mid-drill goes on with streak, rung and strokes as they were', async ({
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
})

test('the summary stands after a reload', async ({ page }) => {
  await openDrill(page)
  await repetition(page)
  await repetition(page, 'C5 D5 E5 F#5 G5')
  await page.keyboard.press('Escape')
  await expect(page.locator('.share')).toHaveAttribute('data-share', '0.5')
  const before = await page.getByRole('main').innerText()
  await page.reload()
  await expect(page.locator('.share')).toHaveAttribute('data-share', '0.5')
  expect(await page.getByRole('main').innerText()).toBe(before)
})

test('a page killed in mid-repetition loses that repetition alone', async ({ page, context }) => {
  const address = await openDrill(page)
  await repetition(page)
  await repetition(page)
  await play(page, 'C5 D5 E5', { gap: 150 })
  await page.close({ runBeforeUnload: false })
  const next = await context.newPage()
  await openApp(next, { address })
  await expect(shown(next).streak).toHaveAttribute('data-streak', '2')
  expect(await verdicts(shown(next).strokes)).toEqual(['clean', 'clean'])
  await repetition(next)
  await expect(shown(next).streak).toHaveAttribute('data-streak', '3')
})

test('a repetition whose verdict has been shown is stored, even when the page dies at once', async ({
  page,
  context,
}) => {
  const address = await openDrill(page)
  await repetition(page)
  await page.close({ runBeforeUnload: false })
  const next = await context.newPage()
  await openApp(next, { address })
  await expect(shown(next).streak).toHaveAttribute('data-streak', '1')
  const recorded = (await journal(next)).filter((event) => event.kind === 'repetition')
  expect(recorded).toMatchObject([{ verdict: 'clean', rung: 52 }])
})
