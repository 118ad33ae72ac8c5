import { fileURLToPath } from 'node:url'
import type { Page } from '@playwright/test'
import { parseKey } from '@/music/pitch'
import { monthOfPractice } from '../support/monthOfPractice'
import {
  drawn,
  goTo,
  heard,
  idOf,
  journal,
  openApp,
  shown,
  stage,
  withoutTrial,
} from './support/app'
import { violations } from './support/axe'
import { keyboardFaults } from './support/keyboard'
import { takeIn } from './support/record'
import { overflow } from './support/screens'
import { expect, test } from './support/test'

const shots = fileURLToPath(new URL('./shots', import.meta.url))
// Days are those of the machine's own time zone.
test.use({ timezoneId: 'UTC' })

const ferry = idOf('ferry-at-dusk.mid')

/** A profile with a month of practice behind it. */
const openMonth = async (page: Page): Promise<void> => {
  await openApp(page, { address: '#/taptest' })
  await page.getByRole('heading', { name: 'Tap test' }).waitFor()
  await withoutTrial(page)
  await takeIn(page, monthOfPractice(Date.now()))
  await goTo(page, '#/')
  await page.getByRole('heading', { name: 'Pieces', exact: true }).waitFor()
}

/** Milliseconds from one onset to the next: brisk, and steady. */
const gap = 100

/** Plays once what is on the desk, as the page tells it to whoever does not see it, and waits for what is said of it. */
const playThrough = async (page: Page, isRight = true): Promise<void> => {
  const notes = await page.locator('.practice .notation [role=img]').getAttribute('aria-label')
  const onsets = onsetsIn(notes ?? '')
  // A slip of the finger at the second onset, always the same.
  const keys = onsets.map(([first = 60, ...others], i) =>
    i === 1 && !isRight ? [first + 1, ...others] : [first, ...others],
  )
  const messages = keys
    .flatMap((together, i) =>
      together.flatMap((key) => [
        { bytes: [0x90, key, 64], at: i * gap },
        { bytes: [0x80, key, 0], at: (i + 0.5) * gap },
      ]),
    )
    .toSorted((one, other) => one.at - other.at)
  await heard(page)
  const { message, strokes } = shown(page)
  const told = async (): Promise<string> => `${await strokes.count()} ${await message.innerText()}`
  const before = await told()
  await page.evaluate(([name, all]) => window.fakeMidi.play(name, all), [stage, messages] as const)
  await expect.poll(told).not.toBe(before)
}

/** 'Ferry at Dusk, bar 3, both hands. Quarters: right C5, left C3 with E3; right D5.' -> the keys of each onset. */
const onsetsIn = (told: string): readonly (readonly number[])[] =>
  told
    .split('. ')
    // What it is, before the notes of it.
    .slice(1)
    .flatMap((run) => run.replace(/^[^:]*: /, '').split(told.includes('right ') ? '; ' : ', '))
    .map((onset) =>
      [...onset.matchAll(/[A-G][♯♭]?\d/g)].flatMap(
        ([name]) => parseKey(name.replace('♯', '#').replace('♭', 'b')) ?? [],
      ),
    )

/** The item of today that is on the desk. */
const onDesk = (page: Page) => page.locator('.day-line')
const reached = (page: Page, item: number): Promise<void> =>
  expect(onDesk(page)).toHaveAttribute('data-number', String(item), { timeout: 15_000 })
/** G and at once a letter lead from page to page. */
const goByKey = async (page: Page, letter: string, heading: string): Promise<void> => {
  await page.keyboard.press('g')
  await page.keyboard.press(letter)
  await page.getByRole('heading', { level: 1, name: heading }).waitFor()
}

test('an evening without the mouse: today’s plan, exercises, a cold check, a problem solved, a note, the review, and back', async ({
  page,
}) => {
  test.slow()
  await openMonth(page)
  // From here on no mouse.
  await page.keyboard.press('t')
  await page.getByRole('heading', { name: 'Today' }).waitFor()
  const rows = page.locator('.day-list li')
  await expect(rows.first()).toHaveAttribute('data-kind', 'warmUp')
  await page.keyboard.press('ArrowUp')
  await expect(page.locator('.day-minutes')).toContainText('35 minutes')
  await page.keyboard.press('ArrowDown')
  await expect(page.locator('.today-sum')).toContainText('30 minutes')
  const begun = Date.now()
  await page.keyboard.press('Enter')
  await page.locator('.practice').waitFor()
  await reached(page, 1)
  await expect(onDesk(page)).toContainText('3 min left')
  await drawn(page)
  await playThrough(page)
  await expect(shown(page).message).toContainText('Clean.')
  // Shortened: on to the cold checks.
  await page.keyboard.press('ArrowRight')
  await reached(page, 2)
  await expect(onDesk(page)).toContainText('cold check')
  await playThrough(page)
  await expect(shown(page).message).toContainText('Next:')
  // One item flows into the next after a breath.
  await reached(page, 3)
  await expect(onDesk(page)).toHaveAttribute('data-kind', 'coldCheck')
  const before = page.url()
  // Played later: the next place comes first, and this one after it.
  await page.keyboard.press('ArrowLeft')
  await page.waitForURL((url) => url.href !== before)
  await reached(page, 3)
  await expect(onDesk(page)).not.toHaveAttribute('data-kind', 'coldCheck')
  // What is said of today pushes nothing out of the window.
  await expect(page.locator('.passage-line')).toBeVisible()
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBe(800)
  await drawn(page)

  // The same slip twice is a problem: a remedy, three clean, and it is solved.
  await playThrough(page, false)
  await playThrough(page, false)
  await page.locator('.remedies').waitFor()
  await page.keyboard.press('1')
  await page.locator('.remedies').waitFor({ state: 'detached' })
  for (let i = 0; i < 3; i++) await playThrough(page)
  await expect(shown(page).message).toContainText('Solved: 3 clean in a row.')
  await page.keyboard.press('Space')
  await expect(shown(page).message).not.toContainText('Solved')
  // A note of it, while the drill waits.
  await page.keyboard.press('9')
  const field = page.getByRole('textbox', { name: 'A new entry' })
  await expect(field).toBeFocused()
  await page.keyboard.type('Look *ahead* at the slip.')
  await page.keyboard.press('Control+Enter')
  await expect(page.getByRole('dialog').getByRole('status')).toHaveText('Written.')
  await page.keyboard.press('Escape')
  await expect(field).toHaveCount(0)

  // Skipped: the rest of it, and one that was not played, for another day. Then a third exercise.
  await page.keyboard.press('ArrowRight')
  await reached(page, 4)
  await page.keyboard.press('ArrowRight')
  await reached(page, 5)
  await drawn(page)
  await playThrough(page)
  await page.keyboard.press('Escape')
  await page.getByRole('heading', { name: 'This session' }).waitFor()
  await expect(page.getByRole('region', { name: 'Problems' })).toContainText('solved')

  await goByKey(page, 'n', 'Notebook')
  await expect(page.getByRole('main')).toContainText('Look ahead at the slip.')
  await expect(page.getByText('1 problem in drills: 1 solved')).toBeVisible()
  await goByKey(page, 'r', 'Review')
  await goByKey(page, 't', 'Today')
  await expect(page.locator('.day-list li[data-outcome=begun]')).not.toHaveCount(0)
  await expect(page.locator('.day-list li[data-outcome=done]')).not.toHaveCount(0)
  await expect(page.locator('.day-list li[data-outcome=left]')).toHaveCount(1)
  await expect(page.locator('.day-list li[data-on=true]')).toHaveCount(1)
  // And back to where it was left.
  await page.keyboard.press('Enter')
  await page.locator('.practice').waitFor()
  await reached(page, 5)

  // A check is one repetition of a whole place at its goal tempo.
  const events = (await journal(page)).filter(({ atEpochMs }) => atEpochMs >= begun)
  expect(events.filter(({ kind }) => kind === 'remedyEnded')).toMatchObject([{ outcome: 'solved' }])
  const checks = events.flatMap((e) =>
    e.kind === 'drillBegun' && !e.reach && !e.passage ? [e.drill] : [],
  )
  const played = checks.map(
    (drill) => events.filter((e) => e.kind === 'repetition' && e.drill === drill).length,
  )
  expect(played).toContain(1)
})

test('the pages of the plan are whole, readable and accessible, narrow and wide, by day and in the evening', async ({
  page,
}) => {
  test.slow()
  await openMonth(page)
  await expect(page.locator('.today-way a')).toBeVisible()
  const found: string[] = []
  for (const [name, address, ready] of [
    ['today', '#/today', '.day-list li'],
    ['weeks', `#/plan/${ferry}`, '.plan-word[data-word] p'],
  ] as const) {
    await goTo(page, address)
    await page.locator(ready).first().waitFor()
    await page.getByText('The same as a table').or(page.locator('.day-list')).first().click()
    for (const width of [320, 390, 820, 1280, 1920]) {
      await page.setViewportSize({ width, height: width < 500 ? 844 : 1080 })
      await expect.poll(() => overflow(page), `${name} ${width}`).toEqual({ by: 0, out: [] })
      if (width !== 390 && width !== 1280) continue
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme })
        if (width === 390)
          for (const each of await violations(page, colorScheme === 'light' ? 'all' : 'colours'))
            found.push(`${name}, ${width}, ${colorScheme}: ${each}`)
        const path = `${shots}/${name}-${width}-${colorScheme}.png`
        await page.screenshot({ path, animations: 'disabled', fullPage: true })
      }
      if (width === 1280)
        for (const each of await keyboardFaults(page)) found.push(`${name}: ${each}`)
    }
  }
  expect(found).toEqual([])
})

test('the weeks of a piece: a stretch of the picture leads to its build-up, and its estimate goes with the minutes', async ({
  page,
}) => {
  await openApp(page, { address: `#/plan/${ferry}` })
  const weeks = page.locator('.plan-weeks b')
  await expect(weeks).toContainText('weeks')
  // Without a record it says what the estimate rests on.
  await expect(page.getByText('Estimated without a record')).toBeVisible()
  await expect(page.locator('.plan-word')).toContainText('Nothing is kept yet')
  const usual = await weeks.innerText()
  await page.getByRole('combobox', { name: 'Minutes a day' }).selectOption('10')
  await expect(weeks).not.toHaveText(usual)
  const left = page.locator('.plan-stretches[data-lane=left] a').first()
  await expect(left).toHaveAttribute('data-state', 'untouched')
  await left.click()
  await page.getByRole('heading', { name: 'Build-up' }).waitFor()
  await expect(page.getByRole('combobox', { name: 'Hands' })).toHaveValue('left')
  // Nothing is practised yet: today asks for a piece, and begins with its hardest place.
  await goTo(page, '#/today')
  await expect(page.getByText('Choose a piece: its hardest place comes first.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Start' })).toBeDisabled()
  await page.getByRole('checkbox', { name: 'Ferry at Dusk' }).check()
  await expect(page.locator('.day-list li[data-kind=newGroup]').first()).toContainText('bars 9–12')
  await expect(page.getByRole('button', { name: 'Start' })).toBeEnabled()
})
