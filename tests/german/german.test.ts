import { readdir } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { german } from '@/german/german'
import { root } from '../lint/plant'

const areas = async (folder: string): Promise<string[]> =>
  (await readdir(join(root, 'src', folder))).map((name) => name.replace('.ts', ''))

/** Every word and every sentence by its path; what a function says is not called. */
const leaves = (words: unknown, path = ''): (readonly [path: string, words: unknown])[] =>
  typeof words === 'object' && words !== null
    ? Object.entries(words).flatMap(([name, value]) => leaves(value, `${path}/${name}`))
    : [[path, words]]

test('each catalogue is there in German', async () => {
  const english: string[] = []
  for (const name of await areas('text')) {
    const words: Readonly<Record<string, unknown>> = await import(`../../src/text/${name}.ts`)
    if (`${name}Text` in words) english.push(name)
  }
  expect(Object.keys(german).toSorted()).toEqual(english.toSorted())
  expect(english.length).toBeGreaterThan(0)
})

test('no word of a German catalogue is left empty, and none is English that must not be', async () => {
  for (const [name, words] of Object.entries(german)) {
    const text: Readonly<Record<string, unknown>> = await import(`../../src/text/${name}.ts`)
    const english = new Map(leaves(text[`${name}Text`]))
    for (const [path, word] of leaves(words)) {
      if (typeof word !== 'string') continue
      expect(word, `${name}${path}`).not.toBe(english.get(path) === '' ? undefined : '')
      if (/ /.test(word) && /[a-z]{3}/.test(word))
        expect(word, `${name}${path}`).not.toBe(english.get(path))
    }
  }
})
