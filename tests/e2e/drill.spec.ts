import {
  chooseStandard,
  drawn,
  fiveNotes,
  journal,
  openDrill,
  play,
  repetition,
  shown,
  verdicts,
} from './support/app'
import { expect, test } from './support/test'

/** The notes of `fiveNotes` with one slip each. */
const wrongF = 'C5 D5 E5 F#5 G5'
const wrongD = 'C5 Eb5 E5 F5 G5'
const withoutE = 'C5 D5 F5 G5'

test('five clean repetitions raise the tempo by one rung, the sentence says why, and one key takes it back', async ({
  page,
}) => {
  await openDrill(page)
  const { message, streak, rung, strokes } = shown(page)
  await expect(rung).toHaveAttribute('data-rung', '52')
  for (const clean of [1, 2, 3, 4]) {
    await repetition(page)
    await expect(streak).toHaveAttribute('data-streak', `${clean}`)
    await expect(message).toHaveText('Clean.')
    await expect(rung).toHaveAttribute('data-rung', '52')
  }
  await repetition(page)
  // The classic metronome marks go by 2 below 60 (common practice).
  await expect(rung).toHaveAttribute('data-rung', '54')
  await expect(message).toHaveText('Five clean in a row: up from 52 to 54.')
  await expect(streak).toHaveAttribute('data-streak', '0')
  expect(await verdicts(strokes)).toEqual(['clean', 'clean', 'clean', 'clean', 'clean'])
  await page.keyboard.press('Backspace')
  await expect(rung).toHaveAttribute('data-rung', '52')
  const what = (await journal(page)).flatMap((e) => (e.kind === 'overruled' ? [e.what] : []))
  expect(what).toEqual(['tempoUp'])
  await page.keyboard.press('Escape')
  await expect(page.getByRole('main')).toContainText('taken back')
})

test('a slip in the fourth repetition sends the counters back, and is shown and said', async ({
  page,
}) => {
  await openDrill(page)
  const { message, streak, rung, strokes, flaws, right } = shown(page)
  for (let i = 0; i < 3; i++) await repetition(page)
  await expect(streak).toHaveAttribute('data-streak', '3')
  await repetition(page, wrongF)
  await expect(streak).toHaveAttribute('data-streak', '0')
  await expect(streak).toHaveAccessibleName('0 of 5 clean repetitions in a row')
  await expect(message).toHaveText('Flawed: F♯5 in place of F5.')
  await expect(rung).toHaveAttribute('data-rung', '52')
  expect(await verdicts(strokes)).toEqual(['clean', 'clean', 'clean', 'flawed'])
  await expect(right).toHaveCount(4)
  await expect(flaws).toHaveCount(1)
  await expect(flaws).toHaveAttribute('data-shape', 'wrong')
  // A wrong key is ringed, and a small hollow head stands where the played key would.
  await repetition(page, 'C5 D5 A5 F5 G5')
  await expect(flaws).toHaveCount(1)
  const [ring, head] = await Promise.all([0, 1].map((i) => boxOf(flaws.locator('path').nth(i))))
  const written = await boxOf(page.locator('.notation .note').nth(2).locator('.notehead'))
  const played = await boxOf(page.locator('.notation .note').nth(4).locator('.notehead'))
  if (!ring || !head) throw new Error('the mark has no ring and head')
  expect(ring.left).toBeLessThan(written.left)
  expect(ring.right).toBeGreaterThan(written.right)
  expect(ring.top).toBeLessThan(written.top)
  expect(ring.bottom).toBeGreaterThan(written.bottom)
  // A5 is one line or space above the G5 that is written last; half the height of a head.
  const height = played.bottom - played.top
  expect(head.middle).toBeCloseTo(played.middle - height / 2, -0.5)
  expect(head.right - head.left).toBeLessThan(played.right - played.left)
})

test('going back to the start breaks a repetition off and begins the next, a stray key begins nothing, and going back after a slip counts as flawed', async ({
  page,
}) => {
  await openDrill(page)
  const { streak, strokes, message } = shown(page)
  await play(page, 'C5 D5 E5 C5 D5 E5 F5 G5', { gap: 200 })
  await expect(strokes).toHaveCount(2)
  expect(await verdicts(strokes)).toEqual(['brokenOff', 'clean'])
  await expect(streak).toHaveAttribute('data-streak', '1')
  await expect(message).toHaveText('Clean.')
  await play(page, 'G3')
  await expect(message).toHaveText('That key begins nothing here.')
  await expect(strokes).toHaveCount(2)
  await expect(streak).toHaveAttribute('data-streak', '1')
  await play(page, 'C5 Eb5 E5 C5 D5 E5 F5 G5', { gap: 200 })
  await expect(strokes).toHaveCount(4)
  expect(await verdicts(strokes)).toEqual(['brokenOff', 'clean', 'flawed', 'clean'])
  await expect(streak).toHaveAttribute('data-streak', '1')
})

test('the arrows move the tempo, and the record says that the person overruled; after two flawed in a row a pause is asked for, and the space bar goes on', async ({
  page,
}) => {
  await openDrill(page)
  const { rung, message, streak } = shown(page)
  await repetition(page)
  await page.keyboard.press('ArrowUp')
  await expect(rung).toHaveAttribute('data-rung', '54')
  await expect(message).toHaveText('Your choice: up from 52 to 54.')
  await expect(streak).toHaveAttribute('data-streak', '0')
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('ArrowDown')
  await expect(rung).toHaveAttribute('data-rung', '50')
  const events = await journal(page)
  const overruled = events.flatMap((event) => (event.kind === 'overruled' ? event.what : []))
  expect(overruled.toSorted()).toEqual(['lower', 'lower', 'raise'])
  const changes = events.flatMap((event) => (event.kind === 'rungChanged' ? event.reason : []))
  expect(changes).toEqual(['person', 'person', 'person'])
  await repetition(page, wrongF)
  const goOn = page.getByRole('button', { name: 'Go on' })
  await expect(goOn).toBeHidden()
  await repetition(page, wrongD)
  await expect(message).toHaveText('Two flawed in a row: hands off, look at the place, then go on.')
  await expect(goOn).toBeVisible()
  await page.keyboard.press('Space')
  await expect(goOn).toBeHidden()
  await expect(page.getByRole('button', { name: 'Metronome' })).toHaveAttribute(
    'aria-pressed',
    'false',
  )
})

test('three flawed of five bring the tempo down, with the figures', async ({ page }) => {
  await openDrill(page)
  const { message, rung } = shown(page)
  for (const notes of [wrongF, fiveNotes.notes, wrongD, fiveNotes.notes, withoutE])
    await repetition(page, notes)
  await expect(rung).toHaveAttribute('data-rung', '50')
  await expect(message).toHaveText('Three of the last five were flawed: down from 52 to 50.')
})

test('escape leads to the summary, whose figures are what was played, and which leads back to the same chunk with its streak', async ({
  page,
}) => {
  await openDrill(page)
  const { strokes } = shown(page)
  await repetition(page)
  await repetition(page)
  await repetition(page, wrongF)
  await play(page, 'C5 D5 E5 C5 D5 E5 F5 G5', { gap: 200 })
  await expect(strokes).toHaveCount(5)
  await page.keyboard.press('Escape')
  const main = page.getByRole('main')
  await expect(main.getByRole('heading', { level: 1 })).toHaveText('This session')
  // Three clean, one flawed: 3 / 4. The one that was broken off is counted apart.
  await expect(page.locator('.share')).toHaveAttribute('data-share', '0.75')
  await expect(main).toContainText('75 % clean')
  await expect(main).toContainText('3 clean, 1 flawed; 1 broken off')
  const cells = main.getByRole('row').nth(1).locator('th, td')
  await expect(cells).toHaveText([
    'Morning at the Mill, bar 9, right hand',
    '3 of 4',
    '2',
    '52 of 96',
    'again',
  ])
  await expect(main.locator('.flaws li')).toHaveText(['Another key at F5, onset 4: once'])
  await expect(main).toContainText('5 repetitions in')
  // Each figure leads to what it is made of, and back.
  for (const [figure, many] of [
    ['75 %', 4],
    ['3 of 4', 4],
    ['2', 2],
    ['52', 5],
  ] as const) {
    await main.getByRole('link', { name: figure, exact: true }).click()
    await expect(page.locator('.repetition')).toHaveCount(many)
    await page.keyboard.press('Escape')
    await page.getByRole('heading', { name: 'This session' }).waitFor()
  }
  const recorded = (await journal(page)).filter(({ kind }) => kind === 'repetition')
  expect(recorded).toHaveLength(5)
  await page.getByRole('link', { name: 'again' }).click()
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
  await repetition(page)
  await expect(shown(page).streak).toHaveAttribute('data-streak', '2')
})

test('music that is higher than its place goes along with the player, and is at its beginning again for the next repetition', async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 600 })
  // Three bars, the right hand: more than a small phone has room for.
  await openDrill(page, '0-11/right')
  await chooseStandard(page, 'notes')
  await drawn(page)
  const place = page.locator('.practice-notes')
  const scrolled = () => place.evaluate(({ scrollTop }) => scrollTop)
  expect(await place.evaluate((box) => box.scrollHeight - box.clientHeight)).toBeGreaterThan(0)
  expect(await scrolled()).toBe(0)
  await repetition(page, 'C5 D5 E5 F5 G5 E5 F5 E5 D5 C5 D5 G4 C5 D5 E5 F5 G5 C6')
  const [box, mark] = [await boxOf(place), await boxOf(shown(page).right.last())]
  expect(await scrolled()).toBeGreaterThan(0)
  expect(mark.top).toBeGreaterThan(box.top)
  expect(mark.bottom).toBeLessThan(box.bottom)
  await expect.poll(scrolled).toBe(0)
  // The page itself has stayed where it was.
  expect(await page.evaluate(() => window.scrollY)).toBe(0)
})

interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly middle: number
}

const boxOf = async (element: {
  readonly boundingBox: () => Promise<{
    x: number
    y: number
    width: number
    height: number
  } | null>
}): Promise<Box> => {
  const box = await element.boundingBox()
  if (!box) throw new Error('the element is not on the page')
  return {
    left: box.x,
    right: box.x + box.width,
    top: box.y,
    bottom: box.y + box.height,
    middle: box.y + box.height / 2,
  }
}
