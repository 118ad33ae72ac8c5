import { violations } from './support/axe'
import { fiveNotes, goTo, idOf, journal, openDrill, play, repetition, shown } from './support/app'
import { overflow } from './support/screens'
import { expect, test } from './support/test'

const hostile = '<img src=x onerror=alert(1)> [x](javascript:alert(1))'

test('the notebook opens by one key in a drill, takes whatever is typed, and is found again everywhere', async ({
  page,
}) => {
  const strange: string[] = []
  page.on('request', (request) => {
    if (!request.url().includes('127.0.0.1')) strange.push(request.url())
  })
  await openDrill(page)
  await repetition(page)
  const { strokes, streak } = shown(page)

  // In the drill: 9 opens it, and what is typed is only typed.
  await page.keyboard.press('9')
  const dialog = page.getByRole('dialog', { name: 'Notebook' })
  const field = dialog.getByRole('textbox', { name: 'A new entry' })
  await expect(field).toBeFocused()
  await page.keyboard.type(`Thumb *under* at 1 2 3? 0 9. See https://example.org/way`)
  await page.keyboard.press('Enter')
  await page.keyboard.type(`- sing it`)
  await page.keyboard.press('Enter')
  await page.keyboard.type(hostile)
  await page.keyboard.press('Backspace')
  await page.keyboard.type(')')
  await play(page, fiveNotes.notes, { gap: 120 })
  // What is played on without a moment's rest belongs to what came before.
  await page.waitForTimeout(400)
  await page.keyboard.press('Control+Enter')
  await expect(dialog.getByRole('status')).toHaveText('Written.')
  const entry = dialog.getByRole('listitem').first()
  await expect(entry).toContainText('bar 9, right hand')
  await expect(entry).toContainText(hostile)
  await expect(entry.locator('img, script, [onerror]')).toHaveCount(0)
  await expect(entry.locator('em')).toHaveText('under')
  await expect(entry.locator('li')).toHaveText('sing it')
  const link = entry.getByRole('link')
  await expect(link).toHaveText('https://example.org/way')
  await expect(link).toHaveAttribute('rel', /noopener/)
  expect(await violations(page)).toEqual([])
  await page.keyboard.press('Escape')
  await expect(dialog).toHaveCount(0)
  await expect(page.locator('.practice')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Metronome' })).toHaveAttribute(
    'aria-pressed',
    'false',
  )
  // What was played meanwhile counts for nothing; the drill goes on where it was.
  await expect(strokes).toHaveCount(1)
  await repetition(page)
  await expect(streak).toHaveAttribute('data-streak', '2')

  // In a build-up; Esc closes it, and the place of the focus is as it was.
  const id = idOf('morning-at-the-mill.mid')
  await goTo(page, `#/buildup/${id}/32-35/right/brisk/forward`)
  const start = page.getByRole('button', { name: 'Start' })
  await expect(start).toBeFocused()
  await page.keyboard.press('9')
  await expect(field).toBeFocused()
  await expect(dialog.getByRole('listitem').first()).toContainText('under')
  await page.keyboard.press('Escape')
  await expect(start).toBeFocused()

  // On the page of the piece: changed, erased, and taken back.
  await goTo(page, `#/piece/${id}`)
  const strip = page.getByRole('region', { name: 'Notebook' })
  await expect(strip.getByRole('listitem').first()).toContainText('under')
  await strip.getByRole('button', { name: 'Change: Idea' }).click()
  const changing = dialog.getByRole('textbox', { name: 'Change the entry' })
  await expect(changing).toBeFocused()
  await changing.fill('Fourth finger on the G')
  await dialog.getByRole('combobox', { name: 'About' }).selectOption('Tried')
  await dialog.getByRole('combobox', { name: 'Did it help?' }).selectOption('it helped')
  await dialog.getByRole('button', { name: 'Save' }).click()
  await expect(dialog.getByRole('listitem')).toHaveCount(1)
  await dialog.getByRole('button', { name: 'Erase' }).click()
  await expect(dialog.getByRole('listitem')).toHaveCount(0)
  await dialog.getByRole('button', { name: 'Take it back' }).click()
  await expect(dialog.getByRole('listitem')).toContainText('Tried, it helped')
  // What is not saved is there again.
  await dialog.getByRole('textbox').fill('half a thought')
  await page.keyboard.press('Escape')
  await page.keyboard.press('9')
  await expect(dialog.getByRole('textbox')).toHaveValue('half a thought')
  await dialog.getByRole('textbox').fill('')
  await page.keyboard.press('Escape')
  await strip.getByRole('button', { name: 'It is finished' }).click()
  await expect(strip.getByRole('group', { name: 'The piece' })).toContainText('Finished')

  // After a reload, on the page over all pieces, and in the review.
  await page.reload()
  await expect(strip.getByRole('group', { name: 'The piece' })).toContainText('Finished')
  await strip.getByRole('link', { name: 'All pieces' }).click()
  const main = page.getByRole('main')
  await expect(main.getByRole('link', { name: 'Morning at the Mill' })).toBeVisible()
  await page.getByRole('searchbox', { name: 'Search' }).fill('FOURTH mill')
  await expect(main.getByRole('listitem')).toHaveCount(1)
  await page.getByRole('searchbox', { name: 'Search' }).fill('nowhere')
  await expect(main.getByRole('status')).toHaveText('0 of 1 entry')
  expect(await violations(page)).toEqual([])
  expect(await overflow(page)).toEqual({ by: 0, out: [] })
  await goTo(page, `#/review/${id}`)
  await expect(main.getByRole('region', { name: 'Notebook' })).toContainText('Fourth finger')
  expect(strange).toEqual([])
  const kinds = (await journal(page)).map(({ kind }) => kind)
  expect(kinds.filter((kind) => kind === 'notebookWritten')).toHaveLength(3)
  expect(kinds).toContain('notebookErased')
  expect(kinds).toContain('pieceDecided')
})
