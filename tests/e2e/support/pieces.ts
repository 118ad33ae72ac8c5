import type { Page } from '@playwright/test'
import { mark, smf } from '../../score/smf'

/** So many quarters up from middle C by semitones, in one track without a name, so that its hand is inferred. */
export const littleStair = (quarters = 10): Uint8Array =>
  smf([
    `${mark('03', 'Little Stair')} ${Array.from({ length: quarters }, (_, i) => {
      const key = (60 + i).toString(16)
      return `00 90 ${key} 40 60 80 ${key} 00`
    }).join(' ')}`,
  ])

export const toPieces = async (page: Page): Promise<void> => {
  await page.getByRole('navigation').getByRole('link', { name: 'Pieces', exact: true }).click()
  await page.getByRole('heading', { name: 'Pieces', exact: true }).waitFor()
}

/** Brings a file on the page of the pieces, and waits for the page of its piece. */
export const bring = async (page: Page, name: string, bytes: Uint8Array): Promise<void> => {
  await toPieces(page)
  await page
    .getByLabel('File of a piece')
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(bytes) })
  await page.locator('.page-piece').waitFor()
}
