import { chromium, type Browser, type Page } from '@playwright/test'
import { spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { createInterface } from 'node:readline'
import { findBrowser } from '../../support/browser'

/** A browser with a profile on the disk, which a test can kill as a power cut or a crash would. */
export interface OwnBrowser {
  readonly page: Page
  /** SIGKILL to all its processes at once: none of them can write anything more. */
  readonly kill: () => Promise<void>
}

export const startOwnBrowser = async (profile: string): Promise<OwnBrowser> => {
  const { executablePath, args, env } = await findBrowser()
  const own = ['--headless', '--remote-debugging-port=0', `--user-data-dir=${profile}`]
  const process_ = spawn(executablePath, [...args, ...own, 'about:blank'], {
    // A group of its own, so that what it starts dies with it.
    detached: true,
    env: { ...process.env, ...env },
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  const exited = once(process_, 'exit')
  const browser = await connect(process_)
  const [context] = browser.contexts()
  if (!context) throw new Error('the browser has no context')
  return {
    page: await context.newPage(),
    kill: async () => {
      if (process_.pid !== undefined && process_.exitCode === null)
        process.kill(-process_.pid, 'SIGKILL')
      await exited
    },
  }
}

/** The browser says on its error output where it listens. */
const connect = async ({ stderr }: ChildProcess): Promise<Browser> => {
  if (!stderr) throw new Error('the browser has no error output')
  for await (const line of createInterface({ input: stderr })) {
    const [, address] = /DevTools listening on (ws:\S+)/.exec(line) ?? []
    if (address !== undefined) {
      stderr.resume()
      return chromium.connectOverCDP(address)
    }
  }
  throw new Error('the browser ended before it listened')
}
