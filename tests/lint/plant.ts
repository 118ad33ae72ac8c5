import { execFile } from 'node:child_process'
import { cp, mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('../../', import.meta.url))

const settings = [
  '.oxlintrc.json',
  'package.json',
  'tsconfig.json',
  'vite.config.ts',
  'tests/knip.json',
  'tests/tsconfig.core.json',
]

/** Text of each file by its path from the project's root. */
export type Files = Readonly<Record<string, string>>

interface Report {
  readonly file: string
  readonly line: number
  readonly rule: string
}

/**
 * Lays the files into an empty project that has this project's settings, works there, and takes it
 * away again. Nothing of the real sources is in it.
 */
export const inPlantedProject = async <T>(
  files: Files,
  work: (directory: string) => Promise<T>,
): Promise<T> => {
  const directory = await mkdtemp(join(tmpdir(), 'planted-'))
  try {
    await mkdir(join(directory, 'tests'))
    for (const name of settings) await cp(join(root, name), join(directory, name))
    await symlink(join(root, 'node_modules'), join(directory, 'node_modules'))
    for (const [path, text] of Object.entries(files)) {
      await mkdir(dirname(join(directory, path)), { recursive: true })
      await writeFile(join(directory, path), text)
    }
    return await work(directory)
  } finally {
    await rm(directory, { recursive: true, force: true })
  }
}

/** What the linter finds in planted files, sorted by file, line and rule. */
export const lint = (files: Files): Promise<readonly Report[]> =>
  inPlantedProject(files, async (directory) => {
    const { output } = await run('oxlint', ['--type-aware', '--format=json', 'src'], directory)
    const { diagnostics, number_of_files: read } = JSON.parse(output) as Output
    if (read !== Object.keys(files).length)
      throw new Error(`the linter read ${read} of ${Object.keys(files).length} files`)
    return diagnostics
      .map((d) => ({
        file: d.filename,
        line: d.labels[0]?.span.line ?? 0,
        rule: d.code.replace(/^.*\((.*)\)$/, '$1'),
      }))
      .toSorted(
        (a, b) => a.file.localeCompare(b.file) || a.line - b.line || a.rule.localeCompare(b.rule),
      )
  })

interface Output {
  readonly number_of_files: number
  readonly diagnostics: readonly {
    readonly filename: string
    readonly code: string
    readonly labels: readonly { readonly span: { readonly line: number } }[]
  }[]
}

/** Runs a program of node_modules; its exit code and all that it printed. */
export const run = (
  program: string,
  options: readonly string[],
  directory: string,
): Promise<{ readonly code: number; readonly output: string }> =>
  new Promise((done) => {
    const path = join(root, 'node_modules/.bin', program)
    execFile(path, options, { cwd: directory, maxBuffer: 1e8 }, (error, out, err) => {
      done({ code: error ? Number(error.code) : 0, output: out + err })
    })
  })
