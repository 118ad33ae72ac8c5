import type { Page } from '@playwright/test'
import {
  fiveNotes,
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

const upright = 'Upright 61'

const press = (page: Page, key: number): Promise<void> =>
  page.evaluate(([name, k]) => window.fakeMidi.send(name, [0x90, k, 64]), [stage, key] as const)

test('a cable pulled and put back in mid-drill loses nothing: what it interrupts does not count, no key is stuck, and the next repetitions count', async ({
  page,
}) => {
  await openDrill(page)
  const { streak, strokes, rung, right, pressed, instrument } = shown(page)
  await repetition(page)
  await repetition(page)
  await play(page, 'C5 D5 E5')
  await press(page, 77)
  await press(page, 81)
  await expect(pressed).toHaveCount(2)
  await pull(page)
  await expect(page.getByRole('status')).toContainText('The keyboard was unplugged')
  await expect(right).toHaveCount(0)
  await expect(pressed).toHaveCount(0)
  await expect(instrument).toContainText('No keyboard')
  await expect(streak).toHaveAttribute('data-streak', '2')
  await plug(page)
  await expect(instrument).toHaveText(stage)
  await expect(pressed).toHaveCount(0)
  await expect(streak).toHaveAttribute('data-streak', '2')
  for (const clean of [3, 4]) {
    await repetition(page)
    await expect(streak).toHaveAttribute('data-streak', `${clean}`)
  }
  await repetition(page)
  await expect(rung).toHaveAttribute('data-rung', '54')
  expect(await verdicts(strokes)).toEqual(['clean', 'clean', 'clean', 'clean', 'clean'])
})

test('a second keyboard is heard as soon as it is plugged in; a chosen one alone is heard, and known again after a reload', async ({
  page,
}) => {
  await openDrill(page)
  const { streak, strokes, instrument } = shown(page)
  await plug(page, upright)
  await expect(instrument).toHaveText(`${stage}, ${upright}`)
  await repetition(page, fiveNotes.notes, { keyboard: upright })
  await expect(streak).toHaveAttribute('data-streak', '1')
  await page.getByText('Options', { exact: true }).click()
  await page.getByRole('combobox', { name: 'Keyboard' }).selectOption(upright)
  await expect(instrument).toHaveText(upright)
  await page.reload()
  await expect(streak).toHaveAttribute('data-streak', '1')
  await plug(page, upright)
  await expect(instrument).toHaveText(upright)
  await play(page, fiveNotes.notes, { gap: 100, keyboard: stage })
  await repetition(page, fiveNotes.notes, { keyboard: upright })
  await expect(strokes).toHaveCount(2)
  await expect(streak).toHaveAttribute('data-streak', '2')
})
