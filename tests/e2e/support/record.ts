import type { Page } from '@playwright/test'
import { formatJournal } from '@/journal/lines'
import type { JournalEvent } from '@/journal/journal'
import { goTo } from './app'

/** Chooses a file on the page of the record. */
export const chooseRecord = async (page: Page, name: string, content: string): Promise<void> => {
  await goTo(page, '#/journal')
  const opening = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Choose a record' }).click()
  await (
    await opening
  ).setFiles({ name, mimeType: 'application/jsonl', buffer: Buffer.from(content) })
}

/** Takes events in as a person does, and waits for the outcome. */
export const takeIn = async (page: Page, events: readonly JournalEvent[]): Promise<void> => {
  await chooseRecord(page, 'record.jsonl', formatJournal(events))
  await page.getByRole('button', { name: /^Take in/ }).click()
  await page.getByText('came in').waitFor()
}
