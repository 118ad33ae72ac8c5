import type { Page } from '@playwright/test'
import { goTo, heard, journal, openApp, openDrill, shown, stage } from './support/app'
import { expect, test } from './support/test'

declare global {
  interface Window {
    /** Every sound handed to the audio clock: which clock, and when, in its seconds. */
    handed: { readonly context: BaseAudioContext; readonly when: number }[]
  }
}

/** Notes when each click is to sound; the sound stays what it is. */
const watchClicks = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    window.handed = []
    const start = Reflect.get(AudioBufferSourceNode.prototype, 'start')
    AudioBufferSourceNode.prototype.start = function (when = 0) {
      window.handed.push({ context: this.context, when })
      Reflect.apply(start, this, [when])
    }
  })

/**
 * Strikes keys `by` milliseconds after clicks as they are heard: one key to each click, or, with a
 * `gap`, from one click on, a key each gap. The clocks are read here anew, apart from the program.
 */
const strikeOnClicks = async (
  page: Page,
  keys: readonly number[],
  { by, gap }: { readonly by: number; readonly gap?: number },
): Promise<void> => {
  await heard(page, stage)
  await page.waitForFunction(() => window.handed.length > 0)
  await page.evaluate(
    async ({ name, all, late, each }) => {
      const wait = (until: number): Promise<void> =>
        new Promise((resolve) => setTimeout(resolve, Math.max(0, until - performance.now())))
      const context = window.handed.at(-1)?.context
      if (!(context instanceof AudioContext)) throw new Error('no audio context')
      const offsets: number[] = []
      const readClock = async (): Promise<void> => {
        const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp()
        if (contextTime > 0) offsets.unshift(performanceTime - contextTime * 1000)
        await wait(performance.now() + 8)
      }
      /** From the newest readings, since on a busy machine the sound stands still now and then. */
      const heardAt = (when: number): number => {
        const newest = offsets.slice(0, 40).toSorted((a, b) => a - b)
        return when * 1000 + (newest[Math.floor(newest.length / 2)] ?? NaN)
      }
      for (let i = 0; i < 40; i++) await readClock()
      let next = window.handed.findIndex(({ when }) => heardAt(when) > performance.now())
      if (next < 0) next = window.handed.length
      const nextClick = async (): Promise<number> => {
        while (window.handed.length <= next) await readClock()
        return window.handed[next++]?.when ?? 0
      }
      const first = await nextClick()
      for (const [i, key] of all.entries()) {
        const click = each === undefined && i > 0 ? await nextClick() : first
        const due = (): number => heardAt(click) + late + i * (each ?? 0)
        while (due() - performance.now() > 20) await readClock()
        const at = due()
        if (Number.isNaN(at)) throw new Error('the audio clock cannot be read')
        await wait(at)
        window.fakeMidi.send(name, [0x90, key, 64], at)
        await wait(at + 60)
        window.fakeMidi.send(name, [0x80, key, 0], at + 60)
      }
    },
    { name: stage, all: keys, late: by, each: gap },
  )
}

const message = (page: Page) => page.locator('.tap-message')
const inUse = (page: Page) => page.locator('.tap-in-use')

const startClicks = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Start the clicks' }).waitFor()
  await page.keyboard.press('Space')
}

/** Where the parts of the test's page stand, from above. */
const places = (page: Page): Promise<readonly number[]> =>
  page
    .locator('.tap-test > *, .tap-controls > button')
    .evaluateAll((all) => all.map((each) => Math.round(each.getBoundingClientRect().top)))

/** Takes the tap test with the keyboard alone, every strike `by` after its click. Nothing may move on the page. */
const takeTest = async (page: Page, by: number): Promise<number> => {
  await page.getByRole('button', { name: 'Start the clicks' }).waitFor()
  await page.evaluate(() => document.fonts.ready)
  const before = await places(page)
  await startClicks(page)
  await expect(message(page)).toHaveText('Strike any key with each click.')
  await strikeOnClicks(page, [60, 60, 60, 60], { by })
  expect(await places(page)).toEqual(before)
  await strikeOnClicks(page, Array<number>(12).fill(60), { by })
  await expect(message(page)).toHaveText(
    /^You strike \d+ ms after the click, give or take \d+ ms\.$/,
  )
  expect(await places(page)).toEqual(before)
  return Number(/\d+/.exec((await message(page).textContent()) ?? '')?.[0])
}

/** C5 D5 E5 F5 G5, eighths at 52 quarters a minute. */
const five = [72, 74, 76, 77, 79]
const eighth = 60_000 / 52 / 2

/** A repetition of `fiveNotes` against the metronome, each note `by` after its time. */
const repeatOnClicks = async (page: Page, by: number): Promise<void> => {
  const metronome = page.getByRole('button', { name: 'Metronome' })
  if ((await metronome.getAttribute('aria-pressed')) === 'false') await metronome.click()
  await expect(metronome).toHaveAttribute('aria-pressed', 'true')
  const { strokes } = shown(page)
  const before = await strokes.count()
  await strikeOnClicks(page, five, { by, gap: eighth })
  await expect(strokes).toHaveCount(before + 1)
}

/** How far the clicks by which the latest repetition was judged lie from its first key. */
const clickError = async (page: Page): Promise<number> => {
  const last = (await journal(page)).findLast((event) => event.kind === 'repetition')
  const quarter = 2 * eighth
  const clickMs = last?.clickMs ?? NaN
  return clickMs - Math.round(clickMs / quarter) * quarter
}

test('160 ms after the click is late, until the lag is measured on a page where nothing moves; it is kept after a reload, and used no more it is late again', async ({
  page,
}) => {
  await watchClicks(page)
  const drill = await openDrill(page)
  const options = page.getByText('Options', { exact: true })
  await options.click()
  await page.getByRole('combobox', { name: 'Judge' }).selectOption('time')
  await page.getByRole('heading', { level: 1 }).click()
  await repeatOnClicks(page, 160)
  await expect(shown(page).message).toHaveText(/^Flawed: .* late/)
  await options.click()
  await page.getByRole('link', { name: 'Measure the lag' }).click()
  await expect(page.getByRole('heading', { name: 'Tap test' })).toBeVisible()
  await expect(page.getByRole('link', { name: 'Measure the lag' })).toBeHidden()
  const lag = await takeTest(page, 160)
  expect(Math.abs(lag - 160)).toBeLessThanOrEqual(8)
  await page.keyboard.press('Enter')
  await expect(inUse(page)).toContainText(`In use: ${lag} ms after the click.`)
  await page.keyboard.press('Escape')
  await page.locator('.practice').waitFor()
  expect(new URL(page.url()).hash).toBe(drill)
  await repeatOnClicks(page, 160)
  await expect(shown(page).message).toHaveText('Clean.')
  expect(Math.abs(await clickError(page))).toBeLessThanOrEqual(8)
  await page.reload()
  await options.click()
  await expect(page.getByText('Lag against the click')).toContainText(`${lag} ms after the click`)
  await goTo(page, '#/taptest')
  await page.getByRole('button', { name: 'Use none' }).click()
  await expect(inUse(page)).toContainText('In use: none.')
  await goTo(page, drill)
  await repeatOnClicks(page, 160)
  // Where it falls on the note of the first time, it is a problem by now.
  await expect(shown(page).message).toHaveText(/^Flawed: .* late|late at onset \d, twice/)
})

test('the clicks stop by Space, and too few strikes are said to be too few', async ({ page }) => {
  await watchClicks(page)
  await openApp(page, { address: '#/taptest' })
  await startClicks(page)
  await strikeOnClicks(page, [60, 60, 60], { by: 10 })
  await expect(page.locator('.tap')).toHaveCount(3)
  await page.keyboard.press('Space')
  await expect(message(page)).toHaveText(/^Start the clicks/)
  await expect(page.locator('.tap')).toHaveCount(0)
  const before = await page.evaluate(() => window.handed.length)
  await page.waitForTimeout(1600)
  expect(await page.evaluate(() => window.handed.length)).toBe(before)
})
