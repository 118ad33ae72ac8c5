import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { eventId } from '@/journal/ids'
import { formatJournal } from '@/journal/lines'
import { pieceId } from '@/music/units'
import { goTo, journal, openApp, openDrill, repetition } from './support/app'
import { violations } from './support/axe'
import { bring, littleStair } from './support/pieces'
import { chooseRecord, takeIn } from './support/record'
import { overflow, shots } from './support/screens'
import { expect, test } from './support/test'
import { yearOfPractice } from './support/yearOfPractice'

const saved = async (page: Page, button: string): Promise<string> => {
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: button }).click()
  return readFile(await (await download).path(), 'utf8')
}

/** All words of the review. */
const figures = async (page: Page): Promise<string> => {
  await goTo(page, '#/review')
  await page.locator('.review .share').waitFor()
  await expect(page.getByText('Adding up the days …')).toHaveCount(0)
  await page.locator('.plot-point').first().waitFor()
  return page.locator('main').innerText()
}

const rejected = (page: Page) =>
  page.getByRole('region', { name: 'Hard spots' }).getByText('1 rejected spot')

/** Brings in a piece, gives it to the left hand, rejects a hard spot of it. */
const bringPiece = async (page: Page): Promise<void> => {
  await bring(page, 'little-stair.mid', littleStair())
  await page.getByRole('heading', { level: 1, name: 'Little Stair' }).waitFor()
  await page.getByRole('radio', { name: 'both hands' }).click()
  await expect(page.locator('.notation svg .note')).toHaveCount(10)
  await page.keyboard.press('l')
  await expect(page.getByRole('status')).toHaveText('10 notes: left hand.')
  await page
    .getByRole('button', { name: /^Reject: .*left hand/ })
    .first()
    .click()
  await expect(rejected(page)).toBeVisible()
}

test('a saved record brings everything back on a new machine, pieces and all, and twice brings nothing more', async ({
  page,
  browser,
}) => {
  await openDrill(page)
  for (const notes of ['C5 D5 E5 F5 G5', 'C5 D5 E5 F#5 G5', 'C5 D5 E5 F5 G5'])
    await repetition(page, notes)
  await page.keyboard.press('Escape')
  const before = await figures(page)
  await bringPiece(page)
  await goTo(page, '#/journal')
  const text = await saved(page, 'Save the whole record')
  const other = await (await browser.newContext({ serviceWorkers: 'block' })).newPage()
  await openApp(other, { address: '#/journal' })
  await chooseRecord(other, 'old-machine.jsonl', text)
  const brings = other.locator('.brings')
  await expect(brings).toContainText('3 repetitions')
  await expect(brings).toContainText('Morning at the Mill')
  await expect(brings).toContainText('Files of pieces1 piece, new here')
  await expect(brings).toContainText('Corrected hands1 piece, new here')
  await other.getByRole('button', { name: /^Take in/ }).click()
  await expect(other.getByText('came in, 0 were here already. 1 piece came with it.')).toBeVisible()
  expect(await journal(other)).toEqual(await journal(page))
  expect(await figures(other)).toBe(before)
  await goTo(other, '#/')
  await other.getByRole('link', { name: 'Little Stair' }).click()
  await other.getByRole('radio', { name: 'left hand' }).click()
  await expect(other.locator('.notation svg .note')).toHaveCount(10)
  await expect(rejected(other)).toBeVisible()
  await chooseRecord(other, 'old-machine.jsonl', text)
  await expect(other.getByText('All of it is here already.')).toBeVisible()
  await other.close()
})

test('the table of repetitions has a line for each, as a spreadsheet reads it', async ({
  page,
}) => {
  await openDrill(page)
  await repetition(page)
  await repetition(page, 'C5 D5 E5 F#5 G5')
  await goTo(page, '#/journal')
  // RFC 4180: lines end with CR LF, and the first names the columns.
  const [names, ...rows] = (await saved(page, 'Save a table')).trimEnd().split('\r\n')
  expect(names).toMatch(/^id,day,.*verdict/)
  expect(rows.map((row) => /clean|flawed/.exec(row)?.[0])).toEqual(['clean', 'flawed'])
  expect(rows[1]).toContain('wrong at 4')
})

const hostile = '<img src=x onerror="document.title=1">'

test('a file that is no record is refused in plain words, and nothing changes', async ({
  page,
}) => {
  await openApp(page, { address: '#/journal' })
  for (const [content, said] of [
    ['', 'This file is empty.'],
    [`<!doctype html>${hostile}`, 'no line of it is one. Line 1: This is not JSON'],
    ['{"a":1}\n', 'Line 1: This is not an event of a journal'],
    ['{"v":99,"kind":"x"}\n', 'written by a newer version of the program'],
  ] as const) {
    await chooseRecord(page, `${hostile}.jsonl`, content)
    await expect(page.getByRole('alert')).toContainText(said)
    await expect(page.getByRole('alert')).toContainText('Nothing was changed.')
    await expect(page.getByRole('alert')).toContainText(hostile)
    expect(await journal(page)).toEqual([])
    expect(await page.title()).not.toBe('1')
  }
})

test('damaged lines are named before anything is taken in, and the others come', async ({
  page,
}) => {
  const events = yearOfPractice(Date.UTC(2026, 5, 1, 18)).slice(0, 60)
  const lines = formatJournal(events).split('\n')
  lines[5] = lines[5]?.slice(0, 40) ?? ''
  lines[7] = (lines[7] ?? '').replace('"rung":', '"ring":')
  await openApp(page, { address: '#/journal' })
  await chooseRecord(page, 'damaged.jsonl', lines.join('\n'))
  await expect(page.getByText('2 lines cannot be read and will be left out:')).toBeVisible()
  await expect(page.getByText(/^Line 6: This is not JSON/)).toBeVisible()
  await expect(page.getByText(/^Line 8: The field/)).toBeVisible()
  expect(await journal(page)).toEqual([])
  await page.setViewportSize({ width: 390, height: 844 })
  expect(await overflow(page)).toEqual({ by: 0, out: [] })
  expect(await violations(page)).toEqual([])
  await page.screenshot({ path: `${shots}/records-preview-390.png`, fullPage: true })
  await page.setViewportSize({ width: 1280, height: 800 })
  await page.screenshot({ path: `${shots}/records-preview-1280.png`, fullPage: true })
  await page.getByRole('button', { name: 'Take in 58 events' }).click()
  await expect(page.getByText('58 events of damaged.jsonl came in')).toBeVisible()
})

test('a hostile title in a record is shown as the text that it is', async ({ page }) => {
  const events = yearOfPractice(Date.UTC(2026, 5, 1, 18))
  const [added] = events
  if (added?.kind !== 'pieceAdded') throw new Error('the year begins with the pieces')
  const piece = pieceId('p-elsewhere')
  const odd = { ...added, id: eventId('odd'), piece, title: hostile }
  await openApp(page, { address: '#/journal' })
  await takeIn(page, [...events, odd])
  await goTo(page, '#/review')
  await page.getByRole('link', { name: hostile }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(hostile)
  await expect(page.getByText('only the record of its practice')).toBeVisible()
  await expect(page.locator('.chunk-table tbody th').first()).toHaveText(/^bars? \d/)
  expect(await page.locator('main img').count()).toBe(0)
  expect(await page.title()).not.toBe('1')
})
