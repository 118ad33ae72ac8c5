import { readdir, readFile } from 'node:fs/promises'
import { join, relative } from 'node:path'
import { parseSync } from 'oxc-parser'
import { expect, test } from 'vitest'
import { root } from './plant'

/**
 * What the person reads or hears stands in `src/text`, so that it can be said in another language. The
 * command line speaks English alone; what is thrown is for developers.
 */
const elsewhere = ['text', 'german', 'cli', 'public']

/** The columns of a table for spreadsheets, the tags of a page that is sent: formats, the same in every language. */
const formats = ['journal/table.ts', 'views/teacherFile.ts']

/** Attributes that are read or heard. */
const spokenAttributes = new Set(['aria-label', 'alt', 'title', 'placeholder', 'label', 'word'])
/** Attributes and properties whose text nobody reads. */
const silent =
  /^(class(Name|es)?|data-.*|href|rel|id|key|type|d|transform|style|viewBox|points|preserveAspectRatio|role)$/

type Node = Readonly<Record<string, unknown>> & { readonly type: string; readonly start: number }
const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value && 'start' in value

const asText = (value: unknown): string => (typeof value === 'string' ? value : '')

const nameOf = (node: unknown): string =>
  isNode(node) ? asText(node['name']) || asText(node['value']) : ''

/** What a piece of a template says, its escapes undone. */
const pieceOf = ({ value }: Node): string =>
  typeof value === 'object' && value !== null && 'cooked' in value ? asText(value.cooked) : ''

/** Words of a language, not of a style sheet or a format: two in a row, or one with a capital. */
const isSaid = (text: string): boolean =>
  !isNoWord(text) &&
  (/[A-Za-z’]{2,}[,:;]? [a-z]{2,}/.test(text) || /^[A-Z][a-z]{2,}( …|\.)?$/.test(text.trim()))

/** Not followed: what names types and modules, what is thrown, what nobody reads. */
const isSilent = (node: Node): boolean => {
  if (
    /^(Import|ExportAll|TS|Throw)/.test(node.type) &&
    !/^TS(As|Satisfies|NonNull)/.test(node.type)
  )
    return true
  if (node.type === 'JSXAttribute' || node.type === 'Property') {
    const name = nameOf(node['name'] ?? node['key'])
    return silent.test(name)
  }
  if (node.type === 'BinaryExpression') return isToldByOthers(node['left'])
  if (node.type === 'CallExpression') return asksThePage.test(calledOf(node)) || isListOfNames(node)
  return node.type === 'NewExpression' && nameOf(node['callee']).endsWith('Error')
}

/** What is asked for in the language of style sheets. */
const asksThePage = /^(closest|matches|matchMedia|querySelector(All)?)$/

const calledOf = ({ callee }: Node): string =>
  isNode(callee) && callee.type === 'MemberExpression' ? nameOf(callee['property']) : ''

/** The names of a format or a notation, written as one text: `'whole half quarter'.split(' ')`. */
const isListOfNames = (node: Node): boolean =>
  calledOf(node) === 'split' &&
  isNode(node['callee']) &&
  isNode(node['callee']['object']) &&
  node['callee']['object'].type === 'Literal'

/** What the browser calls a key, or another program says, is no word of ours: `event.key === 'Enter'`. */
const isToldByOthers = (node: unknown): boolean =>
  isNode(node) &&
  (othersNames.has(nameOf(node)) ||
    (node.type === 'MemberExpression' && othersNames.has(nameOf(node['property']))))
const othersNames = new Set(['key', 'code', 'message'])

/**
 * What is looked for on a page is no word, nor is the program's name, which is the same everywhere, nor
 * are the names by which the browser keeps things for it ('passagework students'). Markup with its
 * attributes and colours of the style sheet are read by machines.
 */
const isNoWord = (text: string): boolean =>
  text === 'Passagework' ||
  /^passagework [a-z]+$/.test(text) ||
  /[a-z]="|^var\(--/.test(text) ||
  text
    .split(', ')
    .every((part) => /^(a|button|dialog|input|select|summary|textarea|)([[:]\S*)?$/.test(part))

const isSpoken = (node: Node, within: Node | undefined): boolean => {
  if (node.type === 'JSXText') {
    const text = asText(node['value'])
    return /[A-Za-z]{2,}/.test(text) && !isNoWord(text.trim())
  }
  if (node.type === 'TemplateElement') return isSaid(pieceOf(node)) && !endsName.test(pieceOf(node))
  if (node.type !== 'Literal' || typeof node['value'] !== 'string') return false
  if (within?.type === 'JSXAttribute' && spokenAttributes.has(nameOf(within['name'])))
    return /[A-Za-z]{2,}/.test(node['value'])
  return isSaid(node['value'])
}

/** `${what}Together` puts a name together. */
const endsName = /^[A-Z][a-z]+$/

/** Places in a source where something is said, as the line and the text. */
const said = (path: string, text: string): string[] => {
  const found: string[] = []
  const walk = (node: Node, within: Node | undefined): void => {
    if (isSilent(node)) return
    if (isSpoken(node, within))
      found.push(`${path}:${text.slice(0, node.start).split('\n').length}`)
    for (const value of Object.values(node))
      for (const child of Array.isArray(value) ? value : [value])
        if (isNode(child)) walk(child, node)
  }
  walk(parseSync(path, text).program as unknown as Node, undefined)
  return found
}

const sources = async (): Promise<readonly string[]> => {
  const entries = await readdir(join(root, 'src'), { recursive: true, withFileTypes: true })
  return entries
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(join(root, 'src'), join(entry.parentPath, entry.name)))
    .filter((path) => !elsewhere.includes(path.split('/')[0] ?? '') && !formats.includes(path))
    .toSorted()
}

test.each([
  ['<p>Struck twice</p>', 1],
  ['<p>{n} keys</p>', 1],
  ['<button aria-label="Close" />', 1],
  ['const a = (n: number) => `${n} bars are left.`', 1],
  [`const a = 'Nothing to do.'`, 1],
  [`const a = 'Loading'`, 1],
  ['<p className="soft credit">{drillText.go}</p>', 0],
  [`const a = 'onset'`, 0],
  ['const a = `<tie startid="${b}" endid="${c}"/>`', 0],
  [`const a = 'whole half quarter'.split(' ')`, 0],
  [`if (message === 'undefined entity') stop()`, 0],
  ['const a = `${what}Together`', 0],
  [`throw new Error('a view stands outside')`, 0],
  [`import a from './Some where'`, 0],
  ['<p>{n} · {m}</p>', 0],
  [`at.closest('input, select, textarea')`, 0],
  ['<svg preserveAspectRatio="xMinYMid meet" />', 0],
  [`if (event.key === 'Enter') go()`, 0],
  [`if (event.code !== 'Escape') go()`, 0],
  [`if (word !== 'Escape') go()`, 1],
  [`const a = 'input, select, textarea'`, 0],
  [`const a = 'a button, please'`, 1],
])('the search for words finds in %s: %i', (source, times) => {
  expect(said('planted.tsx', source)).toHaveLength(times)
})

test('what the program says stands in the catalogues', async () => {
  const found: string[] = []
  for (const path of await sources()) {
    found.push(...said(path, await readFile(join(root, 'src', path), 'utf8')))
  }
  expect(found).toEqual([])
})
