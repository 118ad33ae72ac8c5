import { chromium } from '@playwright/test'
import { chmod, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { findBrowser, type Machine } from './browser'

let folder = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'browsers-'))
})
afterEach(() => rm(folder, { recursive: true, force: true }))

/** A program that answers, or refuses, as an installed browser would. */
const program = async (name: string, exitCode = 0): Promise<string> => {
  await writeFile(join(folder, name), `#!/bin/sh\nexit ${exitCode}\n`)
  await chmod(join(folder, name), 0o755)
  return join(folder, name)
}

const linux = (env: Machine['env'] = {}): Machine => ({
  env: { PATH: folder, ...env },
  platform: 'linux',
  arch: 'x64',
  usualPlaces: [],
})

const onLinux = test.runIf(process.platform === 'linux' && process.arch === 'x64')

onLinux('the environment variable comes before an installed browser', async () => {
  await program('chromium')
  const mine = await program('mine')
  const found = await findBrowser(linux({ PASSAGEWORK_BROWSER: mine }))
  expect(found).toMatchObject({ executablePath: mine, from: 'variable' })
})

test('an environment variable that names nothing is an error that says so', async () => {
  const missing = join(folder, 'missing')
  await expect(findBrowser(linux({ PASSAGEWORK_BROWSER: missing }))).rejects.toThrow(
    `PASSAGEWORK_BROWSER names ${missing}, which is not there`,
  )
})

onLinux('an installed browser is found on the path', async () => {
  const path = await program('google-chrome')
  expect(await findBrowser(linux())).toMatchObject({ executablePath: path, from: 'installed' })
})

onLinux('an installed browser is found in a usual place outside the path', async () => {
  const path = await program('chromium')
  const machine = { ...linux({ PATH: '/nowhere' }), usualPlaces: [folder] }
  expect(await findBrowser(machine)).toMatchObject({ executablePath: path, from: 'installed' })
})

onLinux(
  'a stub that does not start is passed over',
  async () => {
    await program('chromium-browser', 1)
    expect((await findBrowser(linux())).from).toBe('carried')
  },
  120_000,
)

onLinux(
  'with nothing installed the carried browser starts and shows a page',
  async () => {
    const { from, executablePath, args, env } = await findBrowser(linux())
    expect(from).toBe('carried')
    const browser = await chromium.launch({
      executablePath,
      args: [...args],
      env: { ...env, PATH: '' },
    })
    try {
      const page = await browser.newPage()
      await page.setContent('<title>Passage</title><p>C4 D4 E4</p>')
      expect(await page.title()).toBe('Passage')
      expect((await page.locator('p').boundingBox())?.height).toBeGreaterThan(0)
    } finally {
      await browser.close()
    }
  },
  120_000,
)
