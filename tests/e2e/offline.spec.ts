import type { Page } from '@playwright/test'
import { createServer } from 'node:http'
import { readFile } from 'node:fs/promises'
import { extname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { drawn, fiveNotes, goTo, openApp, openDrill, repetition, shown } from './support/app'
import { expect, test } from './support/test'

test.use({ serviceWorkers: 'allow' })

/** The built program is kept whole: the worker that does it has installed itself. */
const kept = (page: Page): Promise<unknown> =>
  page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state)

test('without a network the page opens again, and a drill runs with notation and sound', async ({
  page,
  context,
}) => {
  await openDrill(page)
  await kept(page)
  await context.setOffline(true)
  await page.reload()
  await drawn(page)
  await repetition(page, fiveNotes.notes)
  await expect(shown(page).strokes).toHaveCount(1)
  const hear = page.getByRole('button', { name: 'Hear it' })
  await hear.click()
  await expect(hear).toHaveAttribute('aria-pressed', 'true')
  // Only a piano that has its samples comes to the end of the chunk: 2.9 seconds.
  await expect(hear).toHaveAttribute('aria-pressed', 'false')
})

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
}

/** Serves the built program as a host does that puts up a newer version in the middle. */
const serve = async () => {
  const dist = fileURLToPath(new URL('../../dist/', import.meta.url))
  let isNewer = false
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname
    const name = path === '/' ? 'index.html' : path.slice(1)
    void readFile(join(dist, name)).then(
      (bytes) => {
        const isWorker = name === 'sw.js' && isNewer
        response.setHeader('content-type', types[extname(name)] ?? 'application/octet-stream')
        response.setHeader('cache-control', 'no-cache')
        response.end(isWorker ? `${bytes.toString('utf8')}\n// newer` : bytes)
      },
      () => response.writeHead(404).end(),
    )
  })
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening))
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('no port is free')
  return {
    origin: `http://127.0.0.1:${address.port}`,
    putUpNewer: () => {
      isNewer = true
    },
    [Symbol.asyncDispose]: () =>
      new Promise<void>((closed) => {
        server.closeAllConnections()
        server.close(() => closed())
      }),
  }
}

const hosted = test.extend<{ readonly host: Awaited<ReturnType<typeof serve>> }>({
  host: async ({ browserName: _browser }, provide) => {
    await using host = await serve()
    await provide(host)
  },
  baseURL: async ({ host }, provide) => provide(host.origin),
})

hosted(
  'a newer version waits while a drill runs, and is taken when the person says so',
  async ({ page, host }) => {
    await openDrill(page)
    await kept(page)
    host.putUpNewer()
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update())
    await repetition(page, fiveNotes.notes)
    await expect(shown(page).strokes).toHaveCount(1)
    await goTo(page, '#/')
    const reloaded = page.waitForEvent('load')
    await page.getByRole('button', { name: 'Take it now' }).click()
    await reloaded
    await expect(page.getByRole('heading', { name: 'Pieces', exact: true })).toBeVisible()
    await expect(page.getByRole('button', { name: 'Take it now' })).toHaveCount(0)
  },
)

test('it is said that all of it is kept', async ({ page }) => {
  await openDrill(page)
  await goTo(page, '#/')
  await expect(page.getByText('it works without a network')).toBeVisible()
})

test('the page can be installed: its manifest names it and its icons are there', async ({
  page,
  request,
}) => {
  await openApp(page)
  const href = await page.locator('link[rel=manifest]').getAttribute('href')
  const manifest: unknown = await (await request.get(href ?? '')).json()
  expect(manifest).toMatchObject({ name: 'Passagework', display: 'standalone', start_url: '/' })
  const icons = (manifest as { readonly icons: readonly { readonly src: string }[] }).icons
  expect(icons.length).toBeGreaterThan(1)
  for (const { src } of icons) {
    const icon = await request.get(src)
    expect([icon.status(), icon.headers()['content-type']]).toEqual([200, 'image/png'])
  }
})
