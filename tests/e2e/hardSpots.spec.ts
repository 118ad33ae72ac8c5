import type { Locator, Page } from '@playwright/test'
import { readFileSync } from 'node:fs'
import { drillId, eventId, sessionId } from '@/journal/ids'
import { journalVersion, type JournalEvent } from '@/journal/journal'
import { recordPlace } from '@/journal/record'
import { cutChunk } from '@/music/chunk'
import { key, tempo, tick } from '@/music/units'
import { readPiece } from '@/score/readPiece'
import { violations } from './support/axe'
import { drawn, goTo, idOf, openApp } from './support/app'
import { takeIn } from './support/record'
import { overflow } from './support/screens'
import { expect, test } from './support/test'

const section = (page: Page): Locator => page.getByRole('region', { name: 'Hard spots' })
const rows = (page: Page): Locator => section(page).locator('.spot')
const hatched = (page: Page): Locator => page.locator('.line .spot-mark')

/** The first piece, with the notes of all lines and the spots on the page. */
const openSpots = async (page: Page): Promise<void> => {
  await openApp(page)
  await drawn(page)
  await expect(rows(page).first()).toBeVisible()
  await page
    .locator('.line')
    .first()
    .evaluate((line) => line.scrollIntoView({ block: 'center' }))
  await expect(hatched(page).first()).toBeVisible()
}

test('the hard spots of a piece stand in a list with reasons, are hatched on the music, and one leads to its build-up in one step', async ({
  page,
}) => {
  await openSpots(page)
  const first = rows(page).first()
  await expect(first).toContainText('right hand')
  await expect(first).toContainText('onsets a second')
  await expect(first.getByText('groups of three and four')).toBeHidden()
  await first.locator('summary').click()
  await expect(first.getByText('groups of three and four')).toBeVisible()
  await expect(section(page)).toContainText('voicing, pedalling, memory and nerves')
  await expect(section(page)).toContainText(/As a whole about [\d.]+, somewhere between/)
  // Each of three depths has its own pattern, whatever its colour.
  const pattern = (depth: 1 | 3) =>
    page
      .locator(`.whole-how .spot-depth[data-depth="${depth}"]`)
      .evaluate((swatch) => getComputedStyle(swatch).backgroundImage)
  expect(await pattern(1)).not.toBe(await pattern(3))
  expect(await overflow(page)).toEqual({ by: 0, out: [] })
  await first.getByRole('button', { name: 'To its build-up' }).click()
  await expect(page).toHaveURL(/#\/buildup\/.*\/right\/brisk\/forward/)
  await expect(page.getByRole('main')).toContainText('group of')
})

test('a rejected spot stays folded away after a reload, and comes back; a rank of the person’s own stands', async ({
  page,
}) => {
  await openSpots(page)
  const before = await rows(page).count()
  const first = (await rows(page).first().locator('b').textContent()) ?? ''
  await page.getByRole('button', { name: `Reject: ${first}` }).click()
  await expect(rows(page)).toHaveCount(before - 1)
  await page.reload()
  await expect(rows(page)).toHaveCount(before - 1)
  await expect(rows(page).filter({ hasText: first })).toHaveCount(0)
  await section(page).getByText('1 rejected spot').click()
  await page.getByRole('button', { name: `Take back: ${first}` }).click()
  await expect(rows(page)).toHaveCount(before)
  await expect(section(page).getByText('rejected spot')).toHaveCount(0)
  const names = () => rows(page).locator('b').allTextContents()
  const [, second = '', ...rest] = await names()
  const up = page.getByRole('button', { name: `Move up: ${second}` })
  await up.focus()
  await page.keyboard.press('Enter')
  await expect.poll(names).toEqual([second, first, ...rest])
  await expect(up).toBeDisabled()
  await page.reload()
  await expect.poll(names).toEqual([second, first, ...rest])
})

test('the keys go to the spots, and accept, reject and move the one in focus', async ({ page }) => {
  await openSpots(page)
  const names = () => rows(page).locator('b').allTextContents()
  const [first = '', second = '', third = '', ...rest] = await names()
  // Without a spot in focus none is rejected.
  await page.keyboard.press('x')
  await page.keyboard.press('s')
  await expect(rows(page).first()).toBeFocused()
  await page.keyboard.press('d')
  await expect.poll(names).toEqual([second, first, third, ...rest])
  await expect(rows(page).filter({ hasText: first })).toBeFocused()
  await page.keyboard.press('u')
  await expect.poll(names).toEqual([first, second, third, ...rest])
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('a')
  await expect(page.getByRole('button', { name: `Accept: ${second}` })).toHaveAttribute(
    'aria-pressed',
    'true',
  )
  await expect(rows(page).nth(1)).toBeFocused()
  await page.keyboard.press('x')
  await expect.poll(names).toEqual([first, third, ...rest])
  await expect(rows(page).nth(1)).toBeFocused()
  await page.keyboard.press('?')
  await expect(page.getByRole('dialog')).toContainText('accept, reject the hard spot in focus')
})

test('chosen bars are added, a spot chooses its bars, and accepted ones stand as passages', async ({
  page,
}) => {
  await openSpots(page)
  const passages = page.locator('.line .spot-mark[data-passage=true]')
  await expect(passages).toHaveCount(0)
  await page.getByRole('combobox', { name: 'to bar', exact: true }).selectOption({ label: '12' })
  await page.getByRole('combobox', { name: 'From bar' }).selectOption({ label: '12' })
  const before = await rows(page).count()
  await section(page).getByRole('button', { name: 'Add bar 12' }).click()
  await expect(rows(page)).toHaveCount(before + 1)
  await expect(rows(page).last()).toContainText('by your word')
  await expect(passages).toHaveCount(1)
  await page.reload()
  await expect(rows(page)).toHaveCount(before + 1)
  await page.getByRole('button', { name: /^Choose: bar 7/ }).click()
  await expect(page.getByRole('status')).toHaveText('Bar 7, right hand')
  await page.getByRole('button', { name: 'Make passages of these' }).click()
  await expect(rows(page).locator('[data-passage=true]')).toHaveCount(before + 1)
  await expect(page.getByRole('button', { name: 'Make passages of these' })).toBeDisabled()
})

/** Twenty repetitions of the right hand in bar 6, of which twelve had a wrong key at the second onset. */
const badlyPlayed = (): readonly JournalEvent[] => {
  const piece = readPiece(readFileSync('sample-midi/morning-at-the-mill.mid'), 'mill.mid')
  if (!piece.ok) throw new Error('the sample cannot be read')
  const { score } = piece.value
  const bar = score.bars[5]
  const chunk = bar && cutChunk(score, bar.start, tick(bar.start + bar.length), 'right')
  if (!chunk) throw new Error('the right hand plays in bar 6')
  const onset = 1
  const note = chunk.onsets[onset]?.notes[0]
  const at = Date.UTC(2026, 10, 20)
  const stamp = (i: number) => ({
    v: journalVersion,
    id: eventId(`bad ${i}`),
    session: sessionId('bad'),
    atEpochMs: at + i * 9000,
    drill: drillId('bad'),
    piece: score.id,
    chunk: chunk.id,
  })
  return [
    {
      ...stamp(0),
      kind: 'drillBegun',
      place: recordPlace(chunk, 6, 6),
      form: 'asWritten',
      time: { beats: 4, beatType: 4 },
      streakGoal: 5,
      goalTempo: tempo(88),
      startTempo: tempo(60),
      ladder: 'classic',
      standard: 'notes',
    },
    ...Array.from({ length: 20 }, (_, i): JournalEvent => {
      const isFlawed = i % 5 < 3 && note !== undefined
      return {
        ...stamp(i + 1),
        kind: 'repetition',
        rung: tempo(60),
        standard: 'notes',
        forgiveBrushed: false,
        verdict: isFlawed ? 'flawed' : 'clean',
        tookMs: 5000,
        flaws: isFlawed
          ? [
              {
                kind: 'wrong',
                onset,
                notes: note.ids,
                written: note.key,
                played: key(note.key + 1),
              },
            ]
          : [],
        figures: {},
        take: '',
      }
    }),
  ]
}

test('where the person’s own flaws pile up there is a hard spot, with its figures', async ({
  page,
}) => {
  await openSpots(page)
  const before = await rows(page).count()
  await takeIn(page, badlyPlayed())
  await goTo(page, `#/piece/${idOf('morning-at-the-mill.mid')}`)
  const played = rows(page).filter({ hasText: 'From your playing' })
  await expect(played).toHaveText(
    /bar 6.*right hand.*flawed here in at least 12 of 20 repetitions/s,
  )
  await expect(rows(page)).toHaveCount(before + 1)
  await played.getByRole('button', { name: 'Accept' }).click()
  await page.setViewportSize({ width: 390, height: 844 })
  await expect(played).toContainText('a passage')
  // On a phone at least three spots are seen at once.
  const list = await section(page).locator('.spots-list').boundingBox()
  const third = await rows(page).nth(2).boundingBox()
  expect((third?.y ?? NaN) + (third?.height ?? NaN)).toBeLessThan(
    (list?.y ?? 0) + (list?.height ?? 0),
  )
  expect(await overflow(page)).toEqual({ by: 0, out: [] })
  expect(await violations(page)).toEqual([])
  // The plan of the piece says it, too.
  await goTo(page, `#/plan/${idOf('morning-at-the-mill.mid')}`)
  await expect(page.locator('.plan-places')).toContainText(
    'From your playing: flawed here in at least 12 of 20 repetitions',
  )
})

test('the page breaks no rule for assistive technology with spots accepted, rejected and opened', async ({
  page,
}) => {
  await openSpots(page)
  await rows(page).nth(1).getByRole('button', { name: 'Accept' }).click()
  await rows(page).last().getByRole('button', { name: 'Reject' }).click()
  await rows(page).first().locator('summary').click()
  await section(page).getByText('1 rejected spot').click()
  expect(await violations(page)).toEqual([])
  await page.emulateMedia({ colorScheme: 'dark' })
  expect(await violations(page, 'colours')).toEqual([])
})

test.describe('in German', () => {
  test.use({ locale: 'de-DE' })
  test('spots, fingerings and build-ups are told, and stand within a phone', async ({ page }) => {
    await openApp(page)
    await drawn(page)
    const spots = page.getByRole('region', { name: 'Schwere Stellen' })
    const first = spots.locator('.spot').first()
    await expect(first).toContainText(/schnell: \d+,\d Anschläge in der Sekunde/)
    await first.getByRole('button', { name: /^Annehmen: Takt/ }).click()
    await expect(spots).toContainText('eine Passage')
    await page.getByRole('button', { name: /^Vorschlag für Takt/ }).click()
    const fingering = page.getByRole('region', { name: 'Fingersatz', exact: true })
    await fingering.getByRole('button', { name: 'Übernehmen: Fingersatz 1' }).click()
    await expect(fingering).toContainText(/Ein Fingersatz · ein Vorschlag · \d+ Ziffern/)
    await page.setViewportSize({ width: 390, height: 844 })
    // The notes are drawn anew for the narrow page.
    await expect.poll(() => overflow(page)).toEqual({ by: 0, out: [] })
    await first.getByRole('button', { name: /^Zum Aufbau: Takt/ }).click()
    await expect(page.getByRole('main')).toContainText('Die ganze Passage, bis zum Zieltempo.')
    await expect(page.locator('.build-up-sum')).toContainText(/\d+ Übungen, etwa/)
    expect(await overflow(page)).toEqual({ by: 0, out: [] })
    expect(await violations(page)).toEqual([])
  })
})
