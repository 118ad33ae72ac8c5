import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { parseJournal } from '@/journal/lines'
import type { JournalEvent } from '@/journal/journal'
import { goTo, journal, openApp, openDrill, repetition, shown } from './support/app'
import { violations } from './support/axe'
import { overflow, shots } from './support/screens'
import { expect, test } from './support/test'

const isRepetition = ({ kind }: JournalEvent): boolean => kind === 'repetition'
const stored = async (page: Page): Promise<number> =>
  (await journal(page)).filter(isRepetition).length

/** How many repetitions stand in the file that a press of this button gives. */
const savedBy = async (page: Page, button: string): Promise<number> => {
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: button }).click()
  const text = await readFile(await (await download).path(), 'utf8')
  return parseJournal(text).events.filter(isRepetition).length
}

test('a browser that refuses the database is told, practice goes on, and can be saved as a file', async ({
  page,
}) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'indexedDB', {
      get: () => {
        throw new DOMException(
          'The user denied permission to access the database.',
          'SecurityError',
        )
      },
    })
  })
  await openDrill(page)
  const alert = page.getByRole('alert')
  const words = alert.getByText('This browser offers no database here')
  await expect(words).toBeHidden()
  await alert.getByText('Trouble with the record').click()
  await expect(words).toBeVisible()
  await repetition(page)
  await repetition(page, 'C5 D5 E5 F#5 G5')
  await expect(shown(page).streak).toHaveAttribute('data-streak', '0')
  expect(await savedBy(page, 'Save the record as a file')).toBe(2)
  await page.keyboard.press('Escape')
  await expect(page.locator('.share')).toHaveAttribute('data-share', '0.5')
  await expect(words).toBeVisible()
  // Whoever leaves with something that is only in memory is asked first.
  const asked = page.waitForEvent('dialog')
  await page.close({ runBeforeUnload: true })
  const dialog = await asked
  expect(dialog.type()).toBe('beforeunload')
  await dialog.accept()
})

test('two tabs practise at once: both are stored, and each shows what the other did', async ({
  page,
  context,
}) => {
  const address = await openDrill(page)
  await repetition(page)
  const other = await context.newPage()
  await openApp(other, { address })
  await expect(shown(other).streak).toHaveAttribute('data-streak', '1')
  await Promise.all([repetition(page), repetition(other)])
  expect(await stored(page)).toBe(3)
  for (const tab of [page, other]) {
    await goTo(tab, '#/summary')
    await expect(tab.getByText('3 clean, 0 flawed')).toBeVisible()
  }
  await goTo(other, address)
  await other.locator('.practice').waitFor()
  await repetition(other, 'C5 D5 E5 F#5 G5')
  await expect(page.getByText('3 clean, 1 flawed')).toBeVisible()
})

/** A tab that holds the database of the page's origin open, in some version, and does nothing else. */
const holdDatabase = async (page: Page, version: number): Promise<void> => {
  await page.goto('/icon.svg')
  await page.evaluate(
    (number) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('passagework', number)
        opening.onupgradeneeded = () => {
          if (number > 1) return
          const events = opening.result.createObjectStore('events', { keyPath: 'id' })
          for (const [name, path] of [
            ['bySession', 'session'],
            ['byPiece', 'piece'],
            ['byChunk', 'chunk'],
            ['byTime', 'atEpochMs'],
          ] as const)
            events.createIndex(name, path)
          opening.result.createObjectStore('pieces', { keyPath: 'id' })
          for (const name of ['files', 'settings']) opening.result.createObjectStore(name)
        }
        opening.onerror = () => reject(opening.error ?? new Error('it does not open'))
        opening.onsuccess = () => resolve()
      }),
    version,
  )
}

test('an older tab that holds the record back, then a newer one that takes it over: told, and nothing is lost', async ({
  page,
  context,
}) => {
  const older = await context.newPage()
  await holdDatabase(older, 1)
  await openDrill(page)
  const alert = page.getByRole('alert')
  await expect(alert).toContainText('Another tab still has an older version')
  await repetition(page)
  await older.close()
  await expect(alert).toContainText('what you played here is stored. Reload')
  expect(await stored(page)).toBe(1)
  await page.reload()
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
  await expect(alert).toBeHidden()
  const newer = await context.newPage()
  await holdDatabase(newer, 99)
  await expect(alert).toContainText('A newer version of this page was opened in another tab')
  await repetition(page)
  // The database is the newer tab's; what is in memory alone goes into the file.
  expect(await savedBy(page, 'Save the record as a file')).toBe(1)
  await expect(page.getByText('holds what is not in the database')).toBeVisible()
  const late = await context.newPage()
  await openApp(late, { address: '#/journal' })
  await expect(late.getByRole('alert')).toContainText('written by a newer version')
})

declare global {
  interface Window {
    /** What the browser says of the folder, for a test to change. */
    permission: PermissionState
  }
}

/** Real handles of the browser's own file system (File System Standard); only the choice is not asked of anybody. */
const giveFolder = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    window.permission = 'granted'
    Object.assign(window, {
      showDirectoryPicker: async () =>
        (await navigator.storage.getDirectory()).getDirectoryHandle('Piano', { create: true }),
    })
    const ask = async (): Promise<PermissionState> => window.permission
    Object.assign(FileSystemHandle.prototype, {
      queryPermission: ask,
      requestPermission: async () => {
        window.permission = 'granted'
        return 'granted'
      },
    })
  })

const filesIn = (page: Page): Promise<Record<string, string>> =>
  page.evaluate(async () => {
    const root = await navigator.storage.getDirectory()
    const folder = await root.getDirectoryHandle('Piano')
    const texts: Record<string, string> = {}
    for await (const [name, entry] of folder.entries())
      if (entry instanceof FileSystemFileHandle) texts[name] = await (await entry.getFile()).text()
    return texts
  })

const repetitionsIn = async (page: Page): Promise<number> => {
  const texts = Object.values(await filesIn(page))
  return parseJournal(texts.join('')).events.filter(isRepetition).length
}

test('a folder of one’s own is kept up to date after each session, survives a reload, and restores a new machine', async ({
  page,
  browser,
}) => {
  await giveFolder(page)
  const address = await openDrill(page)
  await repetition(page)
  await goTo(page, '#/journal')
  const section = page.getByRole('region', { name: 'A second copy in a folder' })
  await section.getByRole('button', { name: 'Choose a folder' }).click()
  await expect(section.getByRole('status')).toContainText('Kept in “Piano”. Written last on')
  expect(await repetitionsIn(page)).toBe(1)
  expect(await violations(page)).toEqual([])
  for (const [width, height] of [
    [390, 844],
    [1280, 800],
  ] as const) {
    await page.setViewportSize({ width, height })
    expect(await overflow(page)).toEqual({ by: 0, out: [] })
    await page.screenshot({ path: `${shots}/records-folder-${width}.png`, fullPage: true })
  }
  await goTo(page, address)
  await page.locator('.practice').waitFor()
  await repetition(page)
  await page.keyboard.press('Escape')
  await expect.poll(() => repetitionsIn(page)).toBe(2)

  await page.addInitScript(() => {
    window.permission = 'prompt'
  })
  await page.goto(`/${address}`)
  await page.reload()
  await page.locator('.practice').waitFor()
  await repetition(page)
  await page.keyboard.press('Escape')
  await expect(page.getByText('wants to be asked again')).toBeVisible()
  expect(await repetitionsIn(page)).toBe(2)
  await page.getByRole('button', { name: 'Let it write' }).click()
  await expect.poll(() => repetitionsIn(page)).toBe(3)

  const files = Object.entries(await filesIn(page))
  expect(files.map(([name]) => name)).toEqual([
    expect.stringMatching(/^passagework-\d{4}-\d\d\.jsonl$/),
  ])
  const machine = await (await browser.newContext({ serviceWorkers: 'block' })).newPage()
  await openApp(machine, { address: '#/journal' })
  const opening = machine.waitForEvent('filechooser')
  await machine.getByRole('button', { name: 'Choose a record' }).click()
  await (
    await opening
  ).setFiles(
    files.map(([name, text]) => ({
      name,
      mimeType: 'application/jsonl',
      buffer: Buffer.from(text),
    })),
  )
  await machine.getByRole('button', { name: /^Take in/ }).click()
  await expect(machine.getByText('came in, 0 were here already')).toBeVisible()
  expect(await journal(machine)).toEqual(await journal(page))
  await machine.close()

  await goTo(page, '#/journal')
  await section.getByRole('button', { name: /^Stop/ }).click()
  await expect(section.getByRole('button', { name: 'Choose a folder' })).toBeVisible()
  expect(await repetitionsIn(page)).toBe(3)
})

test('a damaged record is named, hides no other, and goes along into the saved file', async ({
  page,
}) => {
  const address = await openDrill(page)
  await repetition(page)
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('passagework')
        opening.onsuccess = () => {
          const change = opening.result.transaction('events', 'readwrite')
          const store = change.objectStore('events')
          const all = store.getAll()
          all.onsuccess = () => {
            const whole = all.result.find(({ kind }) => kind === 'repetition')
            store.put({ ...whole, id: 'damaged', rung: 'fast' })
          }
          change.oncomplete = () => resolve()
          change.onerror = () => reject(change.error ?? new Error('it cannot be written'))
        }
      }),
  )
  await page.goto(`/${address}`)
  await page.reload()
  await expect(shown(page).streak).toHaveAttribute('data-streak', '1')
  await expect(page.getByRole('alert')).toContainText(/damaged .* field rung .*Nothing was deleted/)
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save the record as a file' }).click()
  const text = await readFile(await (await download).path(), 'utf8')
  expect(text).toContain('"id":"damaged"')
})
