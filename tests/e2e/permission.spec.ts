import type { Page } from '@playwright/test'
import { drawn, openApp, openDrill, plug, repetition, shown, stage } from './support/app'
import { expect, test } from './support/test'

const cases = [
  [
    'the permission is denied',
    { denied: true },
    'MIDI not allowed',
    /Allow it in the site settings/,
  ],
  [
    'the browser has no Web MIDI',
    { absent: true },
    'No MIDI in this browser',
    /Chrome, Edge, Opera and Firefox/,
  ],
  ['no keyboard is connected', { inputs: [] }, 'No keyboard', /connect it by USB/],
  [
    'another program has the keyboard',
    { occupied: [stage] },
    'MIDI failed',
    /in use by another program/,
  ],
] as const

for (const [what, midi, short, advice] of cases)
  test(`when ${what}, the head says so and what to do, and the computer’s keys play`, async ({
    page,
  }) => {
    await openApp(page, midi)
    const { instrument } = shown(page)
    await expect(instrument.locator('summary')).toHaveText(short)
    await instrument.locator('summary').click()
    await expect(instrument).toContainText(advice)
    await expect(instrument).toContainText('the computer’s keys: A S D F')
    await instrument.locator('summary').click()
    await page.getByRole('button', { name: 'Start the drill' }).click()
    await drawn(page)
    await playLetters(page, 'ASDFGHJK')
    await expect(shown(page).message).toHaveText('Clean.')
    await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
  })

test('a keyboard connected later is found by itself', async ({ page }) => {
  await openDrill(page, undefined, { inputs: [] })
  await expect(shown(page).instrument).toContainText('No keyboard')
  await plug(page)
  await expect(shown(page).instrument).toHaveText(stage)
  await repetition(page)
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
})

/** The computer's keys one after another, 350 ms apart. */
const playLetters = async (page: Page, letters: string): Promise<void> => {
  const begin = performance.now()
  for (const [i, letter] of [...letters].entries()) {
    const wait = begin + i * 350 - performance.now()
    if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait))
    await page.keyboard.press(`Key${letter}`, { delay: 120 })
  }
}
