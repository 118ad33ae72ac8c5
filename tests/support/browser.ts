import { chromium } from '@playwright/test'
import { execFile, execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { delimiter, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** A Chromium for the tests, and how to start it. */
export interface Browser {
  readonly executablePath: string
  readonly from: 'variable' | 'installed' | 'carried' | 'playwright'
  readonly args: readonly string[]
  readonly env: Readonly<Record<string, string>>
}

/** What the search depends on; the real machine unless a test says otherwise. */
export interface Machine {
  readonly env: Readonly<Record<string, string | undefined>>
  readonly platform: string
  readonly arch: string
  /** Folders outside the PATH where an installer puts a browser. */
  readonly usualPlaces: readonly string[]
}

/**
 * Looks in this order: the file named by PASSAGEWORK_BROWSER; an installed Chromium or Chrome; the
 * one carried by the package @sparticuz/chromium (Linux on x64); the one that Playwright installed.
 * Throws when there is none, and says how to get one.
 */
export const findBrowser = async (machine: Machine = thisMachine): Promise<Browser> => {
  const named = machine.env['PASSAGEWORK_BROWSER']
  if (named !== undefined && named !== '') {
    if (!existsSync(named))
      throw new Error(`PASSAGEWORK_BROWSER names ${named}, which is not there`)
    return { executablePath: named, from: 'variable', args, env: await environment(named) }
  }
  for (const path of installed(machine))
    if (await starts(path, {})) return { executablePath: path, from: 'installed', args, env: {} }
  if (machine.platform === 'linux' && machine.arch === 'x64') {
    const executablePath = unpackCarried()
    const env = await environment(executablePath)
    return { executablePath, from: 'carried', args, env }
  }
  const own = chromium.executablePath()
  if (existsSync(own)) return { executablePath: own, from: 'playwright', args, env: {} }
  throw new Error(
    'No Chromium found for the tests. Install Chromium or Chrome, or name one in the environment' +
      ' variable PASSAGEWORK_BROWSER, or run: npx playwright install chromium',
  )
}

/** No sandbox, since containers mostly forbid it; no calls home; no graphics card. */
const args = ['--no-sandbox', '--disable-background-networking', '--disable-gpu']

const thisMachine: Machine = {
  env: process.env,
  platform: process.platform,
  arch: process.arch,
  usualPlaces: [
    '/usr/bin',
    '/usr/local/bin',
    '/snap/bin',
    '/opt/google/chrome',
    '/Applications/Google Chrome.app/Contents/MacOS',
    '/Applications/Chromium.app/Contents/MacOS',
    ...['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) => {
      const folder = process.env[name]
      return folder === undefined ? [] : [join(folder, 'Google/Chrome/Application')]
    }),
  ],
}

const programNames: { readonly [platform: string]: readonly string[] } = {
  darwin: ['Google Chrome', 'Chromium'],
  win32: ['chrome.exe'],
}
const otherNames = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
]

const installed = (machine: Machine): string[] => {
  const folders = [...(machine.env['PATH'] ?? '').split(delimiter), ...machine.usualPlaces]
  return folders
    .filter((folder) => folder !== '')
    .flatMap((folder) => (programNames[machine.platform] ?? otherNames).map((n) => join(folder, n)))
    .filter((path) => existsSync(path))
}

/** A stub that only tells how to install a browser is no browser. On Windows the question would open a window. */
const starts = (path: string, env: Readonly<Record<string, string>>): Promise<boolean> =>
  process.platform === 'win32'
    ? Promise.resolve(true)
    : new Promise((answer) => {
        const options = { timeout: 20_000, env: { ...process.env, ...env } }
        execFile(path, ['--version', '--no-sandbox'], options, (error) => {
          answer(error === null)
        })
      })

/** Beside the carried browser lie the fonts and the shared libraries that a bare machine lacks. */
const environment = async (executablePath: string): Promise<Record<string, string>> => {
  const folder = dirname(executablePath)
  if (folder !== carriedFolder()) return {}
  const fonts = existsSync('/etc/fonts/fonts.conf')
    ? {}
    : { FONTCONFIG_PATH: join(folder, 'fonts') }
  if (await starts(executablePath, {})) return fonts
  return { ...fonts, LD_LIBRARY_PATH: join(folder, 'al2023/lib') }
}

const carriedVersion = (): string => {
  const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium')
  const text = readFileSync(join(dirname(entry), '../../package.json'), 'utf8')
  return /"version": "([^"]+)"/.exec(text)?.[1] ?? 'unknown'
}

const carriedFolder = (): string =>
  fileURLToPath(new URL(`../../node_modules/.cache/chromium-${carriedVersion()}`, import.meta.url))

/**
 * Unpacks once, beside its final place, then renames: two runs at the same time, or one cut short,
 * never leave half a browser. The package unpacks to TMPDIR, and its libraries only where it
 * believes to be on Amazon Linux, so a process of its own is told so.
 */
const unpackCarried = (): string => {
  const folder = carriedFolder()
  const executablePath = join(folder, 'chromium')
  if (existsSync(executablePath)) return executablePath
  const partial = `${folder}-${process.pid}`
  mkdirSync(partial, { recursive: true })
  const script = `import('@sparticuz/chromium').then((package_) => package_.default.executablePath())`
  execFileSync(process.execPath, ['--input-type=module', '--eval', script], {
    cwd: dirname(fileURLToPath(import.meta.url)),
    env: { ...process.env, TMPDIR: partial, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' },
  })
  try {
    renameSync(partial, folder)
  } catch (error) {
    rmSync(partial, { recursive: true, force: true })
    if (!existsSync(executablePath)) throw error
  }
  return executablePath
}
