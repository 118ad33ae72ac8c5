import type { Page } from '@playwright/test'
import packageJson from '../../package.json' with { type: 'json' }
import { drawn, openApp, openDrill, repetition, shown, type } from './support/app'
import { violations } from './support/axe'
import { expect, test } from './support/test'

test('axe does find what is wrong, on the whole and in the colours', async ({ page }) => {
  await openApp(page)
  await drawn(page)
  await page.evaluate(() => {
    const pale = document.createElement('button')
    pale.textContent = 'pale'
    pale.style.color = 'white'
    document.querySelector('main')?.append(document.createElement('button'), pale)
  })
  expect(await violations(page)).toMatchObject([
    expect.stringMatching(/^button-name/),
    expect.stringMatching(/^color-contrast/),
  ])
  expect(await violations(page, 'colours')).toMatchObject([
    expect.stringMatching(/^color-contrast/),
  ])
})

test('with the keyboard alone a first drill is begun, played and ended', async ({ page }) => {
  await openApp(page, { inputs: [] })
  await drawn(page)
  await tabTo(page, 'Start the drill')
  await page.keyboard.press('Enter')
  await page.locator('.practice').waitFor()
  await drawn(page)
  await tabTo(page, 'Options')
  await page.keyboard.press('Enter')
  await page.keyboard.press('Tab')
  await page.keyboard.type('notes')
  await expect(page.getByRole('combobox', { name: 'Judge' })).toHaveValue('notes')
  await page.keyboard.press('Shift+Tab')
  await page.keyboard.press('Enter')
  await type(page, 'ASDFGHJK')
  await expect(shown(page).message).toHaveText('Clean.')
  await page.keyboard.press('ArrowUp')
  await expect(shown(page).rung).toHaveAttribute('data-rung', '54')
  await page.keyboard.press('Escape')
  await expect(page.locator('.share')).toHaveAttribute('data-share', '1')
  await tabTo(page, 'again')
  await page.keyboard.press('Enter')
  await expect(shown(page).rung).toHaveAttribute('data-rung', '54')
})

test('the notes are told in words, and every verdict is announced in one status region that stays', async ({
  page,
}) => {
  await openDrill(page)
  await expect(page.getByRole('img', { name: 'Eighths: C5, D5, E5, F5, G5.' })).toBeVisible()
  const region = page.getByRole('status')
  await expect(region).toHaveCount(1)
  await expect(region).toHaveAttribute('aria-live', 'polite')
  await region.evaluate((element) => element.setAttribute('data-first', 'yes'))
  await repetition(page)
  await expect(region).toHaveText('Clean.')
  await repetition(page, 'C5 D5 E5 F#5 G5')
  await expect(region).toHaveText('Flawed: F♯5 in place of F5.')
  await expect(region).toHaveAttribute('data-first', 'yes')
})

test('who wants less motion sees the counters jump instead of slide', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await openDrill(page)
  for (const moving of ['.counter', '.weight']) {
    const time = await page
      .locator(moving)
      .first()
      .evaluate((element) => parseFloat(getComputedStyle(element).transitionDuration))
    expect(time, moving).toBeLessThan(0.01)
  }
})

test('on a phone that lies flat the notes, the verdict, the streak and the tempo are in sight', async ({
  page,
}) => {
  await page.setViewportSize({ width: 844, height: 390 })
  await openDrill(page)
  await drawn(page)
  for (const part of ['.notation svg', '.practice-message', '.tray', '.scale']) {
    const box = await page.locator(part).first().boundingBox()
    expect((box?.y ?? Infinity) + (box?.height ?? 0), part).toBeLessThanOrEqual(390)
  }
})

/** Presses Tab until the element of this name has the focus, and sees that it shows. */
const tabTo = async (page: Page, name: string): Promise<void> => {
  const focused = page.locator(':focus')
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press('Tab')
    if ((await focused.count()) === 0) continue
    const outline = await focused.evaluate((element) => getComputedStyle(element).outlineStyle)
    expect(outline, await focused.evaluate((element) => element.outerHTML)).not.toBe('none')
    if ((await focused.innerText()) === name) return
  }
  throw new Error(`Tab does not lead to ${name}`)
}

test('the licence of everything that is shipped can be read', async ({ page }) => {
  await openApp(page, { address: '#/licences' })
  await page.getByRole('heading', { name: 'Licences' }).waitFor()
  const rows = page.locator('.licences summary')
  await expect(rows.first()).toBeVisible()
  const named = await rows.allTextContents()
  expect(new Set(named).size).toBe(named.length)
  const shipped = Object.keys(packageJson.dependencies)
    // tonal is a list of its parts, which are shipped in its place.
    .map((name) => (name === 'tonal' ? '@tonaljs/note' : name))
    .concat('workbox-core')
  for (const name of shipped)
    expect(
      named.filter((row) => row.startsWith(`${name} `)),
      name,
    ).toHaveLength(1)
  await rows.filter({ hasText: 'verovio' }).click()
  await expect(page.getByText('GNU LESSER GENERAL PUBLIC LICENSE').first()).toBeVisible()
})
