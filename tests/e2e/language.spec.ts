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

test('the language changes in mid-drill and nothing is lost; the choice and the notes’ names stay', async ({
  page,
}) => {
  await openDrill(page)
  await drawn(page)
  // A choice in mid-repetition takes its time.
  await chooseStandard(page, 'notes')
  const { message, streak, flaws } = shown(page)
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
  await options(page).click()
  await repetition(page, 'C5 D5 Eb5 F5 G5')
  await expect(message).toHaveText(/^Fehlerhaft: D?.*Es5.* E5/)
  await expect(flaws).toHaveCount(1)
  await options(page).click()
  await page.getByRole('combobox', { name: 'Notennamen' }).selectOption('syllables')
  await expect(message).toHaveText(/mi♭5/)
  await expect(page.locator('.strip')).toHaveAccessibleName('Tasten sol4 bis do6')
  await page.reload()
  await expect(page.locator('html')).toHaveAttribute('lang', 'de')
  await expect(page.getByRole('link', { name: 'Rückblick' })).toBeVisible()
  await expect(page.locator('.strip')).toHaveAccessibleName('Tasten sol4 bis do6')
  await options(page).click()
  await languages(page).selectOption('en')
  await expect(page.getByRole('link', { name: 'Review' })).toBeVisible()
})

test.describe('without the words of a language', () => {
  test.use({ expectedErrors: [/ERR_FAILED/] })

  test('the page says so in the words that it has', async ({ page }) => {
    await page.route(/german-/, (route) => route.abort())
    await openApp(page)
    await drawn(page)
    await options(page).click()
    await page.getByRole('combobox', { name: 'Language' }).selectOption('de')
    await expect(page.getByRole('alert')).toContainText('Deutsch cannot be fetched')
    await expect(page.locator('html')).toHaveAttribute('lang', 'en')
  })
})

/** Words that no German sentence has. */
const english = /\b(the|of|with|your|is|are|to|not|and)\b/i

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

test.describe('on a German machine', () => {
  test.use({ locale: 'de-DE' })

  test('no screen has an English sentence left', async ({ page }) => {
    const found: string[] = []
    const look = async (screen: string): Promise<void> => {
      for (const line of await lines(page)) if (english.test(line)) found.push(`${screen}: ${line}`)
    }
    await openApp(page, { address: '#/taptest' })
    await page.locator('main h1').waitFor()
    const piece = idOf('morning-at-the-mill.mid')
    const ferry = idOf('ferry-at-dusk.mid')
    const screens: readonly (readonly [address: string, stands: string])[] = [
      [`#/practice/${piece}/32-34/right`, '.practice .strip'],
      ['#/', 'main h1'],
      [`#/piece/${piece}`, '.notation[data-drawing=drawn]'],
      [`#/buildup/${ferry}/0-11/both/brisk/forward`, 'main h1'],
      [`#/plan/${piece}`, 'main h1'],
      ['#/today', 'main h1'],
      ['#/summary', 'main h1'],
      ['#/review', 'main h1'],
      ['#/journal', 'main h1'],
      ['#/notebook', 'main h1'],
      ['#/students', 'main h1'],
      ['#/teacher', 'main h1'],
      ['#/write', 'main h1'],
      ['#/record', 'main h1'],
      ['#/taptest', 'main h1'],
      ['#/licences', 'main h1'],
      ['#/piece/p0000', 'main h1'],
    ]
    for (const [address, stands] of screens) {
      await goTo(page, address)
      await page.locator(stands).first().waitFor()
      await look(address)
      await page.keyboard.press('?')
      await look(`${address} ?`)
      await page.keyboard.press('Escape')
    }
    await options(page).click()
    await page.getByRole('combobox', { name: 'Notennamen' }).waitFor()
    await look('options')
    expect(found).toEqual([])
  })
})
