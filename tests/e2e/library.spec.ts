import type { Page } from '@playwright/test'
import { strToU8 } from 'fflate'
import { firstPiece, goTo, idOf, journal, openApp, repetition, shown } from './support/app'
import { bring, littleStair, toPieces } from './support/pieces'
import { overflow } from './support/screens'
import { violations } from './support/axe'
import { expect, test } from './support/test'

const part = (id: string, step: string): string =>
  `<part id="${id}"><measure number="1"><attributes><divisions>1</divisions></attributes>${'x'
    .repeat(4)
    .replaceAll(
      'x',
      `<note><pitch><step>${step}</step><octave>4</octave></pitch><duration>1</duration></note>`,
    )}</measure></part>`
const song = strToU8(
  `<score-partwise version="4.0"><movement-title>Träumender Bach</movement-title><identification><creator type="composer">A. Nobody</creator></identification><part-list><score-part id="P1"><part-name>Voice</part-name></score-part><score-part id="P2"><part-name>Piano</part-name></score-part></part-list>${part('P1', 'B')}${part('P2', 'E')}</score-partwise>`,
)

/** The list of pieces, with two of one's own among them. */
const openLibrary = async (page: Page): Promise<void> => {
  await openApp(page)
  await page.getByRole('heading', { name: firstPiece }).waitFor()
  await bring(page, 'stair.mid', littleStair(4))
  await bring(page, 'bach.musicxml', song)
  await toPieces(page)
}

const links = (page: Page) => page.locator('.pieces a')

test('the composer stands beside the title; the list is filtered while one types, whatever case and accents', async ({
  page,
}) => {
  await openLibrary(page)
  await expect(page.getByRole('listitem').filter({ hasText: 'Träumender' })).toContainText(
    'A. Nobody',
  )
  const all = await links(page).count()
  await page.getByRole('searchbox', { name: 'Search' }).fill('NOBODY traum')
  await expect(links(page)).toHaveText(['Träumender Bach'])
  await expect(page.getByRole('status')).toHaveText(`1 of ${all} pieces`)
  await page.getByRole('searchbox', { name: 'Search' }).fill('nocturne')
  await expect(links(page)).toHaveCount(0)
  await expect(page.getByRole('status')).toHaveText('No piece has all of these words.')
  await page.getByRole('searchbox', { name: 'Search' }).fill('')
  await expect(links(page)).toHaveCount(all)
})

test('a piece gets another title, which it keeps, and is removed after a question; its record stays, and what comes with the program cannot be', async ({
  page,
}) => {
  await openLibrary(page)
  await expect(page.getByRole('button', { name: `Change ${firstPiece}` })).toHaveCount(0)
  await page.getByRole('button', { name: 'Change Little Stair' }).click()
  await page.getByRole('textbox', { name: 'Title' }).fill('Garden Stair')
  await page.getByRole('button', { name: 'Rename' }).click()
  const garden = page.getByRole('link', { name: 'Garden Stair' })
  await expect(garden).toBeVisible()
  await page.reload()
  await garden.click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Garden Stair')
  await toPieces(page)
  await page.getByRole('button', { name: 'Change Garden Stair' }).click()
  await page.getByRole('button', { name: 'Remove …' }).click()
  await page.getByRole('button', { name: 'Keep it' }).click()
  await page.getByRole('button', { name: 'Remove …' }).click()
  await page.getByRole('button', { name: 'Remove it' }).click()
  await expect(page.getByRole('status')).toHaveText(
    '“Garden Stair” is removed. The record of your practice of it stays.',
  )
  await expect(garden).toHaveCount(0)
  await page.reload()
  await page.getByRole('link', { name: 'Träumender Bach' }).waitFor()
  await expect(garden).toHaveCount(0)
  const added = (await journal(page)).filter((event) => event.kind === 'pieceAdded')
  expect(added.map(({ title }) => title)).toContain('Little Stair')
})

test('of a file with several parts others can be taken, and stay taken', async ({ page }) => {
  await openLibrary(page)
  await page.getByRole('link', { name: 'Träumender Bach' }).click()
  const parts = page.getByText('The file has 2 parts; taken: Piano')
  await parts.click()
  await expect(page.getByRole('button', { name: 'Take these' })).toBeDisabled()
  await page.getByRole('checkbox', { name: 'Voice' }).check()
  await page.getByRole('checkbox', { name: 'Piano' }).uncheck()
  await page.getByRole('button', { name: 'Take these' }).click()
  const others = page.getByText('The file has 2 parts; taken: Voice')
  await expect(others).toBeVisible()
  await page.reload()
  await expect(others).toBeVisible()
  await toPieces(page)
  await expect(page.getByRole('link', { name: 'Träumender Bach' })).toHaveCount(1)
  await goTo(page, `#/piece/${idOf('morning-at-the-mill.mid')}`)
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(firstPiece)
  await expect(page.getByText(/^The file has/)).toHaveCount(0)
})

/** From the page of the stair to a drill of its four notes. */
const drillAll = async (page: Page): Promise<void> => {
  await goTo(page, `${new URL(page.url()).hash.replace('piece', 'practice')}/0-3/both`)
  await page.locator('.practice').waitFor()
}

test('a better edition is compared, put in place under the old title, and the record carries over', async ({
  page,
}) => {
  await openLibrary(page)
  await page.getByRole('link', { name: 'Little Stair' }).click()
  await page.locator('.page-piece').waitFor()
  await page.getByRole('radio', { name: 'both hands' }).check()
  await page.getByRole('slider', { name: 'Chosen bars' }).press('ArrowDown')
  await page.keyboard.press('1')
  await expect(page.getByRole('region', { name: 'Fingering' })).toContainText('1 digit')
  await drillAll(page)
  await repetition(page, 'C4 C#4 D4 Eb4')
  await toPieces(page)
  await page.getByRole('button', { name: 'Change Little Stair' }).click()
  // The same four keys, and one more in a second bar.
  await page.getByLabel('File of a better edition of Little Stair').setInputFiles({
    name: 'better.txt',
    mimeType: 'text/plain',
    buffer: Buffer.from('passagework 1 Better\nC4 C#4 D4 Eb4 | E4\n'),
  })
  const question = page.getByRole('group', { name: 'Replace Little Stair' })
  await expect(question).toContainText(
    'Of 1 practised chunk, 1 has the same notes in “better.txt” and carries over.',
  )
  expect(await violations(page)).toEqual([])
  await question.getByRole('button', { name: 'Replace it' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Little Stair')
  await expect(page.getByText('Of your 1 digit, 1 stands here.')).toBeVisible()
  await drillAll(page)
  await expect(shown(page).strokes).toHaveCount(1)
  await toPieces(page)
  await expect(page.getByRole('listitem').filter({ hasText: 'Little Stair' })).toContainText(
    'from better.txt',
  )
})

test('nothing in it breaks a rule of access, or stands out of a narrow window', async ({
  page,
}) => {
  const check = async (what: string): Promise<void> => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await violations(page), `${what}, ${colorScheme}`).toEqual([])
    }
    await page.setViewportSize({ width: 320, height: 640 })
    await expect.poll(() => overflow(page), what).toEqual({ by: 0, out: [] })
    await page.setViewportSize({ width: 1280, height: 800 })
  }
  await openLibrary(page)
  await page.getByRole('button', { name: 'Change Little Stair' }).click()
  await check('a piece being changed')
  await page.getByRole('button', { name: 'Remove …' }).click()
  await check('the question before it is removed')
  await page.getByRole('link', { name: 'Träumender Bach' }).click()
  await page.getByText('The file has 2 parts').click()
  await check('the choice of parts')
})
