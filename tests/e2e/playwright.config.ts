import { defineConfig } from '@playwright/test'
import { createServer } from 'node:net'
import { fileURLToPath } from 'node:url'
import { findBrowser } from '../support/browser'

const root = fileURLToPath(new URL('../..', import.meta.url))

const freePort = (): Promise<number> =>
  new Promise((found, failed) => {
    const server = createServer()
    server.once('error', failed)
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() => {
        if (address === null || typeof address === 'string') failed(new Error('no port is free'))
        else found(address.port)
      })
    })
  })

// Each worker reads this file again and must come to the same port and browser: the environment carries them.
const port = (process.env['PASSAGEWORK_PORT'] ??= String(await freePort()))
const { executablePath, args, env } = await findBrowser()
process.env['PASSAGEWORK_BROWSER'] = executablePath

export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  outputDir: './results',
  snapshotDir: './shots',
  fullyParallel: true,
  workers: 2,
  retries: 0,
  timeout: 60_000,
  // A busy machine draws and stores late, never wrongly.
  expect: { timeout: 15_000 },
  forbidOnly: process.env['CI'] !== undefined,
  reporter: [['list']],
  projects: [{ name: 'chromium' }],
  use: {
    baseURL: `http://127.0.0.1:${port}`,
    viewport: { width: 1280, height: 800 },
    locale: 'en-GB',
    colorScheme: 'light',
    // The way to a failure is recorded when asked for (`--trace retain-on-failure`): it slows every test down.
    screenshot: 'only-on-failure',
    // Keeping everything for offline use would be done anew in every test.
    serviceWorkers: 'block',
    launchOptions: { executablePath, args: [...args], env: { ...ownEnvironment(), ...env } },
  },
  webServer: {
    command: `npx vite preview --port ${port} --strictPort`,
    cwd: root,
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: false,
  },
})

function ownEnvironment(): Record<string, string> {
  const entries = Object.entries(process.env)
  return Object.fromEntries(entries.filter((e): e is [string, string] => e[1] !== undefined))
}
