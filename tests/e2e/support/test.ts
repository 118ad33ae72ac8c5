import { test as base } from '@playwright/test'

export { expect } from '@playwright/test'

/** What no test may see: an error on the page, and a request to anywhere but the page's own origin. */
export const test = base.extend<{
  /** Errors that a test provokes on purpose. */
  readonly expectedErrors: readonly RegExp[]
  readonly quiet: void
}>({
  expectedErrors: [[], { option: true }],
  quiet: [
    async ({ context, baseURL, expectedErrors }, use) => {
      const seen: string[] = []
      const origin = new URL(baseURL ?? '').origin
      context.on('weberror', (error) => seen.push(`uncaught: ${error.error().stack}`))
      context.on('console', (message) => {
        if (message.type() === 'error') seen.push(`console: ${message.text()}`)
      })
      context.on('request', (request) => {
        const url = new URL(request.url())
        const isOwn = url.origin === origin || url.protocol === 'data:' || url.protocol === 'blob:'
        if (!isOwn) seen.push(`request to ${url.href}`)
      })
      await use()
      const unexpected = seen.filter((one) => !expectedErrors.some((each) => each.test(one)))
      base.expect(unexpected, 'errors and foreign requests').toEqual([])
    },
    { auto: true },
  ],
})
