import type { Page } from '@playwright/test'
import packageJson from '../../package.json' with { type: 'json' }
import { drawn, openApp, openDrill, repetition, shown, type } from './support/app'
import { violations } from './support/axe'
import { keyboardFaults } from './support/keyboard'
import { expect, test } from './support/test'

test('axe does find what is wrong, on the whole and in the colours, and so does the search by keys', async ({
  page,
}) => {
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
  await page.evaluate(() => {
    const plain = document.createElement('button')
    plain.style.outline = 'none'
    plain.className = 'primary'
    plain.textContent = 'plain'
    const lettered = document.createElement('button')
    lettered.innerHTML = 'lettered <kbd>Q</kbd>'
    document.querySelector('main')?.append(plain, lettered)
  })
  expect(await keyboardFaults(page)).toMatchObject([
    expect.stringMatching(/^not reached by Tab with a ring: .*plain/),
    'a main action without a key: plain',
    'not in the list: Q',
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

test('who wants less motion sees nothing slide, grow or shrink', async ({ page }) => {
  await openDrill(page)
  await drawn(page)
  const moved = await watchMotion(page)
  await repetition(page)
  expect(await moved()).toContain('counter')
  await page.emulateMedia({ reducedMotion: 'reduce' })
  // As far as the goal tempo, then on to the breath after the last one.
  for (let rungs = 0; rungs < 20; rungs++) await page.keyboard.press('ArrowUp')
  // What began to slide before comes to its end.
  await expect.poll(moved).toEqual([])
  for (let i = 0; i < 5; i++) await repetition(page)
  await expect(page.locator('.breath')).toBeAttached()
  expect(await moved()).toEqual([])
})

test('nothing leaves its place while one plays, on no screen and not even at a problem', async ({
  page,
}) => {
  await openDrill(page)
  await drawn(page)
  const shifts = await watchShifts(page)
  const slipped = 'C5 Eb5 E5 F5 G5'
  for (const [width, height] of [
    [1280, 800],
    [820, 1180],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height })
    await expect(page.locator('.practice-count')).toHaveAttribute('data-stopped', 'false')
    await repetition(page)
    await shifts()
    for (const notes of [slipped, undefined, slipped]) await repetition(page, notes)
    const last = page.locator('.remedies button').last()
    await last.waitFor()
    const offered = await last.boundingBox()
    expect((offered?.y ?? Infinity) + (offered?.height ?? 0), 'in sight').toBeLessThan(height)
    await page.keyboard.press('Space')
    await repetition(page)
    expect(await shifts(), `${width} × ${height}`).toEqual([])
  }
  // The watch does see what moves.
  await page.locator('.practice-head').evaluate((head: HTMLElement) => {
    head.style.paddingBottom = '3rem'
  })
  await expect.poll(shifts).not.toEqual([])
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

/** From now on what is seen to move by itself, frame by frame; gives its classes since it was last asked. */
const watchMotion = async (page: Page): Promise<() => Promise<readonly string[]>> => {
  const seen = await page.evaluateHandle(() => {
    const names = new Set<string>()
    const look = (): void => {
      for (const { effect } of document.getAnimations())
        if (effect instanceof KeyframeEffect && Number(effect.getComputedTiming().duration) > 0)
          names.add(effect.target?.getAttribute('class') ?? '')
      requestAnimationFrame(look)
    }
    look()
    return names
  })
  return () =>
    seen.evaluate((names) => {
      const all = [...names]
      names.clear()
      return all
    })
}

/** From now on what of the page is pushed to another place, its elements or texts, since it was last asked. */
const watchShifts = async (page: Page): Promise<() => Promise<readonly string[]>> => {
  const seen = await page.evaluateHandle(() => {
    const moved: string[] = []
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries())
        for (const { node } of (entry as unknown as { sources: { node?: Node }[] }).sources)
          moved.push(node instanceof Element ? node.className : (node?.nodeName ?? 'gone'))
    }).observe({ type: 'layout-shift' })
    return moved
  })
  return () => seen.evaluate((moved) => moved.splice(0))
}

/** Presses Tab until the element of this name has the focus, and sees that it shows. */
const tabTo = async (page: Page, name: string): Promise<void> => {
  const focused = page.locator(':focus')
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press('Tab')
    if ((await focused.count()) === 0) continue
    const outline = await focused.evaluate((element) => getComputedStyle(element).outlineStyle)
    expect(outline, await focused.evaluate((element) => element.outerHTML)).not.toBe('none')
    // The key that does the same may be printed beside it.
    if ((await focused.innerText()).startsWith(name)) return
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
