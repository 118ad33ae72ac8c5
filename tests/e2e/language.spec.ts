import type { Page } from '@playwright/test'
import samples from '../../sample-midi/samples.json' with { type: 'json' }
import {
  chooseStandard,
  drawn,
  goTo,
  idOf,
  openApp,
  openDrill,
  play,
  repetition,
  shown,
} from './support/app'
import { expect, test } from './support/test'

const options = (page: Page) => page.locator('header details:not(.instrument) > summary')

/** By what can be chosen, since its name is in the language. */
const languages = (page: Page) => page.locator('header select:has(> option[value=de])')

test('the language changes in mid-drill and nothing is lost; no screen has an English sentence left; the choice and the notes’ names stay', async ({
  page,
}) => {
  await openDrill(page)
  await drawn(page)
  // A choice in mid-repetition takes its time.
  await chooseStandard(page, 'notes')
  const { message, streak } = shown(page)
  await repetition(page)
  await expect(message).toHaveText('Clean.')
  await options(page).click()
  await play(page, 'C5 D5', { gap: 150 })
  await languages(page).selectOption('de')
  await play(page, 'E5 F5 G5', { gap: 150 })
  // The repetition that was under way is not lost, and the sheet is still open, in the new words.
  await expect(streak).toHaveAttribute('data-streak', '2')
  await expect(page.locator('html')).toHaveAttribute('lang', 'de')
  await expect(message).toHaveText('Fehlerfrei.')
  await expect(streak).toHaveAccessibleName(/^2 von 5/)
  await expect(page.getByRole('combobox', { name: 'Sprache' })).toBeVisible()
  const found = (await lines(page)).filter((line) => english.test(line))
  await options(page).click()
  await repetition(page, 'C5 D5 Eb5 F5 G5')
  await expect(message).toHaveText('Fehlerhaft: Es5 statt E5.')
  await options(page).click()
  await page.getByRole('combobox', { name: 'Notennamen' }).selectOption('syllables')
  await expect(message).toHaveText('Fehlerhaft: mi♭5 statt mi5.')
  await options(page).click()
  expect([...found, ...(await englishLeft(page))]).toEqual([])
  await page.reload()
  await expect(page.locator('html')).toHaveAttribute('lang', 'de')
  await options(page).click()
  await expect(page.getByRole('combobox', { name: 'Notennamen' })).toHaveValue('syllables')
  await languages(page).selectOption('auto')
  await expect(page.locator('html')).toHaveAttribute('lang', 'en')
  await expect(page.getByRole('link', { name: 'Review' })).toBeVisible()
})

test.describe('on a German machine, where the words cannot be fetched', () => {
  test.use({ locale: 'de-DE', expectedErrors: [/ERR_FAILED/] })

  test('the page says so in those that it has', async ({ page }) => {
    await page.route(/german-/, (route) => route.abort())
    await openApp(page)
    await drawn(page)
    await options(page).click()
    await expect(page.getByRole('alert')).toContainText('Deutsch cannot be fetched')
    await expect(page.locator('html')).toHaveAttribute('lang', 'en')
  })
})

/** Words that no German sentence has. */
const english = /\b(the|of|with|your|is|are|to|not|and)\b/i

/** Goes through the screens, each with its list of keys. */
const englishLeft = async (page: Page): Promise<string[]> => {
  const piece = idOf('morning-at-the-mill.mid')
  const ferry = idOf('ferry-at-dusk.mid')
  const heading = 'main h1'
  const screens: readonly (readonly [address: string, stands: string])[] = [
    ['#/', heading],
    [`#/piece/${piece}`, '.notation[data-drawing=drawn]'],
    [`#/buildup/${ferry}/0-11/both/brisk/forward`, heading],
    [`#/plan/${piece}`, heading],
    ['#/today', heading],
    ['#/summary', heading],
    ['#/review', 'main table'],
    [`#/review/${piece}`, 'main table'],
    ['#/journal', heading],
    ['#/notebook', heading],
    ['#/students', heading],
    ['#/teacher', heading],
    ['#/write', heading],
    ['#/record', heading],
    ['#/taptest', heading],
    ['#/licences', heading],
    ['#/piece/p0000', heading],
  ]
  const found: string[] = []
  for (const [address, stands] of screens) {
    await goTo(page, address)
    await page.locator(stands).first().waitFor({ state: 'attached' })
    await page.keyboard.press('?')
    for (const line of await lines(page)) if (english.test(line)) found.push(`${address}: ${line}`)
    await page.keyboard.press('Escape')
  }
  return found
}

/** Every line that is seen or heard, but for what is in a language of its own and for titles. */
const lines = (page: Page): Promise<string[]> =>
  page.evaluate(
    (titles) => {
      const heard = [...document.querySelectorAll('[aria-label], [title], [placeholder], option')]
        .filter((element) => !element.closest('[lang=en]'))
        .flatMap((element) => [
          element.getAttribute('aria-label') ?? '',
          element.getAttribute('title') ?? '',
          element.getAttribute('placeholder') ?? '',
          element instanceof HTMLOptionElement ? element.text : '',
        ])
      const seen = document.body.innerText.split('\n')
      // Without a service worker, as in these tests, the browser's own words stand there.
      const kept = document.querySelector<HTMLElement>('.kept')?.innerText
      return [...seen.filter((line) => line !== kept), ...heard].map((line) =>
        titles.reduce((rest, title) => rest.replaceAll(title, '…'), line),
      )
    },
    samples.map(({ title }) => title),
  )
