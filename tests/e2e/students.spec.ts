import type { Locator, Page } from '@playwright/test'
import { sessionId, studentId } from '@/journal/ids'
import { formatJournal } from '@/journal/lines'
import type { JournalEvent } from '@/journal/journal'
import type { StudentListing } from '@/storage/students'
import { studentCount, studentListing } from '../support/studio'
import { journal, openApp } from './support/app'
import { violations } from './support/axe'
import { overflow, shots } from './support/screens'
import { expect, test } from './support/test'
import { yearOfPractice } from './support/yearOfPractice'

// Days are those of the machine's own time zone.
test.use({ timezoneId: 'UTC' })

/** Chooses files of students, as they came by mail. */
const choose = async (
  page: Page,
  ...files: readonly (readonly [name: string, content: string])[]
): Promise<void> => {
  const opening = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open a student’s record' }).click()
  await (
    await opening
  ).setFiles(
    files.map(([name, content]) => ({
      name,
      mimeType: 'application/jsonl',
      buffer: Buffer.from(content),
    })),
  )
}

const openBeside = async (
  page: Page,
  name: string,
  events: readonly JournalEvent[],
): Promise<void> => {
  await choose(page, [name, formatJournal(events)])
  await page.getByRole('button', { name: 'Open it beside yours' }).click()
  await expect(page.getByText('Your own record is as it was.')).toBeVisible()
}

test('records that students sent stand beside one’s own: named, compared, looked into, made newer, removed', async ({
  page,
}) => {
  test.slow()
  const end = Date.now() - 86_400_000
  const year = yearOfPractice(end).filter(
    ({ kind, atEpochMs }) => kind === 'pieceAdded' || atEpochMs > end - 100 * 86_400_000,
  )
  const bens = year.slice(0, 600).map((event) => ({ ...event, session: sessionId('of Ben') }))
  const half = year.slice(0, Math.floor(year.length / 2))
  await openApp(page, { address: '#/review' })
  await page.getByRole('link', { name: 'Students' }).click()

  // A file that is none is refused with the line and what to do; one that is damaged loses its one line.
  await choose(
    page,
    ['essay.jsonl', 'to be or not\n'],
    ['ada-the-example.jsonl', `{"v":\n${formatJournal(half)}`],
  )
  await expect(page.getByRole('alert')).toContainText('no line of it is one. Line 1')
  await expect(page.getByRole('alert')).toContainText('Nothing was changed.')
  await page.getByRole('button', { name: 'On to the next file' }).click()
  await expect(page.getByText('1 line cannot be read')).toBeVisible()
  await expect(page.getByLabel('Name of the student')).toHaveValue('ada the example')
  expect(await violations(page, 'all')).toEqual([])
  await page.getByLabel('Name of the student').fill('Ada')
  await page.getByRole('button', { name: 'Open it beside yours' }).click()
  await expect(page.getByText('Your own record is as it was.')).toBeVisible()
  await openBeside(page, 'ben.jsonl', bens)

  const rows = page.locator('.studio tbody tr')
  await expect(rows).toHaveCount(6)
  await expect(rows.first()).toContainText('Ada')
  // Sorted by the first column, the other way, by key.
  await page.keyboard.press('1')
  await expect(rows.first()).toContainText('ben')
  await expect(page.locator('th[aria-sort=descending]')).toContainText('Student')
  const which = page.getByRole('combobox', { name: /^Piece/ })
  await which.selectOption('Ferry at Dusk')
  await expect(rows).toHaveCount(2)
  await which.selectOption('all pieces')

  // A newer file is known by its sessions; what is new is added.
  await choose(page, ['ada-in-june.jsonl', formatJournal(year)])
  await expect(page.getByText('An older file of Ada has sessions of this one.')).toBeVisible()
  await page.getByRole('button', { name: 'Open it beside yours' }).click()
  await expect(page.locator('.import')).toContainText(/were here already/)
  await expect(rows).toHaveCount(6)

  // The same screens as one's own, and nothing in one's own record.
  await page.reload()
  await rows.first().waitFor()
  await page.getByRole('link', { name: 'Ada' }).first().click()
  await expect(page.getByText('Ada’s record, to read only')).toBeVisible()
  const clean = year.filter((e) => e.kind === 'repetition' && e.verdict === 'clean').length
  const flawed = year.filter((e) => e.kind === 'repetition' && e.verdict === 'flawed').length
  await expect(page.locator('.review .share')).toHaveAttribute(
    'data-share',
    String(clean / (clean + flawed)),
  )
  await page.getByRole('main').getByRole('link', { name: 'Morning at the Mill' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Morning at the Mill')
  // Of a student's record nothing leads to a drill.
  await expect(page.locator('.chunk-table a').first()).toBeVisible()
  await expect(page.locator('a[href^="#/practice"], a[href^="#/piece/"]')).toHaveCount(0)
  await page.locator('.chunk-table a').first().click()
  await expect(page.locator('.repetitions-list')).toContainText(/clean|flawed/)
  await page.goBack()
  await page.getByRole('link', { name: 'Teacher’s page' }).click()
  await expect(page.locator('.teacher-sheet')).toContainText('Ada')
  expect(await journal(page)).toEqual([])

  await page.getByRole('link', { name: 'Students' }).click()
  // By keys alone; who leaves the renaming or the removing stands again where it began.
  await page.getByText('2 students: rename, remove').focus()
  await page.keyboard.press('Enter')
  const renaming = page.getByRole('button', { name: 'Rename ben' })
  await tabTo(page, renaming)
  await page.keyboard.press('Enter')
  await page.keyboard.type('Ben')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: 'Rename Ben', exact: true })).toBeFocused()
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await expect(page.getByText('brings everything back')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Keep' })).toBeFocused()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: 'Remove Ben' })).toBeFocused()
  await page.keyboard.press('Enter')
  await page.keyboard.press('Shift+Tab')
  await page.keyboard.press('Enter')
  await expect(rows).toHaveCount(3)
  const databases = await page.evaluate(async () => (await indexedDB.databases()).length)
  expect(databases, 'one’s own, the list, and Ada').toBe(3)
})

/** Presses Tab until it has the focus. */
const tabTo = async (page: Page, wanted: Locator): Promise<void> => {
  for (let i = 0; i < 20; i++) {
    await page.keyboard.press('Tab')
    if (await wanted.evaluate((element) => element === document.activeElement)) return
  }
  throw new Error('Tab does not lead there')
}

/** Puts a studio into the browser's database as the program keeps it. */
const keepStudio = (page: Page, listings: readonly StudentListing[]): Promise<void> =>
  page.evaluate(
    (all) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('passagework students')
        opening.onerror = () => reject(new Error('the database does not open'))
        opening.onsuccess = () => {
          const change = opening.result.transaction('students', 'readwrite')
          for (const each of all) change.objectStore('students').put(each)
          change.onerror = () => reject(new Error('the studio is not kept'))
          change.oncomplete = () => {
            opening.result.close()
            resolve()
          }
        }
      }),
    listings,
  )

test('a studio of thirty with a year each opens within two seconds, whole and readable in four sizes', async ({
  page,
}, info) => {
  test.slow()
  await openApp(page, { address: '#/students' })
  await page.getByRole('button', { name: 'Open a student’s record' }).waitFor()
  const end = Date.now() - 86_400_000
  // Six years of practice, each of five students: to count thirty would take long, and change nothing here.
  const six = Array.from({ length: 6 }, (_, student) => studentListing(student, end, 'UTC'))
  const names = Array.from({ length: studentCount }, (_, i) => String(i + 1).padStart(2, '0'))
  await keepStudio(
    page,
    names.flatMap((name, i) => {
      const year = six[i % six.length]
      return year ? [{ ...year, id: studentId(name), name: `Student ${name}` }] : []
    }),
  )
  await page.goto('/#/review')
  await page.reload()
  await page.getByRole('link', { name: 'Students' }).waitFor()
  const took = await page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const begin = performance.now()
        const look = (): void => {
          if (document.querySelectorAll('.studio tbody tr').length > 0)
            resolve(performance.now() - begin)
          else requestAnimationFrame(look)
        }
        window.location.hash = '#/students'
        look()
      }),
  )
  info.annotations.push({ type: 'studio of thirty', description: `${Math.round(took)} ms` })
  expect(took).toBeLessThan(2000)
  await expect(page.locator('.studio tbody tr')).toHaveCount(studentCount * 9)
  await page.keyboard.press('w')
  await expect(page.getByRole('radio', { name: 'the last 7 days' })).toBeChecked()
  for (const width of [320, 390, 820, 1280, 1920]) {
    await page.setViewportSize({ width, height: width < 400 ? 844 : 900 })
    await page.emulateMedia({ colorScheme: width === 390 ? 'dark' : 'light' })
    await expect.poll(() => overflow(page), `${width}`).toEqual({ by: 0, out: [] })
    await page.screenshot({ path: `${shots}/students-${width}.png`, animations: 'disabled' })
  }
  await page.getByRole('combobox', { name: /^Piece/ }).selectOption('Study 8')
  expect(await violations(page)).toEqual([])
  await page.emulateMedia({ colorScheme: 'dark' })
  expect(await violations(page, 'colours')).toEqual([])
  await page.keyboard.press('?')
  await expect(page.getByRole('dialog')).toContainText('open a student’s record')
})
