import type { Locator, Page } from '@playwright/test'
import { drawn, goTo, idOf, openApp, play, repetition } from './support/app'
import { longPiece } from './support/longPiece'
import { bring, littleStair } from './support/pieces'
import { overflow } from './support/screens'
import { expect, test } from './support/test'

const music = (page: Page): Locator => page.getByRole('slider', { name: 'Chosen bars' })
const choice = (page: Page) => ({
  from: page.getByRole('combobox', { name: 'From bar' }),
  to: page.getByRole('combobox', { name: 'to bar', exact: true }),
})
const status = (page: Page): Locator => page.getByRole('status')

/** The chosen bars by their numbers, as the fields name them. */
const expectBars = async (page: Page, from: string, to: string): Promise<void> => {
  await expect(choice(page).from.locator('option:checked')).toHaveText(from)
  await expect(choice(page).to.locator('option:checked')).toHaveText(to)
}

/** Waits until all lines are drawn, and brings the first into the middle of the window. */
const showMusic = async (page: Page): Promise<void> => {
  await drawn(page)
  await expect(page.locator('.line[data-drawn=false]')).toHaveCount(0)
  await page
    .locator('.line')
    .first()
    .evaluate((line) => line.scrollIntoView({ block: 'center' }))
  await page.locator('.line svg text').first().waitFor()
}

/** In a bar in sight, right of its number and under it. */
const barAt = async (page: Page, index: number): Promise<{ x: number; y: number }> => {
  const number = await page.locator('.line svg text').nth(index).boundingBox()
  if (!number) throw new Error(`bar ${index} is not on the page`)
  return { x: number.x + 30, y: number.y + 50 }
}

test('the whole piece stands under the passage, with its bar numbers; dragging over it chooses bars, a press chooses one', async ({
  page,
}) => {
  await openApp(page)
  await showMusic(page)
  // Morning at the Mill, as written in sample-midi/pieces, has twelve bars.
  await expect(page.locator('.line svg text')).toHaveText(
    Array.from({ length: 12 }, (_, i) => `${i + 1}`),
  )
  await expect(page.locator('.chosen')).toHaveCount(1)
  const [second, third] = [await barAt(page, 1), await barAt(page, 2)]
  await page.mouse.move(third.x, third.y)
  await page.mouse.down()
  await page.mouse.move(second.x + 20, second.y, { steps: 4 })
  await page.mouse.up()
  await expectBars(page, '2', '3')
  await expect(status(page)).toHaveText('Bars 2–3, right hand')
  const fourth = await barAt(page, 3)
  await page.mouse.click(fourth.x, fourth.y)
  await expectBars(page, '4', '4')
})

test('arrow keys move the chosen bars and stretch them, and say so; letters change no hand that the file tells, plus and minus the size of the notes', async ({
  page,
}) => {
  await openApp(page)
  await showMusic(page)
  await page.keyboard.press('l')
  await expect(page.getByRole('group', { name: 'Correct the hands' })).toHaveCount(0)
  await expect(status(page)).toHaveText('Bar 9, right hand')
  await music(page).focus()
  await page.keyboard.press('ArrowLeft')
  await expectBars(page, '8', '8')
  await page.keyboard.press('Shift+ArrowRight')
  await page.keyboard.press('Shift+ArrowRight')
  await expectBars(page, '8', '10')
  await expect(music(page)).toHaveAttribute('aria-valuetext', 'bars 8–10')
  await page.keyboard.press('End')
  await expectBars(page, '10', '12')
  const lines = page.locator('.line')
  const before = await lines.count()
  await page.keyboard.press('+')
  await page.keyboard.press('+')
  await expect.poll(() => lines.count()).toBeGreaterThan(before)
  await expect(page.getByRole('button', { name: 'Larger notes' })).toBeDisabled()
  await page.getByRole('button', { name: 'Smaller notes' }).click()
  await page.keyboard.press('-')
  await expect.poll(() => lines.count()).toBe(before)
})

test('playing the first notes of a place goes there; again, and the next is found', async ({
  page,
}) => {
  await openApp(page)
  await drawn(page)
  // Bars 1, 3 and 9 begin with C D E F G.
  await play(page, 'C5 D5 E5 F5')
  await expectBars(page, '1', '1')
  await expect(status(page)).toHaveText(
    'You played bar 1, place 1 of 3: play it again for the next',
  )
  await page.waitForTimeout(1700)
  await play(page, 'C5 D5 E5 F5')
  await expectBars(page, '3', '3')
  await play(page, '- - - - - - F5 E5 D5 C5 B4 C5')
  await expectBars(page, '7', '7')
})

test('what was practised is shown on the music', async ({ page }) => {
  await openApp(page)
  await showMusic(page)
  const marks = (state: string) => page.locator(`.line-marks .chunk-mark[data-state=${state}]`)
  await expect(marks('untouched')).toHaveCount(1)
  await page.getByRole('button', { name: 'Start the drill' }).click()
  await drawn(page)
  await repetition(page, 'C5 D5 E5 F5 G5 A5 B5 C6')
  await goTo(page, `#/piece/${idOf('morning-at-the-mill.mid')}`)
  await showMusic(page)
  await expect(marks('practised')).toHaveCount(1)
  await expect(page.getByRole('link', { name: /practised/ })).toHaveCount(1)
})

test('two keys correct the hands; it is kept after a reload, and taken back', async ({ page }) => {
  await openApp(page)
  await drawn(page)
  await bring(page, 'little-stair.mid', littleStair())
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Little Stair')
  const shown = page.locator('.notation svg .note')
  const hand = (name: string) => page.getByRole('radio', { name }).click()
  await hand('both hands')
  await expect(shown).toHaveCount(10)
  await page.keyboard.press('l')
  await expect(status(page)).toHaveText('10 notes: left hand.')
  await choice(page).from.selectOption('1')
  await page.getByRole('heading', { level: 1 }).click()
  await choice(page).to.selectOption('1')
  await page.getByRole('heading', { level: 1 }).click()
  await page.locator('body').press('r')
  await expect(status(page)).toHaveText('4 notes: right hand.')
  await page.reload()
  await hand('left hand')
  await expect(shown).toHaveCount(6)
  await page.locator('body').press('Backspace')
  await expect(shown).toHaveCount(10)
  await page.reload()
  await hand('left hand')
  await expect(shown).toHaveCount(10)
})

test('a press on a note picks it, and its hand alone is corrected', async ({ page }) => {
  await openApp(page)
  await drawn(page)
  await bring(page, 'little-stair.mid', littleStair())
  await showMusic(page)
  await page.keyboard.press('r')
  await expect(status(page)).toHaveText('10 notes: right hand.')
  await showMusic(page)
  await music(page).focus()
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('ArrowDown')
  const ring = await page.locator('.picked').boundingBox()
  if (!ring) throw new Error('no note is picked')
  await page.keyboard.press('Escape')
  await expect(page.locator('.picked')).toHaveCount(0)
  await page.mouse.click(ring.x + ring.width / 2, ring.y + ring.height / 2)
  await expect(status(page)).toHaveText('C♯4, right hand, by your word')
  await page.keyboard.press('l')
  await expect(status(page)).toHaveText('1 note: left hand.')
})

test('of a very long piece only what is near is on the page, and the rest comes by scrolling', async ({
  page,
}) => {
  test.slow()
  await openApp(page)
  await drawn(page)
  await bring(page, 'long.mid', longPiece())
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('A Long Walk')
  await page.locator('.line[data-line="0"] svg text').first().waitFor()
  expect(await page.locator('.line').count()).toBeGreaterThan(50)
  await expect(page.getByText(/Engraving the lines: \d+ of \d+/)).toBeVisible()
  await page
    .locator('.line')
    .last()
    .evaluate((line) => line.scrollIntoView())
  await expect(page.locator('.line').last().locator('svg text').first()).toBeVisible()
  await expect(page.locator('.line[data-line="0"] svg')).toHaveCount(0)
  expect(await page.locator('.line > .line-music').count()).toBeLessThan(30)
})

test.describe('320 pixels wide', () => {
  test.use({ viewport: { width: 320, height: 640 }, hasTouch: true })

  test('nothing scrolls sideways, a finger that moves scrolls, one that rests chooses', async ({
    page,
  }) => {
    await openApp(page)
    await drawn(page)
    await bring(page, 'little-stair.mid', littleStair())
    await showMusic(page)
    expect(await overflow(page)).toEqual({ by: 0, out: [] })
    const first = await barAt(page, 0)
    const touch = await page.context().newCDPSession(page)
    const send = (
      type: 'touchStart' | 'touchMove' | 'touchEnd',
      ...at: { x: number; y: number }[]
    ) => touch.send('Input.dispatchTouchEvent', { type, touchPoints: at })
    const before = await page.evaluate(() => window.scrollY)
    await send('touchStart', first)
    for (const by of [10, 30, 60, 90]) await send('touchMove', { x: first.x, y: first.y + by })
    await send('touchEnd')
    await expect.poll(() => page.evaluate(() => window.scrollY)).not.toBe(before)
    await expectBars(page, '1', '3')
    await showMusic(page)
    const from = await barAt(page, 0)
    const to = await barAt(page, 1)
    await send('touchStart', from)
    await page.waitForTimeout(600)
    await send('touchMove', { x: from.x, y: from.y + 8 })
    await send('touchMove', to)
    await send('touchEnd')
    await expectBars(page, '1', '2')
  })
})
