import { expect, test, type Page } from '@playwright/test'
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createRandom } from '@/devices/random'
import type { JournalEvent } from '@/journal/journal'
import { parseJournal } from '@/journal/lines'
import {
  fiveNotes,
  idOf,
  journal,
  openApp,
  openDrill,
  play,
  repetition,
  shown,
  withoutTrial,
} from './support/app'
import { startOwnBrowser, type OwnBrowser } from './support/ownBrowser'

/** When the browser dies: as a verdict is shown; after a key; in the silence in which the last verdict comes. */
const moments = ['shown', 'key', 'silence'] as const
const rounds = 3
/** One time between two keys, milliseconds; and two repetitions with the time between in which a verdict comes. */
const gap = 100
const twoRepetitions = `${fiveNotes.notes} - - - - - - - - ${fiveNotes.notes}`

const isRepetition = ({ kind }: JournalEvent): boolean => kind === 'repetition'
/** How many repetitions the database holds. */
const kept = async (page: Page): Promise<number> =>
  (await journal(page)).filter(isRepetition).length

/** How many repetitions the page shows. */
const shownCount = (page: Page): Promise<number> => page.evaluate(() => window.countShown())

declare global {
  interface Window {
    countShown: () => number
    /** Called when the page shows more repetitions than before. */
    tellShown: (count: number) => void
  }
}

/** Tells each new verdict at the moment in which it comes onto the page. */
const watchShown = async (page: Page, see: (count: number) => void): Promise<void> => {
  await page.exposeFunction('tellShown', see)
  await page.addInitScript(() => {
    window.countShown = () =>
      (document.querySelector('.strokes')?.getAttribute('aria-label')?.match(/\d+/g) ?? [])
        .map(Number)
        .reduce((sum, n) => sum + n, 0)
    let last = 0
    new MutationObserver(() => {
      const now = window.countShown()
      if (now > last) window.tellShown(now)
      last = now
    }).observe(document, { subtree: true, childList: true, attributes: true })
    // Keeping the program for offline use, and engraving, would be done anew in each round.
    Reflect.deleteProperty(Navigator.prototype, 'serviceWorker')
  })
  await page.route(/verovio/, (route) => route.abort())
}

test('a full disk is told, practice goes on, the record can be saved, and what waited is stored when there is room', async ({
  baseURL: origin = '',
}) => {
  const profile = await mkdtemp(join(tmpdir(), 'passagework-'))
  let browser = await startOwnBrowser(profile)
  try {
    const address = await openDrill(browser.page, fiveNotes.place, { origin })
    await repetition(browser.page)
    await browser.kill()
    // What room there was a browser remembers for a while: a new one asks.
    browser = await startOwnBrowser(profile)
    const { page } = browser
    const tools = await page.context().newCDPSession(page)
    // Chrome DevTools Protocol, Storage domain: the browser itself then refuses to store more.
    await tools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 })
    await openApp(page, { address, origin })
    await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
    await repetition(page)
    await repetition(page)
    const alert = page.getByRole('alert')
    await expect(alert).toContainText('no room left on this disk')
    await expect(shown(page).streak).toHaveAttribute('data-streak', '3')
    expect(await kept(page)).toBe(1)
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Save the record as a file' }).click()
    const text = await readFile(await (await download).path(), 'utf8')
    expect(parseJournal(text).events.filter(isRepetition)).toHaveLength(3)
    await tools.send('Storage.overrideQuotaForOrigin', { origin })
    // By itself, within some seconds, while nobody plays.
    await expect(alert).toBeHidden()
    expect(await kept(page)).toBe(3)
  } finally {
    await browser.kill()
    await rm(profile, { recursive: true, force: true, maxRetries: 3 })
  }
})

test('a browser that is killed again and again in mid-drill loses nothing that it has shown', async ({
  baseURL: origin = '',
}) => {
  const profile = await mkdtemp(join(tmpdir(), 'passagework-'))
  const random = createRandom(11)
  const address = `#/practice/${idOf('morning-at-the-mill.mid')}/${fiveNotes.place}`
  let browser: OwnBrowser | undefined
  let seen = 0
  let played = 0
  const lost: string[] = []
  const open = async (): Promise<Page> => {
    browser = await startOwnBrowser(profile)
    return browser.page
  }
  try {
    const first = await open()
    await watchShown(first, () => undefined)
    await openApp(first, { address: '#/taptest', origin })
    await first.getByRole('heading', { name: 'Tap test' }).waitFor()
    await withoutTrial(first)
    await browser?.kill()

    for (let round = 0; round <= rounds * moments.length; round++) {
      const page = await open()
      const moment = moments[round % moments.length] ?? 'key'
      let die: () => void = () => undefined
      const dying = new Promise<void>((resolve) => (die = resolve))
      let armed = false
      await watchShown(page, (count) => {
        seen = Math.max(seen, count)
        if (armed && moment === 'shown') die()
      })
      await openApp(page, { address, origin })
      await page.locator('.practice').waitFor()
      const stored = await kept(page)
      await expect.poll(() => shownCount(page)).toBe(stored)
      if (stored < seen || stored > played)
        lost.push(`round ${round}: ${seen} shown, ${stored} kept, ${played} played`)
      seen = stored
      if (round === rounds * moments.length) break
      armed = true
      played = stored + 2
      const playing = play(page, twoRepetitions, { gap }).catch(() => undefined)
      if (moment === 'key') setTimeout(die, random.uniform() * 21 * gap)
      if (moment === 'silence') setTimeout(die, (4 + random.uniform() * 8) * gap)
      await dying
      await browser?.kill()
      await playing
    }
    expect(lost).toEqual([])
    expect(seen).toBeGreaterThanOrEqual(rounds)
  } finally {
    await browser?.kill()
    await rm(profile, { recursive: true, force: true, maxRetries: 3 })
  }
})
