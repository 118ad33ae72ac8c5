import type { Page } from '@playwright/test'
import { firstPiece, goTo, heard, openApp, stage } from './support/app'
import { violations } from './support/axe'
import { overflow } from './support/screens'
import { expect, test } from './support/test'

const openRecording = async (page: Page): Promise<void> => {
  await openApp(page)
  await page.getByRole('heading', { name: firstPiece }).waitFor()
  await goTo(page, '#/')
  await page.getByRole('link', { name: 'Play a fragment in' }).click()
  await page.getByRole('button', { name: 'Record' }).waitFor()
}

const message = (page: Page) => page.locator('.record-message')
const drawnNotes = (page: Page) => page.locator('.fragment svg .note')

/** At 120 quarters a minute; the metronome counts a bar of 2/4, one second. */
const chooseQuick = async (page: Page): Promise<void> => {
  await page.getByRole('combobox', { name: 'Time' }).selectOption('2/4')
  await page.getByRole('spinbutton', { name: 'Tempo' }).fill('120')
}

/** Eighths with rests between them on the page's own clock, from the moment that the recording begins. */
const playOn = async (page: Page, keys: readonly number[]): Promise<void> => {
  await heard(page, stage)
  await expect(message(page)).toHaveText('Play.')
  await page.evaluate(
    ([name, all]) =>
      window.fakeMidi.play(
        name,
        all.flatMap((key, i) => [
          { bytes: [0x90, key, 64], at: i * 500 },
          { bytes: [0x80, key, 0], at: i * 500 + 220 },
        ]),
      ),
    [stage, keys] as const,
  )
}

test('a fragment is recorded by the space bar, shown, kept, and there after a reload', async ({
  page,
}) => {
  await openRecording(page)
  await chooseQuick(page)
  await page.getByRole('heading', { level: 1 }).click()
  await page.keyboard.press('Space')
  await expect(message(page)).toHaveText('One bar is counted …')
  await playOn(page, [60, 62, 64, 65])
  await expect(message(page)).toHaveText('Recording.')
  await page.keyboard.press('Space')
  await expect(message(page)).toHaveText('Here it is. Keep it, or record again.')
  await expect(drawnNotes(page)).toHaveCount(4)
  await page.getByRole('textbox', { name: 'Title' }).fill('Four up')
  await page.getByRole('button', { name: 'Keep it as a piece' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Four up')
  await page.reload()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Four up')
})

test('it stops by itself after two silent bars, breaks no rule of access, and can be recorded again; with the sound off it says what to do', async ({
  page,
}) => {
  await openRecording(page)
  await chooseQuick(page)
  await page.getByRole('button', { name: 'Record' }).click()
  await playOn(page, [67])
  await expect(message(page)).toHaveText('Here it is. Keep it, or record again.')
  await expect(drawnNotes(page)).toHaveCount(1)
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    expect(await violations(page), colorScheme).toEqual([])
  }
  await page.setViewportSize({ width: 320, height: 640 })
  await expect.poll(() => overflow(page)).toEqual({ by: 0, out: [] })
  await page.setViewportSize({ width: 1280, height: 800 })
  await page.getByRole('button', { name: 'Record again' }).click()
  await expect(message(page)).toHaveText('One bar is counted …')
  await page.getByRole('button', { name: 'Stop' }).click()
  await expect(message(page)).toHaveText('Nothing was played.')
  await page.getByText('Options', { exact: true }).click()
  await page.getByRole('checkbox', { name: 'Sound' }).uncheck()
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Record' }).click()
  await expect(message(page)).toHaveText('No click can sound: switch the sound on under Options.')
})
