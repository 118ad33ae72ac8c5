import type { Page } from '@playwright/test'
import { mark, smf } from '../score/smf'
import { firstPiece, goTo, openApp } from './support/app'
import { expect, test } from './support/test'

// Every other test of this folder fails when the page's own work goes against its policy.

declare global {
  interface Window {
    /** What the policy has forbidden, and what hostile text has reached. */
    forbidden: string[]
    reached: string[]
  }
}

const open = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    window.forbidden = []
    window.reached = []
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) =>
      window.forbidden.push(effectiveDirective),
    )
  })
  await openApp(page)
  await page.getByRole('heading', { name: firstPiece }).waitFor()
}
const forbidden = (page: Page) => page.evaluate(() => window.forbidden)

test.describe('the policy of the page', () => {
  test.use({
    expectedErrors: async ({ browserName: _browser }, provide) =>
      provide([/Content Security Policy/, /ERR_BLOCKED_BY_CSP/, /^request to https:\/\/example/]),
  })

  test('nothing can be sent to another machine', async ({ page }) => {
    await open(page)
    const tries = await page.evaluate(async () => {
      const fetched = await fetch('https://example.com/').then(
        () => 'sent',
        () => 'refused',
      )
      return [fetched, navigator.sendBeacon('https://example.com/', 'x') ? 'queued' : 'refused']
    })
    expect(tries[0]).toBe('refused')
    await expect.poll(() => forbidden(page)).toEqual(['connect-src', 'connect-src'])
  })

  test('a script that stands in the page, or comes from elsewhere, does not run', async ({
    page,
  }) => {
    await open(page)
    await page.evaluate(() => {
      const inline = document.createElement('script')
      inline.textContent = 'window.reached.push("inline")'
      const foreign = document.createElement('script')
      foreign.src = 'https://example.com/x.js'
      document.body.append(inline, foreign)
      document.body.insertAdjacentHTML('beforeend', '<img src="/none" onerror="reached.push(1)">')
    })
    await expect.poll(() => forbidden(page)).toContain('script-src-attr')
    expect(await forbidden(page)).toEqual(expect.arrayContaining(['script-src-elem']))
    expect(await page.evaluate(() => window.reached)).toEqual([])
  })
})

const hostile = '<img src=x onerror="reached.push(1)"><script>reached.push(2)</script>'

test('a hostile title is shown as the text that it is', async ({ page }) => {
  await open(page)
  await goTo(page, '#/')
  const opening = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Choose a file' }).click()
  const bytes = smf([`${mark('03', hostile)} 00 90 3c 40 60 80 3c 00 00 90 3e 40 60 80 3e 00`])
  await (
    await opening
  ).setFiles({
    name: '"><svg onload=reached.push(3)>.mid',
    mimeType: 'audio/midi',
    buffer: Buffer.from(bytes),
  })
  await expect(page.getByRole('heading', { level: 1 })).toContainText('<img src=x')
  await goTo(page, '#/')
  await expect(page.getByRole('link', { name: hostile })).toBeVisible()
  expect(await page.evaluate(() => window.reached)).toEqual([])
  expect(await forbidden(page)).toEqual([])
})
