import type { Page } from '@playwright/test'
import {
  chooseStandard,
  drawn,
  firstPiece,
  goTo,
  idOf,
  inTime,
  journal,
  openApp,
  play,
  openDrill,
  repetition,
  shown,
  type,
} from './support/app'
import { expect, test } from './support/test'

const start = (page: Page): Promise<void> =>
  page.getByRole('button', { name: 'Start the drill' }).click()

test('a fresh profile opens the first sample with its passage engraved; one click starts the drill, and the first keys are heard', async ({
  page,
}) => {
  await openApp(page)
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(firstPiece)
  await drawn(page)
  // Bar 9 of the piece, as written in sample-midi/pieces: eight eighths.
  await expect(page.locator('.notation svg .note')).toHaveCount(8)
  await start(page)
  await drawn(page)
  const { message, streak } = shown(page)
  await expect(message).toHaveText(/short trial for the tempo/)
  await repetition(page, 'C5 D5 E5 F5 G5 A5 B5 C6')
  await expect(streak).toHaveAttribute('data-streak', '1')
  await expect(message).toHaveText('Clean.')
})

test('a simulated player shows right and flawed notes; a key of the person stops it and begins their own drill, which alone is recorded', async ({
  page,
}) => {
  await openApp(page)
  await page.getByRole('button', { name: 'Watch a simulated player first' }).click()
  const { message, right, flaws, strokes, streak } = shown(page)
  await expect(message).toContainText('Simulated player, nothing is recorded')
  await expect(right.nth(4)).toBeVisible()
  await expect(flaws.first()).toBeVisible({ timeout: 25_000 })
  await expect(strokes.first()).toBeVisible()
  expect((await journal(page)).filter(({ kind }) => kind === 'repetition')).toEqual([])
  // The strokes of the simulated player go as the person begins, however many they are.
  await play(page, 'C5 D5 E5 F5 G5 A5 B5 C6', { gap: 150 })
  await expect(message).toHaveText('Clean.')
  await expect(streak).toHaveAttribute('data-streak', '1')
  await goTo(page, '#/summary')
  await expect(page.getByText('1 clean, 0 flawed')).toBeVisible()
})

test('without a MIDI keyboard the computer’s keys play a clean repetition', async ({ page }) => {
  await openApp(page, { inputs: [] })
  await start(page)
  await drawn(page)
  await chooseStandard(page, 'notes')
  await type(page, 'ASDFGHJK')
  await expect(shown(page).message).toHaveText('Clean.')
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
})

test('the keys on screen play a clean repetition by the mouse', async ({ page }) => {
  await openDrill(page, undefined, { inputs: [] })
  await drawn(page)
  await chooseStandard(page, 'notes')
  const scale = [72, 74, 76, 77, 79]
  const points = await Promise.all(scale.map((key) => pointOn(page, key)))
  await inTime(points, async ({ x, y }) => {
    await page.mouse.up()
    await page.mouse.move(x, y)
    await page.mouse.down()
  })
  await expect(shown(page).pressed).toHaveAttribute('data-key', '79')
  await page.mouse.up()
  await expect(shown(page).pressed).toHaveCount(0)
  await expect(shown(page).message).toHaveText('Clean.')
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
})

test.describe('on a touch screen', () => {
  test.use({ hasTouch: true })

  test('two fingers at once play a chord', async ({ page }) => {
    const address = `#/practice/${idOf('swallows-under-the-eaves.mid')}/0-1/right`
    await openApp(page, { inputs: [], address })
    await drawn(page)
    await chooseStandard(page, 'notes')
    const fingers = await Promise.all([65, 69, 67, 70, 69, 72].map((key) => pointOn(page, key)))
    const thirds = [0, 2, 4].map((i) => fingers.slice(i, i + 2).map((at, id) => ({ ...at, id })))
    const touch = await page.context().newCDPSession(page)
    const send = (type: 'touchStart' | 'touchEnd', touchPoints: typeof fingers) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints })
    await inTime(thirds, async (touchPoints) => {
      await send('touchStart', touchPoints)
      await expect(shown(page).pressed).toHaveCount(2)
      await send('touchEnd', [])
    })
    await expect(shown(page).pressed).toHaveCount(0)
    await expect(shown(page).message).toHaveText('Clean.')
    await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
  })
})

/** Near the lower end of a key of the strip, where a white one is not covered by a black one. */
const pointOn = async (page: Page, key: number): Promise<{ x: number; y: number }> => {
  const box = await page.locator(`.strip [data-key="${key}"]`).boundingBox()
  if (!box) throw new Error(`no key ${key} on the screen`)
  return { x: box.x + box.width / 2, y: box.y + box.height - 12 }
}

test.describe('in German, in a browser without Web MIDI', () => {
  test.use({ locale: 'de-DE' })

  test('the first page tells what to do, and two presses lead to a drill on one’s own piece', async ({
    page,
  }) => {
    await openApp(page, { absent: true })
    const steps = page.getByRole('complementary', { name: 'Erste Schritte' })
    await expect(steps).toContainText(/„Üben beginnen“ drücken und diese Noten spielen/)
    await expect(steps).toContainText(/kein Web MIDI\. Chrome, Edge, Opera und Firefox/)
    await expect(steps).toContainText(/die der Tastatur: A S D F/)
    const opening = page.waitForEvent('filechooser')
    await steps.getByRole('button', { name: 'Ein eigenes Stück hinzufügen' }).click()
    const text = 'passagework 1 Kleine Treppe\ntime 5/4\nC4 D4 E4 F4 G4\n'
    await (
      await opening
    ).setFiles({ name: 'treppe.txt', mimeType: 'text/plain', buffer: Buffer.from(text) })
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Kleine Treppe')
    await expect(steps).toBeVisible()
    await page.getByRole('button', { name: 'Üben beginnen' }).click()
    await drawn(page)
    await type(page, 'ASDFG')
    await expect(shown(page).strokes).toHaveCount(1)
    await goTo(page, '#/')
    await page.getByRole('link', { name: 'Kleine Treppe' }).click()
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Kleine Treppe')
    await expect(page.getByRole('heading', { name: 'Ausschnitte zum Üben' })).toBeVisible()
    await expect(steps).toHaveCount(0)
  })
})
