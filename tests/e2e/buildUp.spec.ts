import type { Page } from '@playwright/test'
import {
  drawn,
  fiveNotes,
  goTo,
  heard,
  idOf,
  journal,
  openApp,
  openDrill,
  play,
  repetition,
  shown,
  stage,
  withoutTrial,
} from './support/app'
import { expect, test } from './support/test'

const piece = idOf('morning-at-the-mill.mid')
/** The first five notes of bar 9, right hand, briskly: two small exercises and the whole. */
const plan = '32-34/right/brisk/forward'

const wrongF = 'C5 D5 E5 F#5 G5'

/** Treads on a pedal and lets it up: MIDI 1.0, controllers 66 and 67. */
const tread = async (page: Page, controller: 66 | 67): Promise<void> => {
  await heard(page)
  await page.evaluate(
    ([name, pedal]) =>
      window.fakeMidi.play(name, [
        { bytes: [0xb0, pedal, 127], at: 0 },
        { bytes: [0xb0, pedal, 0], at: 120 },
      ]),
    [stage, controller] as const,
  )
}
/** Binds a command in the options by pressing, as a person does. */
const bind = async (page: Page, command: string, press: () => Promise<void>): Promise<void> => {
  const row = page.locator('.command-keys li').filter({ hasText: command }).first()
  await row.getByRole('button').first().click()
  await press()
  await expect(row.getByRole('button').first()).not.toContainText('press')
}
const options = (page: Page) => page.getByText('Options', { exact: true })

const openBuildUp = async (page: Page, goal?: number): Promise<void> => {
  await openApp(page, { address: '#/taptest' })
  await page.getByRole('heading', { name: 'Tap test' }).waitFor()
  await withoutTrial(page)
  const wanted = options(page)
  await wanted.click()
  await page.getByRole('combobox', { name: 'Streak goal' }).selectOption('3')
  await wanted.click()
  if (goal !== undefined) {
    await goTo(page, `#/piece/${piece}`)
    await page.getByRole('spinbutton', { name: 'Goal tempo' }).fill(`${goal}`)
    await page.getByRole('button', { name: 'Build it up' }).click()
    await page.getByRole('heading', { name: 'Build-up' }).waitFor()
    // Else the list of that build-up would be taken for the one that is asked for below.
    await goTo(page, '#/taptest')
    await page.getByRole('heading', { name: 'Tap test' }).waitFor()
  }
  await goTo(page, `#/buildup/${piece}/${plan}`)
  await page.getByRole('heading', { name: 'Build-up' }).waitFor()
}
/** The names of the written notes of what is on the desk, from the drill's own keys. */
const notesOf = async (page: Page): Promise<string> => {
  const [, from = '', to = ''] = /practice\/[^/]+\/([^-]+)-([^/]+)\//.exec(page.url()) ?? []
  const beat = (text: string): number => {
    const [n = 0, of = 1] = text.split('_').map(Number)
    return n / of
  }
  // Eighths from C5 on the 33rd quarter.
  const all = ['C5', 'D5', 'E5', 'F5', 'G5']
  return all.slice((beat(from) - 32) * 2, (beat(to) - 32) * 2 + 1).join(' ')
}

/** Waits until the next exercise is on the desk, or the list when all is done. */
const afterBreath = (page: Page): Promise<void> =>
  expect(page.locator('.breath')).toHaveCount(0, { timeout: 15_000 })

/** How many repetitions the strokes tell of, as words, since fewer may be shown. */
const told = async (page: Page): Promise<number> => {
  const label = (await page.locator('.strokes').getAttribute('aria-label')) ?? ''
  return (label.match(/\d+/g) ?? []).reduce((sum, count) => sum + Number(count), 0)
}

/** Plays what is on the desk three times, the streak goal, without waiting for a verdict. */
const threeTimes = async (page: Page): Promise<void> => {
  const before = await told(page)
  const notes = await notesOf(page)
  await play(page, `${notes} - - ${notes} - - ${notes}`, { gap: 120 })
  await expect.poll(() => told(page)).toBe(before + 3)
}

test('a whole build-up is played without touching mouse or keyboard, and the list says that all is done', async ({
  page,
}) => {
  test.slow()
  // Few rungs lead to so slow a goal.
  await openBuildUp(page, 20)
  const rows = page.locator('.exercises li')
  const count = await rows.count()
  expect(count).toBeGreaterThan(1)
  await expect(page.locator('.build-up-sum')).toContainText(/about .*minute/)
  // The left pedal, which means “again”, begins it.
  await options(page).click()
  await bind(page, 'Again', () => tread(page, 67))
  await options(page).click()
  await tread(page, 67)
  await page.locator('.practice').waitFor()
  for (let played = 0; played < 30 && page.url().includes('practice'); played++) {
    if ((await page.locator('.breath').count()) > 0) {
      await afterBreath(page)
      continue
    }
    const line = page.locator('.passage-line')
    await expect(line).toHaveAttribute('data-of', `${count}`)
    await threeTimes(page)
  }
  await page.getByText(`All ${count} exercises are done.`).waitFor()
  await expect(page.locator('.exercises li[data-state=done]')).toHaveCount(count)
  const events = await journal(page)
  expect(events.filter(({ kind }) => kind === 'exerciseDone')).toHaveLength(count)
  expect(events.filter(({ kind }) => kind === 'secure')).toHaveLength(1)
})

test('the next exercise is engraved before it is on the desk; a reload comes back to it, and the list knows what is done', async ({
  page,
}) => {
  await openBuildUp(page)
  await page.keyboard.press('Enter')
  await drawn(page)
  for (let i = 0; i < 3; i++) await repetition(page, await notesOf(page))
  await page.locator('.breath').waitFor()
  const first = page.url()
  // What stands on the desk in the frame after the exercise has changed.
  const waiting = page.evaluate(
    (url) =>
      new Promise<string>((resolve) => {
        const look = (): void => {
          if (location.href === url) return void requestAnimationFrame(look)
          setTimeout(() => {
            const drawing = document.querySelector('.notation')
            resolve(
              `${drawing?.getAttribute('data-drawing')} ${document.querySelectorAll('.notation .note').length}`,
            )
          }, 250)
        }
        look()
      }),
    first,
  )
  const standing = await waiting
  const notes = (await notesOf(page)).split(' ').length
  expect(standing).toBe(`drawn ${notes}`)
  await repetition(page, await notesOf(page))
  const second = page.url()
  await page.reload()
  expect(page.url()).toBe(second)
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
  await expect(page.locator('.passage-line')).toHaveAttribute('data-number', '2')
  await goTo(page, `#/buildup/${piece}/${plan}`)
  await expect(page.locator('.exercises li[data-state=done]')).toHaveCount(1)
  await expect(page.locator('.exercises li[data-state=next]')).toHaveCount(1)
})

test('on the piece’s page “Build it up” lays out the chosen bars', async ({ page }) => {
  await openApp(page)
  await drawn(page)
  await page.getByRole('button', { name: 'Build it up' }).click()
  await page.getByRole('heading', { name: 'Build-up' }).waitFor()
  await expect(page.locator('.build-up-sum')).toContainText('Bar 9')
  const brisk = await page.locator('.exercises li').count()
  await page.getByRole('radio', { name: 'thorough' }).click()
  await expect.poll(() => page.locator('.exercises li').count()).toBeGreaterThan(brisk)
  await page.getByRole('radio', { name: 'from the end' }).click()
  await page.reload()
  await expect(page.getByRole('radio', { name: 'thorough' })).toBeChecked()
  await expect(page.getByRole('radio', { name: 'from the end' })).toBeChecked()
})

test('the same slip twice stops the drill; one key starts a remedy, and solved it leads back', async ({
  page,
}) => {
  await openDrill(page)
  await repetition(page, wrongF)
  await repetition(page)
  await repetition(page, wrongF)
  const remedies = page.locator('.remedies button')
  await expect(remedies.first()).toBeVisible()
  expect(await remedies.count()).toBeGreaterThanOrEqual(2)
  await expect(shown(page).message).toContainText(
    'F♯5 in place of F5 at onset 4, twice: solve it before repeating it.',
  )
  await expect(shown(page).message).toContainText('Bar 9, beat 2')
  const rung = Number(await shown(page).rung.getAttribute('data-rung'))
  await page.keyboard.press('2')
  await expect(remedies).toHaveCount(0)
  const there = Number(await shown(page).rung.getAttribute('data-rung'))
  expect(there).toBeLessThan(rung)
  const remedy = (await journal(page)).findLast(({ kind }) => kind === 'drillBegun')
  if (remedy?.kind !== 'drillBegun') throw new Error('no drill of a remedy was begun')
  await drawn(page)
  const from =
    (Number(remedy.place.from.replace('_2', '')) / (remedy.place.from.includes('_') ? 2 : 1) - 32) *
    2
  const to =
    (Number(remedy.place.to.replace('_2', '')) / (remedy.place.to.includes('_') ? 2 : 1) - 32) * 2
  const notes = fiveNotes.notes
    .split(' ')
    .slice(from, to + 1)
    .join(' ')
  for (let i = 0; i < 3; i++) await repetition(page, notes)
  await expect(shown(page).message).toContainText('Solved')
  await expect(shown(page).message).toContainText('Back to the drill')
  await expect(page.locator('.breath')).toHaveCount(0, { timeout: 10_000 })
  await expect(page.locator('.notation .note')).toHaveCount(5)
  await repetition(page)
  const kinds = (await journal(page)).map(({ kind }) => kind)
  expect(kinds).toEqual(
    expect.arrayContaining(['problemNamed', 'remedyBegun', 'remedyEnded', 'rungChanged']),
  )
})

test('who leaves a remedy is back at the problem, and can go on all the same', async ({ page }) => {
  await openDrill(page)
  for (const notes of [wrongF, fiveNotes.notes, wrongF]) await repetition(page, notes)
  await page.locator('.remedies').waitFor()
  await page.keyboard.press('1')
  await expect(page.locator('.remedies')).toHaveCount(0)
  await page.keyboard.press('Backspace')
  await expect(page.locator('.remedies')).toBeVisible()
  await page.keyboard.press('Space')
  await expect(page.locator('.remedies')).toHaveCount(0)
  await repetition(page)
  const what = (await journal(page)).flatMap((e) => (e.kind === 'overruled' ? [e.what] : []))
  expect(what).toEqual(['remedy', 'problem'])
})

test('a pedal and a key outside the passage are learnt by pressing, and mean their commands', async ({
  page,
}) => {
  await openDrill(page)
  await options(page).click()
  await bind(page, 'Again', () => tread(page, 67))
  await bind(page, 'Next', () => play(page, 'C8'))
  await expect(page.locator('.command-keys')).toContainText('left pedal')
  await expect(page.locator('.command-keys')).toContainText('C8')
  await options(page).click()
  await expect(page.getByRole('button', { name: 'Again' })).toContainText('left pedal')
  const { strokes, streak } = shown(page)
  await play(page, 'C5 D5', { gap: 150 })
  await tread(page, 67)
  await expect(strokes).toHaveCount(1)
  await expect(strokes.first()).toHaveAttribute('data-verdict', 'brokenOff')
  await repetition(page)
  await expect(streak).toHaveAttribute('data-streak', '1')
  const before = page.url()
  await play(page, 'C8')
  await page.waitForURL((url) => url.href !== before)
  await expect(page.locator('.practice')).toBeVisible()
  await page.reload()
  await expect(page.getByRole('button', { name: 'Again' })).toContainText('left pedal')
})

test('a bound key that belongs to the passage plays, and the page says so', async ({ page }) => {
  await openDrill(page)
  await options(page).click()
  await bind(page, 'Again', () => play(page, 'A5'))
  await options(page).click()
  // G5 is the highest key of the passage; A5 lies within a fourth of it.
  await expect(page.getByRole('button', { name: 'Again' })).not.toContainText('A5')
  await repetition(page, 'C5 D5 E5 F5 A5')
  await expect(shown(page).message).toHaveText('Flawed: A5 in place of G5.')
  await page.keyboard.press('?')
  await expect(page.getByRole('dialog')).toContainText('A5, which here belongs to the passage')
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog')).toBeHidden()
  await expect(page.locator('.practice')).toBeVisible()
})

test('the first drill of a chunk begins with a trial that can be left', async ({ page }) => {
  await openApp(page, { address: `#/practice/${piece}/${fiveNotes.place}` })
  await page.locator('.practice').waitFor()
  const { message, rung } = shown(page)
  await expect(message).toContainText('A short trial')
  await expect(rung).toHaveAttribute('data-rung', '52')
  for (let i = 0; i < 3; i++) await repetition(page)
  await expect(rung).toHaveAttribute('data-rung', '56')
  await expect(message).toContainText('Three of three clean at 52: now 56.')
  await page.keyboard.press('Backspace')
  await expect(message).toContainText('the drill starts at 52')
  await expect(shown(page).streak).toHaveAccessibleName('0 of 5 clean repetitions in a row')
})
