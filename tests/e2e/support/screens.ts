import { fileURLToPath } from 'node:url'
import type { Page } from '@playwright/test'
import { drawn, firstPiece, goTo, idOf, openApp, plug, pull, repetition, withoutTrial } from './app'

/** Where pictures of screens go; git ignores them. */
export const shots = fileURLToPath(new URL('../shots', import.meta.url))

/**
 * Goes through the program as a person does, and stops at every screen: the app's own pages, the
 * drill before, amid and after playing, and what can be opened on top of it.
 */
export const visitScreens = async (
  page: Page,
  visit: (name: ScreenName) => Promise<void>,
): Promise<void> => {
  await openApp(page)
  await page.getByRole('heading', { name: firstPiece }).waitFor()
  await drawn(page)
  await visit('piece')
  await visitOthers(page, visit)
  await withoutTrial(page)
  await page.getByRole('link', { name: firstPiece }).click()
  await page.getByRole('button', { name: 'Start the drill' }).click()
  await page.locator('.practice').waitFor()
  await drawn(page)
  await visit('practice-start')
  await visitOpened(page, visit)
  await visitDrill(page, visit)
}

export type ScreenName =
  | 'piece'
  | 'summary-empty'
  | 'lost'
  | 'pieces'
  | 'tap-test'
  | 'practice-start'
  | 'options'
  | 'no-keyboard'
  | 'practice-flaws'
  | 'practice-paused'
  | 'practice-problem'
  | 'practice-remedy'
  | 'practice-exercise'
  | 'build-up'
  | 'keys'
  | 'summary'

type Visit = (name: ScreenName) => Promise<void>

const visitOthers = async (page: Page, visit: Visit): Promise<void> => {
  await page.getByRole('link', { name: 'Session' }).click()
  await page.getByRole('heading', { name: 'This session' }).waitFor()
  await visit('summary-empty')
  await goTo(page, '#/piece/p0000')
  await page.getByRole('heading', { name: 'Not here' }).waitFor()
  await visit('lost')
  await goTo(page, '#/taptest')
  await page.getByRole('heading', { name: 'Tap test' }).waitFor()
  await visit('tap-test')
  // Both hands, the first four bars.
  await goTo(page, `#/buildup/${idOf('ferry-at-dusk.mid')}/0-11/both/brisk/forward`)
  await page.getByRole('heading', { name: 'Build-up' }).waitFor()
  await visit('build-up')
  await page.getByRole('navigation').getByRole('link', { name: 'Pieces', exact: true }).click()
  await page.getByRole('heading', { name: 'Pieces', exact: true }).waitFor()
  await visit('pieces')
}

const visitOpened = async (page: Page, visit: Visit): Promise<void> => {
  const options = page.getByText('Options', { exact: true })
  await options.click()
  await page.getByRole('combobox', { name: 'Streak goal' }).waitFor()
  await visit('options')
  await options.click()
  await pull(page)
  const instrument = page.locator('.instrument summary')
  await instrument.click()
  await visit('no-keyboard')
  await instrument.click()
  await plug(page)
}

const visitDrill = async (page: Page, visit: Visit): Promise<void> => {
  await repetition(page, 'C5 D5 E5 F5 G5 A5 B5 C6')
  await repetition(page, 'C5 D5 E5 F5 G5 A5 B5 C6')
  // A wrong key, a missing one, a stop, and an extra one.
  await repetition(page, 'C5 Eb5 E5 G5 - - - - A5 Bb5 B5 C6')
  await visit('practice-flaws')
  await repetition(page, 'C5 D5 E5 F5 G#5 A5 B5 C6')
  await page.getByRole('button', { name: 'Go on' }).waitFor()
  await visit('practice-paused')
  await repetition(page, 'C5 D5 E5 F5 G#5 A5 B5 C6')
  await page.locator('.remedies').waitFor()
  await visit('practice-problem')
  await page.keyboard.press('1')
  await page.locator('.remedies').waitFor({ state: 'detached' })
  await visit('practice-remedy')
  const [piece] = /(?<=practice\/)[^/]+/.exec(page.url()) ?? []
  await goTo(page, `#/practice/${piece}/32-34/right/of/32-71_2/right/brisk/forward`)
  await page.locator('.passage-line').waitFor()
  await visit('practice-exercise')
  await page.keyboard.press('?')
  await page.getByRole('dialog').waitFor()
  await visit('keys')
  await page.keyboard.press('Escape')
  await page.getByRole('dialog').waitFor({ state: 'hidden' })
  await page.keyboard.press('Escape')
  await page.getByRole('heading', { name: 'What was drilled' }).waitFor()
  await visit('summary')
}

/** How far the page can be scrolled sideways, in pixels; and what stands out of it. */
export const overflow = (page: Page) =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement
    const out = [...document.querySelectorAll('main *, header *')].filter((element) => {
      const { left, right, width } = element.getBoundingClientRect()
      return (
        width > 0 &&
        (right > clientWidth + 1 || left < -1) &&
        !element.closest('.scroll, .unseen, svg')
      )
    })
    return {
      by: scrollWidth - clientWidth,
      out: out.map((element) => element.outerHTML.slice(0, 80)),
    }
  })
