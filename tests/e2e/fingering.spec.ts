import type { Locator, Page } from '@playwright/test'
import { violations } from './support/axe'
import { drawn, goTo, idOf, openApp, play } from './support/app'
import { overflow } from './support/screens'
import { expect, test } from './support/test'

const section = (page: Page): Locator =>
  page.getByRole('region', { name: 'Fingering', exact: true })
const versions = (page: Page): Locator => section(page).getByRole('radio')
const button = (page: Page, name: string): Locator =>
  section(page).getByRole('button', { name, exact: true })

/** The digits of a drawing in the order of its notes, each with the head over or under which it stands; a dot where none does. */
const digits = (page: Page, drawing: string): Promise<string> =>
  page
    .locator(`${drawing} svg`)
    .first()
    .evaluate((svg) => {
      const middle = (element: Element): number => {
        const { left, right } = element.getBoundingClientRect()
        return (left + right) / 2
      }
      const all = [...svg.querySelectorAll('g.fing')]
      return [...svg.querySelectorAll('g.note')]
        .toSorted((a, b) => middle(a) - middle(b))
        .map((note) => {
          const head = note.querySelector('g.notehead') ?? note
          const width = head.getBoundingClientRect().width
          const own = all.filter((digit) => Math.abs(middle(digit) - middle(head)) < width)
          return own.map((digit) => digit.textContent?.trim() ?? '').join('') || '.'
        })
        .join('')
    })

/** Bar 9 of the first piece, right hand: C5 to C6, a scale in eighths. */
const openScale = async (page: Page): Promise<void> => {
  await openApp(page)
  await drawn(page)
  await page.getByRole('combobox', { name: 'to bar', exact: true }).selectOption({ label: '9' })
  await page.getByRole('combobox', { name: 'From bar' }).selectOption({ label: '9' })
  await expect(section(page)).toBeVisible()
}

/** On the page and in the drill; what is drawn comes a moment later. */
const expectDigits = (page: Page, drawing: string, expected: string): Promise<void> =>
  expect.poll(() => digits(page, drawing)).toBe(expected)

test('a fingering is taken over, changed by keys, named, put beside another, and stands in the drill and after a reload', async ({
  page,
}) => {
  await openScale(page)
  await section(page).locator('h2').click()
  await page.keyboard.press('p')
  await expect(section(page)).toContainText('1 2 3 1 2 3 4 5')
  await button(page, 'See it on the music: fingering 2').click()
  await expect.poll(() => digits(page, '.preview')).not.toBe('12312345')
  await button(page, 'Take over: fingering 1').click()
  await expectDigits(page, '.preview', '12312345')

  // By keys alone: into the music, two notes on, and two digits.
  await page.getByRole('slider', { name: 'Chosen bars' }).focus()
  for (const key of ['ArrowDown', 'ArrowRight', 'ArrowRight', '4', '2'])
    await page.keyboard.press(key)
  await expectDigits(page, '.preview', '12422345')
  await expect(section(page).getByRole('note')).toHaveText(
    'In bar 9, beat 2: 4, then 2: the hand has to jump.',
  )
  await page.keyboard.press('Backspace')
  await expectDigits(page, '.preview', '1242.345')
  await page.keyboard.press('1')
  await expectDigits(page, '.preview', '12421345')

  await button(page, 'Name and remark: A fingering').click()
  await section(page).getByRole('textbox', { name: 'Name' }).fill('For the lesson')
  await section(page).getByRole('combobox', { name: 'From' }).selectOption('my teacher’s')
  await section(page).getByRole('textbox', { name: 'Remark' }).fill('lighter at the top')
  await button(page, 'Keep').click()
  await expect(section(page)).toContainText(
    'For the lesson · my teacher’s · lighter at the top · 8 digits',
  )

  // A version beside it, with the usual digits of the scale.
  await section(page).getByRole('checkbox', { name: 'Keep the digits' }).uncheck()
  await page.keyboard.press('p')
  await button(page, 'As a new version: fingering 1').click()
  await expect(versions(page)).toHaveCount(2)
  await expectDigits(page, '.preview', '12312345')
  await expect(section(page)).toContainText(/Beside the chosen one, here: it .*(more|less)/)
  await versions(page).first().click()
  await expect(versions(page).first()).toBeChecked()
  await expectDigits(page, '.preview', '12421345')
  expect(await violations(page)).toEqual([])
  expect(await overflow(page)).toEqual({ by: 0, out: [] })

  await page.getByRole('button', { name: 'Start the drill' }).click()
  await expectDigits(page, '.practice-notes', '12421345')
  await page.reload()
  await expectDigits(page, '.practice-notes', '12421345')
  await page.getByText('Options', { exact: true }).click()
  await page.getByRole('checkbox', { name: 'Fingering over the notes' }).uncheck()
  await expectDigits(page, '.practice-notes', '........')
})

test('the hand is measured at the keys, and a drill that strains it begins with a caution, once a day', async ({
  page,
}) => {
  await openApp(page, { address: '#/taptest' })
  // The left hand plays octaves there.
  await goTo(page, `#/practice/${idOf('clogs-on-the-stairs.mid')}/28-30/left`)
  const caution = page.getByText('Octaves tire the hand: two minutes at a time.')
  await expect(caution).toBeVisible()
  await page.getByText('Options', { exact: true }).click()
  await page.getByRole('button', { name: 'Measure my hand' }).click()
  await play(page, 'C4+D5')
  await expect(page.getByText('So far a ninth.')).toBeVisible()
  await play(page, 'C4+C5')
  await page.getByRole('button', { name: 'Keep it' }).click()
  await expect(page.getByRole('combobox', { name: 'Hand', exact: true })).toHaveValue('measured')
  await page.reload()
  await expect(page.locator('.practice')).toBeVisible()
  await expect(caution).toHaveCount(0)
})

test('the digits stand on the lines of the whole piece, and all of it on paper', async ({
  page,
}) => {
  await openScale(page)
  const line = page.locator('.line').last()
  const last = line.locator('svg').first()
  // A line is ink alone: eight digits more make its drawing longer.
  const ink = async (): Promise<number> => (await last.innerHTML()).length
  await line.scrollIntoViewIfNeeded()
  const bare = await ink()
  await section(page).locator('h2').click()
  await page.keyboard.press('p')
  await button(page, 'Take over: fingering 1').click()
  await expectDigits(page, '.preview', '12312345')
  await line.scrollIntoViewIfNeeded()
  await expect.poll(ink).toBeGreaterThan(bare + 8 * 100)
  await page.emulateMedia({ media: 'print' })
  await expect(page.locator('.line').first()).toBeVisible()
  await expect(page.locator('.line:not(:has(svg))')).toHaveCount(0)
  await expect(section(page)).toBeHidden()
})
