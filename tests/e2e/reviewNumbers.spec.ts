import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Page } from '@playwright/test'
import { parseAsked } from '@/app/askedRoute'
import { dayAt } from '@/journal/day'
import { sumDays } from '@/journal/sumDays'
import type { Asked, Known } from '@/review/asked'
import { coldChecksOfAll, standingsOfAll } from '@/review/coldFigures'
import { barsIn, locateIn } from '@/review/flawBars'
import { reviewPiece } from '@/review/pieceReview'
import { listRepetitions, type Listed } from '@/review/repetitions'
import { readPiece } from '@/score/readPiece'
import { goTo, idOf, openApp } from './support/app'
import { takeIn } from './support/record'
import { expect, test } from './support/test'
import { daysOfPractice } from './support/yearOfPractice'

test.use({ timezoneId: 'UTC' })

const mill = idOf('morning-at-the-mill.mid')
const events = daysOfPractice(Date.UTC(2026, 5, 1, 18), 31)
const dayOf = (epochMs: number) => dayAt(epochMs, 0)

const read = readPiece(
  readFileSync(
    fileURLToPath(new URL('../../sample-midi/morning-at-the-mill.mid', import.meta.url)),
  ),
  'morning-at-the-mill.mid',
)
if (!read.ok) throw new Error(read.reason.kind)
const { score } = read.value
const rows = sumDays(events, dayOf).flatMap(({ chunks }) => chunks)
const known: Known = {
  locate: locateIn(score, reviewPiece(rows.filter(({ piece }) => piece === mill)).chunks),
  barOf: barsIn(score),
  checks: coldChecksOfAll(rows),
  standings: standingsOfAll(rows),
}

/** What a list holds, counted from the whole record. */
const listed = (asked: Asked): readonly Listed[] =>
  (asked.streak ? lastStreak(asked) : listRepetitions(events, dayOf, asked, known)).flatMap(
    ({ repetitions }) => repetitions,
  )

/** Of several days with as long a streak the list shows the last. */
const lastStreak = (asked: Asked): ReturnType<typeof listRepetitions> => {
  const days = listRepetitions(events, dayOf, asked, known)
  const most = Math.max(0, ...days.map(({ repetitions }) => repetitions.length))
  return days.filter(({ repetitions }) => repetitions.length === most).slice(0, 1)
}

interface Figure {
  readonly text: string
  readonly address: string
  /** The head of its column, where it stands in one. */
  readonly column: string
}

const figures = (page: Page): Promise<readonly Figure[]> =>
  page.locator('main.review a[href*="/repetitions/"]').evaluateAll((links) =>
    links.map((link) => ({
      text: link.textContent ?? '',
      address: link.getAttribute('href') ?? '',
      column: link.closest('td')?.dataset['label'] ?? '',
    })),
  )

/** Those at the notes are there while their line is in sight: one line after the other. */
const figuresOnMusic = async (page: Page): Promise<readonly Figure[]> => {
  const seen: Figure[] = []
  for (const line of await page.locator('.flaw-line').all()) {
    await line.scrollIntoViewIfNeeded()
    await line.locator('.line-music').waitFor()
    seen.push(...(await figures(page)))
  }
  return seen
}

/** Numbers that lead nowhere, and why they need not. */
const excused: readonly (readonly [selector: string, text: RegExp, why: string])[] = [
  ['thead, th, caption, label, button, select, summary, h1, h2', /./, 'names and settings'],
  ['.print-only', /./, 'when it was printed'],
  ['a[href*="#/practice/"]', /./, 'the name of a chunk leads to its drill'],
  ['td[data-label=Chunk]', /./, 'the name of a chunk'],
  ['td:not([data-label]):not(.number)', /^[A-G][♯♭]?\d$/, 'the name of a key'],
  ['td[data-label="Days since"]', /^\d+$/, 'how far apart two days are; the later one leads on'],
  ['.legend', /times?/, 'what a mark means'],
  ['p, figcaption', /between \d+ and \d+ % in 95 of 100 cases/, 'how sure the share before it is'],
  ['p', /of 100 repetitions/, 'the difference of the two shares before it'],
  ['.plot-key', /95 of 100/, 'what the picture shows'],
  ['p', / in \d+ bars, most of them in bar /, 'bars, listed below with their flaws'],
  ['figcaption', /^Clean share by \w+, from /, 'from when to when; each share leads on'],
  ['figcaption', /^Tempo of |at the end of |, the goal is \d+/, 'names, days and the goal chosen'],
  ['td[data-label=Tempo]', /^ of \d+$/, 'the goal that was chosen'],
  ['p', / on those before|clean on the last 28 days/, 'which days are compared'],
]

/** Text with a figure that stands in no link to repetitions, and outside pictures. */
const unlinked = (page: Page): Promise<readonly string[]> =>
  page.evaluate(
    (known) => {
      const found: string[] = []
      const main = document.querySelector('main.review')
      const walker = document.createTreeWalker(main ?? document, NodeFilter.SHOW_TEXT)
      for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        const [text, parent] = [node.textContent ?? '', node.parentElement]
        if (
          !parent ||
          !/[1-9]/.test(text) ||
          parent.closest('svg, dialog, a[href*="/repetitions/"]')
        )
          continue
        const isExcused = known.some(
          ([selector, pattern]) => parent.closest(selector) && new RegExp(pattern).test(text),
        )
        if (!isExcused) found.push(`${parent.tagName} ${parent.className}: ${text}`)
      }
      return found
    },
    excused.map(([selector, text]) => [selector, text.source] as const),
  )

/** What is wrong with a figure and its list; empty where they agree. */
const wrongWith = ({ text, address, column }: Figure): string => {
  const asked = parseAsked(address.replace(/^.*\/repetitions\//, '').split('/'))
  const found = listed(asked)
  const told = `${column} “${text}” at ${address}: ${found.length}`
  if (found.length === 0) return told
  const clean = found.filter(({ repetition }) => repetition.verdict === 'clean').length
  const isEnded = found.every(({ repetition }) => repetition.verdict !== 'brokenOff')
  const [share] = /^\d+(?= %)/.exec(text) ?? []
  if (share !== undefined)
    return isEnded && Math.round((clean / found.length) * 100) === Number(share) ? '' : told
  const number = Number(text.replace('\u202f', ''))
  const counted = asked.rung === undefined ? countOf(asked, column, found) : asked.rung
  return !/^\d/.test(text) || /[a-z]/.test(text) || number === counted ? '' : told
}

const countOf = (asked: Asked, column: string, found: readonly Listed[]): number => {
  if (column === 'Days') return new Set(found.map(({ day }) => day)).size
  if (column === 'Minutes')
    return Math.round(
      sumDays(
        found.map(({ repetition }) => repetition),
        dayOf,
      ).reduce((ms, { total }) => ms + total.ms, 0) / 60_000,
    )
  // All repetitions of all chunks: how many chunks that are.
  const isOfChunks = column === '' && Object.keys(asked).every((name) => name === 'piece')
  return isOfChunks ? new Set(found.map(chunkOf)).size : found.length
}

const chunkOf = ({ repetition: { piece, chunk } }: Listed): string => `${piece} ${chunk}`

test('every number of the review of a month leads to as many repetitions, or to those that it is made of', async ({
  page,
}) => {
  await openApp(page, { address: '#/journal' })
  await takeIn(page, events)
  for (const address of ['#/review', `#/review/${mill}`]) {
    await goTo(page, address)
    await page.locator('.share').waitFor()
    await page.getByRole('heading', { name: /How far/ }).waitFor()
    if (address !== '#/review') {
      await page.locator('[data-key=n]').check()
      await expect(page.locator('.flaw-line[data-drawing=waiting]')).toHaveCount(0)
      await page.locator('.flaw-music').scrollIntoViewIfNeeded()
      for (const shape of ['wrong', 'missing', 'hesitation', 'extra', 'drift'])
        await expect(page.locator(`.pencil-flaw[data-shape=${shape}]`).first()).toBeAttached()
      await expect(page.locator('.flaw-count.of-stretch')).not.toHaveCount(0)
    }
    const more = page.getByRole('button', { name: /^Show (all|every)/ })
    while ((await more.count()) > 0) await more.first().click()
    await page
      .locator('details')
      .evaluateAll((all) => all.forEach((each) => each.setAttribute('open', '')))
    expect(await unlinked(page), address).toEqual([])
    const all = [...(await figures(page)), ...(await figuresOnMusic(page))]
    expect(all.length, address).toBeGreaterThan(address === '#/review' ? 150 : 250)
    const wrong = all.map(wrongWith).filter(Boolean)
    expect(wrong, address).toEqual([])
  }
})
