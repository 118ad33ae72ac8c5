import type { Page } from '@playwright/test'
import { chooseStandard, openDrill, plug, repetition, shown, stage, type } from './support/app'
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
  [
    'another program has the keyboard',
    { occupied: [stage] },
    'Keyboard in use',
    /in use by another program/,
  ],
] as const

/** The head says in short what is missing, and unfolded what to do; the computer's keys play a clean repetition. */
const expectAdvice = async (page: Page, short: string, advice: RegExp): Promise<void> => {
  const { instrument } = shown(page)
  await expect(instrument.locator('summary')).toHaveText(short)
  await instrument.locator('summary').click()
  await expect(instrument).toContainText(advice)
  await expect(instrument).toContainText('the computer’s keys: A S D F')
  await instrument.locator('summary').click()
  await chooseStandard(page, 'notes')
  await type(page, 'ASDFG')
  await expect(shown(page).message).toHaveText('Clean.')
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
}

for (const [what, midi, short, advice] of cases)
  test(`when ${what}, the head says so and what to do, and the computer’s keys play`, async ({
    page,
  }) => {
    await openDrill(page, undefined, midi)
    await expectAdvice(page, short, advice)
  })

test('when no keyboard is connected, the head says so and what to do; one connected later is found by itself', async ({
  page,
}) => {
  await openDrill(page, undefined, { inputs: [] })
  await expectAdvice(page, 'No keyboard', /connect it by USB/)
  await plug(page)
  await expect(shown(page).instrument).toHaveText(stage)
  await repetition(page)
  await expect(shown(page).streak).toHaveAttribute('data-streak', '2')
})
