import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { inPlantedProject, root, run } from './plant'

const compileCore = (text: string): Promise<string> =>
  inPlantedProject({ 'src/judge/planted.ts': text }, async (directory) => {
    const { code, output } = await run('tsc', ['-p', 'tests/tsconfig.core.json'], directory)
    expect(code === 0, output).toBe(output === '')
    return output
  })

test('a core file that needs neither page nor machine compiles', async () => {
  expect(await compileCore('export const a = (at: number): number => Math.round(at)')).toBe('')
})

test.each([
  ['performance.now()', `Cannot find name 'performance'`],
  ['setTimeout(() => 1, 10)', `Cannot find name 'setTimeout'`],
  ['document.title', `Cannot find name 'document'`],
  ['process.argv', `Cannot find name 'process'`],
  ['console.log(1)', `Cannot find name 'console'`],
])('in the core %s does not compile', async (expression, message) => {
  expect(await compileCore(`export const a: unknown = ${expression}`)).toContain(message)
})

test.each([
  ['an enum', 'export enum A { b }', 'erasableSyntaxOnly'],
  [
    'an index used as if it were always there',
    'export const a = (b: string[]): string => b[0]',
    `'string | undefined'`,
  ],
  [
    'a type imported as a value',
    `import { Planted } from './planted'\nexport const a = (b: Planted): Planted => b\nexport interface Planted2 {}\nexport interface Planted {}`,
    '',
  ],
])('%s does not compile', async (_, text, message) => {
  const output = await compileCore(text)
  expect(output).not.toBe('')
  expect(output).toContain(message)
})

const core =
  'music score hands difficulty fingering exercises judge coach journal review plan'.split(' ')
const classes = /^\s*(?:export\s+)?(?:default\s+)?(?:abstract\s+)?class\s/m

test('the core has no classes', async () => {
  const files = await readdir(join(root, 'src'), { recursive: true })
  const sources = files.filter((f) => core.includes(f.split('/')[0] ?? '') && f.endsWith('.ts'))
  expect(sources).toContain('music/music.ts')
  const texts = await Promise.all(sources.map((f) => readFile(join(root, 'src', f), 'utf8')))
  expect(sources.filter((_, i) => classes.test(texts[i] ?? ''))).toEqual([])
  expect('\nexport abstract class A {').toMatch(classes)
})
