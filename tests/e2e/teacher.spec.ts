import { readFile } from 'node:fs/promises'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from '@playwright/test'
import type { JournalEvent } from '@/journal/journal'
import { studentYear } from '../support/studio'
import { goTo, idOf, openApp } from './support/app'
import { violations } from './support/axe'
import { takeIn } from './support/record'
import { overflow, shots } from './support/screens'
import { expect, test } from './support/test'
import { yearOfPractice } from './support/yearOfPractice'

// Days are those of the machine's own time zone.
test.use({ timezoneId: 'UTC' })

const mill = idOf('morning-at-the-mill.mid')
/** Sunday: the last day of its week. */
const end = Date.UTC(2026, 4, 31, 18)
const hostile = '</title><script>window.ran = 1</script><b>Study</b>'

/** A year of two samples, of a piece with a hostile title, and of nine more that are not at hand. */
const fullYear = (): readonly JournalEvent[] => {
  // The newest of both will do.
  const year = yearOfPractice(end).filter(
    ({ kind, atEpochMs }) => kind === 'pieceAdded' || atEpochMs > end - 100 * 86_400_000,
  )
  const [added] = year.filter((event) => event.kind === 'pieceAdded')
  const elsewhere = year.find(
    (event) => event.kind === 'drillBegun' && event.piece === 'p-elsewhere',
  )
  if (!added || elsewhere?.kind !== 'drillBegun') throw new Error('the year is another one')
  return [
    ...year,
    { ...added, id: elsewhere.id, piece: elsewhere.piece, title: hostile } as JournalEvent,
    ...studentYear(0, end).filter(({ atEpochMs }) => atEpochMs > end - 21 * 86_400_000),
  ].map((event, i) =>
    event.kind === 'pieceAdded' ? { ...event, id: `added ${i}` } : event,
  ) as JournalEvent[]
}

const openPage = async (page: Page, address: string): Promise<void> => {
  await goTo(page, address)
  await page.locator('.teacher-sheet').waitFor()
  await expect(page.locator('.teacher-sheet [data-drawing=waiting]')).toHaveCount(0)
}

/** How many sheets a print of the page takes (ISO 32000-1, 7.7.3.3: one object of the type Page each). */
const sheetsOf = async (page: Page, name: string, format: 'A4' | 'Letter'): Promise<number> => {
  const pdf = await page.pdf({ format, path: `${shots}/teacher-${name}-${format}.pdf` })
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0
}

test('the page for the teacher tells of a week or a piece, with its hard bars engraved and marked, on two sheets at most', async ({
  page,
}) => {
  test.slow()
  await page.addInitScript(() => {
    window.print = () => document.body.setAttribute('data-printed', 'yes')
  })
  const events = fullYear()
  await openApp(page, { address: '#/journal' })
  await takeIn(page, events)
  await expect(page.getByText(/came in/)).toBeVisible()
  await goTo(page, '#/review')
  await page.getByRole('link', { name: 'Teacher’s page' }).click()
  const sheet = page.locator('.teacher-sheet')
  await expect(sheet.getByRole('heading', { level: 1 })).toHaveText('The week of 25 to 31 May 2026')

  const ofWeek = events.filter(
    (e) => e.kind === 'repetition' && e.atEpochMs >= Date.UTC(2026, 4, 25, 4),
  )
  const count = (verdict: string) =>
    ofWeek.filter((e) => e.kind === 'repetition' && e.verdict === verdict).length
  await expect(sheet.locator('header')).toContainText(
    `${count('clean')} clean, ${count('flawed')} flawed; ${count('brokenOff')} broken off.`,
  )
  await expect(sheet.locator('.sheet-piece').first()).toBeVisible()
  await page.getByLabel('Your name on the page').fill('Ada <Example>')
  await page
    .getByLabel('Questions and remarks')
    .fill('Is the fourth finger right in bar 9?\n<b>Which</b> edition?')
  await expect(sheet).toContainText('<b>Which</b> edition?')
  await openPage(page, page.url().replace(/^[^#]*/, ''))
  for (const format of ['A4', 'Letter'] as const)
    expect(await sheetsOf(page, 'week', format), `a week on ${format}`).toBeLessThanOrEqual(2)
  await page.locator('h1').first().click()
  await page.keyboard.press('ArrowLeft')
  await expect(sheet.getByRole('heading', { level: 1 })).toHaveText('The week of 18 to 24 May 2026')
  await expect(page.getByLabel('Questions and remarks')).toHaveValue('')
  await page.keyboard.press('ArrowRight')
  await expect(page.getByLabel('Questions and remarks')).toHaveValue(/fourth finger/)
  await page.reload()
  await expect(page.getByLabel('Your name on the page')).toHaveValue('Ada <Example>')

  await openPage(page, `#/teacher/${mill}`)
  await expect(sheet.locator('.sheet-bars .note').first()).toBeVisible()
  await expect(sheet.locator('.sheet-bars > li')).toHaveCount(4)
  await expect(sheet.locator('.sheet-bars .pencil-flaw').first()).toBeAttached()
  await expect(sheet.locator('figcaption').first()).toContainText(/^Bar \d+: \d+ flaws, /)
  for (const format of ['A4', 'Letter'] as const)
    expect(await sheetsOf(page, 'piece', format), `a piece on ${format}`).toBeLessThanOrEqual(2)
  await page.keyboard.press('p')
  await expect(page.locator('body')).toHaveAttribute('data-printed', 'yes')
  await page.keyboard.press('?')
  await expect(page.getByRole('dialog')).toContainText('save as a file to send')
  await page.keyboard.press('Escape')

  const found: string[] = []
  for (const [name, address] of [
    ['week', '#/teacher'],
    ['piece', `#/teacher/${mill}`],
    ['elsewhere', '#/teacher/p-elsewhere'],
  ] as const) {
    await openPage(page, address)
    for (const width of [320, 390, 820, 1280]) {
      await page.setViewportSize({ width, height: width < 400 ? 844 : 900 })
      await expect.poll(async () => (await overflow(page)).by, `${name} ${width}`).toBe(0)
      if (width === 320) continue
      await page.emulateMedia({ colorScheme: width === 390 ? 'dark' : 'light' })
      const path = `${shots}/teacher-${name}-${width}.png`
      await page.screenshot({ path, animations: 'disabled', fullPage: true })
    }
    for (const each of await violations(page)) found.push(`${name}: ${each}`)
  }
  expect(found).toEqual([])
})

/** Opens a file as a teacher does who is offline; tells what went wrong. */
const openOffline = async (browser: Browser, path: string) => {
  const context = await browser.newContext({
    offline: true,
    viewport: { width: 900, height: 1200 },
  })
  const page = await context.newPage()
  const wrong: string[] = []
  page.on('console', (message) => wrong.push(message.text()))
  page.on('pageerror', (error) => wrong.push(error.message))
  const address = pathToFileURL(path).href
  page.on('request', (request) => request.url() !== address && wrong.push(request.url()))
  await page.goto(address)
  return { page, wrong, close: () => context.close() }
}

/** Elements that load, run or send something, and attributes that run. */
const whatActs = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('*')].flatMap((each) => [
      ...(each.matches('script, link, img, iframe, object, form, button, input, a')
        ? [each.localName]
        : []),
      ...each.getAttributeNames().filter((name) => /^(on|src|style$)/.test(name)),
    ]),
  )

test('the page is saved as one file that opens offline in any browser, with its notes and styles and nothing that runs', async ({
  page,
  browser,
}, info) => {
  await openApp(page, { address: '#/journal' })
  await takeIn(page, fullYear())
  await expect(page.getByText(/came in/)).toBeVisible()
  for (const [name, address] of [
    ['piece', `#/teacher/${mill}`],
    ['hostile', '#/teacher/p-elsewhere'],
  ] as const) {
    await openPage(page, address)
    await page.getByLabel('Your name on the page').fill('Ada <img src=x onerror="window.ran=1">')
    await page.locator('h1').first().click()
    const saving = page.waitForEvent('download')
    await page.keyboard.press('s')
    const file = await saving
    expect(file.suggestedFilename()).toMatch(/^passagework-[\p{L}\p{N}-]+\.html$/u)
    const path = info.outputPath(`${name}.html`)
    await file.saveAs(path)
    expect(await readFile(path, 'utf8')).not.toMatch(/url\(|https?:\/\/(?!www\.w3\.org)/)
    const sent = await openOffline(browser, path)
    const article = sent.page.locator('.teacher-sheet')
    await expect(article).toContainText('Ada <img src=x onerror="window.ran=1">')
    // The style sheet is in force under the file's own policy.
    await expect(article.locator('h1')).toHaveCSS('font-size', '26px')
    await expect(article).toHaveCSS('background-color', 'rgb(255, 255, 255)')
    expect(await sent.page.evaluate(() => 'ran' in window)).toBe(false)
    expect(await whatActs(sent.page)).toEqual([])
    if (name === 'piece') {
      await expect(article.locator('svg .note').first()).toBeVisible()
      const ring = article.locator('.pencil-flaw path').first()
      await expect(ring).toHaveCSS('stroke', 'rgb(168, 66, 26)')
    } else await expect(article.locator('h1')).toHaveText(hostile)
    await sent.page.screenshot({ path: `${shots}/teacher-sent-${name}.png`, fullPage: true })
    expect(sent.wrong).toEqual([])
    await sent.close()
  }
})
