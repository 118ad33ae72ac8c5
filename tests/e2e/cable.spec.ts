import type { Page } from '@playwright/test'
import {
  heard,
  openDrill,
  play,
  plug,
  pull,
  repetition,
  shown,
  stage,
  verdicts,
} from './support/app'
import { expect, test } from './support/test'

const press = (page: Page, key: number): Promise<void> =>
  page.evaluate(([name, k]) => window.fakeMidi.send(name, [0x90, k, 64]), [stage, key] as const)

test('a cable pulled and put back in mid-drill loses nothing, and the next repetitions count', async ({
  page,
}) => {
  await openDrill(page)
  const { streak, strokes, rung, instrument } = shown(page)
  await repetition(page)
  await repetition(page)
  await pull(page)
  await expect(instrument).toContainText('No keyboard')
  await expect(streak).toHaveAttribute('data-streak', '2')
  await plug(page)
  await expect(instrument).toHaveText(stage)
  await expect(streak).toHaveAttribute('data-streak', '2')
  for (const clean of [3, 4]) {
    await repetition(page)
    await expect(streak).toHaveAttribute('data-streak', `${clean}`)
  }
  await repetition(page)
  await expect(rung).toHaveAttribute('data-rung', '54')
  expect(await verdicts(strokes)).toEqual(['clean', 'clean', 'clean', 'clean', 'clean'])
})

test('a key that was down when the cable was pulled is not stuck', async ({ page }) => {
  await openDrill(page)
  const { pressed, instrument } = shown(page)
  await heard(page)
  await press(page, 72)
  await press(page, 76)
  await expect(pressed).toHaveCount(2)
  await pull(page)
  await expect(instrument).toContainText('No keyboard')
  await expect(pressed).toHaveCount(0)
  await plug(page)
  await expect(instrument).toHaveText(stage)
  await expect(pressed).toHaveCount(0)
})

test('a repetition that the cable interrupts does not count, and costs nothing', async ({
  page,
}) => {
  await openDrill(page)
  const { streak, strokes, right } = shown(page)
  await repetition(page)
  await play(page, 'C5 D5 E5')
  await pull(page)
  await expect(page.getByRole('status')).toContainText('The keyboard was unplugged')
  await expect(right).toHaveCount(0)
  await plug(page)
  await repetition(page)
  await expect(strokes).toHaveCount(2)
  expect(await verdicts(strokes)).toEqual(['clean', 'clean'])
  await expect(streak).toHaveAttribute('data-streak', '2')
})

test('a second keyboard is heard as soon as it is plugged in', async ({ page }) => {
  await openDrill(page)
  await plug(page, 'Upright 61')
  await expect(shown(page).instrument).toHaveText(`${stage}, Upright 61`)
  await repetition(page, 'C5 D5 E5 F5 G5', { keyboard: 'Upright 61' })
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
})

test('the chosen keyboard alone is heard, and known again after a reload', async ({ page }) => {
  await openDrill(page, undefined, { inputs: [stage, 'Upright 61'] })
  const { streak, strokes, instrument } = shown(page)
  await page.getByText('Options', { exact: true }).click()
  await page.getByRole('combobox', { name: 'Keyboard' }).selectOption('Upright 61')
  await expect(instrument).toHaveText('Upright 61')
  await page.reload()
  await expect(instrument).toHaveText('Upright 61')
  await play(page, 'C5 D5 E5 F5 G5', { gap: 150, keyboard: stage })
  await repetition(page, 'C5 D5 E5 F5 G5', { keyboard: 'Upright 61' })
  await expect(strokes).toHaveCount(1)
  await expect(streak).toHaveAttribute('data-streak', '1')
})
