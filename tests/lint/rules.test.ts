import { expect, test } from 'vitest'
import { lint } from './plant'

const everywhere = [
  ['no-explicit-any', 'export const a = (b: any): unknown => b'],
  ['no-non-null-assertion', 'export const a = (b?: string): string => b!'],
  ['ban-ts-comment', '// @ts-ignore\nexport const a: string = 1'],
  ['no-require-imports', `export const a: unknown = require('node:fs')`],
  ['consistent-type-imports', `export type A = import('./other').A`],
  ['eqeqeq', 'export const a = (b: unknown): boolean => b == 1'],
  ['no-floating-promises', 'export const a = (): void => { Promise.resolve(1) }'],
  ['no-misused-promises', 'export const a = (b: string[]): void => b.forEach(async () => {})'],
  [
    'switch-exhaustiveness-check',
    `export const a = (b: 'x' | 'y'): number => { switch (b) { case 'x': return 1 } return 0 }`,
  ],
  [
    'switch-exhaustiveness-check',
    `export const a = (b: 'x' | 'y'): number => { switch (b) { case 'x': return 1; default: return 0 } }`,
  ],
  ['no-unused-vars', 'const a = 1\nexport {}'],
] as const

const time =
  'Date performance setTimeout setInterval clearTimeout clearInterval queueMicrotask requestAnimationFrame'
const page =
  'window document navigator self globalThis console process fetch localStorage indexedDB crypto'
const inTheCore = [
  ...`${time} ${page}`
    .split(' ')
    .map((name) => ['no-restricted-globals', `export const a: unknown = ${name}`]),
  ['no-restricted-properties', 'export const a = Math.random()'],
  ['no-restricted-properties', 'export const { random } = Math'],
  ['max-lines', 'export const a = 1\n'.padEnd(400, '\n')],
] as const

const core =
  'music score hands difficulty fingering exercises judge coach journal review plan'.split(' ')

const rulesIn = async (path: string, text: string | undefined): Promise<string[]> => {
  const reports = await lint({ [path]: text ?? '', 'src/judge/legal.ts': legal })
  expect(reports.filter((r) => r.file === 'src/judge/legal.ts')).toEqual([])
  return reports.map((r) => r.rule)
}

/** Near to each rule, on the right side of it. */
const legal = `
export type Side = 'x' | 'y'
export const first = (list: readonly string[]): string => list[0] ?? ''
export const number = (side: Side): number => {
  switch (side) {
    case 'x':
      return Math.round(1.5)
    case 'y':
      return Math.max(1, 2)
  }
}
export const at = async (performance: { now: () => number }): Promise<number> => {
  await Promise.resolve(1)
  return performance.now()
}
`

test.each(everywhere)('%s is reported in: %s', async (rule, text) => {
  expect(await rulesIn('src/app/planted.ts', text)).toContain(rule)
})

test('what the core may not use is reported in each folder of the core, and nowhere else', async () => {
  const planted = inTheCore.map(([, text]) => text)
  const rules = inTheCore.map(([rule]) => rule)
  const files = [...core, 'app'].flatMap((folder) =>
    planted.map((text, i) => [`src/${folder}/planted${i}.ts`, text] as const),
  )
  const reports = await lint(Object.fromEntries(files))
  for (const folder of core)
    for (const [i, rule] of rules.entries()) {
      const inFile = reports.filter((r) => r.file === `src/${folder}/planted${i}.ts`)
      expect(
        inFile.map((r) => r.rule),
        `${folder}: ${planted[i]?.slice(0, 40)}`,
      ).toEqual([rule])
    }
  const inApp = reports.filter((r) => r.file.startsWith('src/app/')).map((r) => r.rule)
  expect(inApp).toEqual(['max-lines'])
}, 60_000)

test('two files that import each other are reported, also when they share only types', async () => {
  const reports = await lint({
    'src/judge/a.ts': `import { b } from './b'\nexport const a = (): number => b()`,
    'src/judge/b.ts': `import { a } from './a'\nexport const b = (): number => a()`,
    'src/coach/c.ts': `import type { D } from './d'\nexport type C = D | 1`,
    'src/coach/d.ts': `import type { C } from './c'\nexport type D = C | 2`,
    'src/hands/e.ts': `import type { F } from '@/music/f'\nexport type E = F`,
    'src/music/f.ts': `export type F = 1`,
  })
  const cycles = reports.filter((r) => r.rule === 'no-cycle').map((r) => r.file)
  expect(cycles).toEqual(['src/coach/c.ts', 'src/coach/d.ts', 'src/judge/a.ts', 'src/judge/b.ts'])
})

test('a cycle through the short name of a folder is reported', async () => {
  const reports = await lint({
    'src/app/a.ts': `import { b } from '@/judge/b'\nexport const a = (): number => b()`,
    'src/judge/b.ts': `import { a } from '@/app/a'\nexport const b = (): number => a()`,
  })
  expect(reports.filter((r) => r.rule === 'no-cycle').map((r) => r.file)).toEqual([
    'src/app/a.ts',
    'src/judge/b.ts',
  ])
})

test('hooks of React outside the rules are reported', async () => {
  const text = `import { useState, useEffect } from 'react'
export const Part = ({ on, n }: { readonly on: boolean; readonly n: number }): unknown => {
  if (on) useState(1)
  useEffect(() => { document.title = String(n) }, [])
  return undefined
}`
  expect(await rulesIn('src/views/Part.tsx', text)).toEqual(['rules-of-hooks', 'exhaustive-deps'])
})
