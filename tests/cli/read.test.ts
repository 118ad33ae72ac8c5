import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, expect, test } from 'vitest'
import { read } from '@/cli/read'
import { attributes, backup, bytesOf, piano, voice } from '../score/musicXmlText'

const root = fileURLToPath(new URL('../..', import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'passagework-'))
afterAll(() => rmSync(folder, { recursive: true }))

const swallows = 'sample-midi/swallows-under-the-eaves.mid'

const cli = (...words: string[]): string => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', 'tsx', 'src/cli/cli.ts', ...words],
    { cwd: root, encoding: 'utf8' },
  )
  expect([status, stderr]).toEqual([0, ''])
  return stdout
}

interface Printed {
  readonly notes: readonly { readonly beat: number; readonly key: number; readonly grace?: true }[]
  readonly bars: readonly { readonly number: number; readonly beat: number }[]
  readonly tempos: readonly { readonly beat: number }[]
  readonly keys: readonly { readonly beat: number }[]
}

/** What `read --json` prints of a MusicXML file. */
const readXml = (text: string): Printed => {
  const path = join(folder, 'piece.musicxml')
  writeFileSync(path, bytesOf(text))
  const answer = read(new Map([['piece', path]]))
  if (!answer.ok) throw new Error(answer.reason)
  return JSON.parse(JSON.stringify(answer.value.json)) as Printed
}

const beatsOf = (text: string): string =>
  readXml(text)
    .notes.map(({ beat, key, grace }) => `${grace ? 'g' : ''}${key}@${beat}`)
    .join(' ')

test('gives the notes of the piece in quarters, its bars, tempos and keys', () => {
  const piece = JSON.parse(cli('read', '--piece', swallows, '--json')) as Record<string, unknown[]>
  expect(Object.keys(piece)).toEqual(['title', 'notes', 'bars', 'tempos', 'keys', 'warnings'])
  expect(piece['title']).toBe('Swallows under the Eaves')
  expect(piece['notes']?.slice(0, 4)).toEqual([
    { id: 'n0k65', key: 65, beat: -1, beats: 0.5, hand: 'right', handFrom: 'file', bar: 0 },
    { id: 'n0k69', key: 69, beat: -1, beats: 0.5, hand: 'right', handFrom: 'file', bar: 0 },
    { id: 'n1_2k67', key: 67, beat: -0.5, beats: 0.5, hand: 'right', handFrom: 'file', bar: 0 },
    expect.objectContaining({ beat: -0.5, bar: 0 }),
  ])
  expect(piece['bars']?.slice(0, 2)).toEqual([
    { number: 0, beat: -1, beats: 1, time: '3/4' },
    { number: 1, beat: 0, beats: 3, time: '3/4' },
  ])
  expect(piece['keys']).toEqual([{ beat: -1, fifths: -1, mode: 'major' }])
  expect(piece['tempos']).toEqual([{ beat: -1, tempo: expect.closeTo(92, 3) as number }])
  expect(piece['warnings']).toEqual([])
})

test('tells people the same in a few lines', () => {
  expect(cli('read', '--piece', swallows)).toBe(
    'Swallows under the Eaves\nbars 0 to 16, 3/4\n177 notes: right hand 130, left hand 47\nquarter notes a minute: 92\n',
  )
})

// Bar 0 and bar 1 around the first full bar line: common practice, no source.
test.each([
  ['a full first bar begins at beat 0', ['C4/16', 'D4/16'], '60@0 62@4'],
  ['an upbeat stands before beat 0', ['|C4/4', 'D4/16'], '60@-1 62@0'],
  ['an upbeat of three eighths', ['|C4/2 D4/2 E4/2', 'F4/16'], '60@-1.5 62@-1 64@-0.5 65@0'],
  ['a short first bar that is counted as bar 1', ['C4/8', 'D4/16'], '60@-2 62@0'],
  ['short bars later move nothing', ['C4/16', 'D4/8', 'E4/8'], '60@0 62@4 64@6'],
  ['the bar line after a lone short bar is beat 0', ['C4/4 D4/4'], '60@-2 62@-1'],
] as const)('%s', (_, [first, ...rest], expected) => {
  const opening = `${first.startsWith('|') ? '|' : ''}${attributes()}${voice(first.replace('|', ''))}`
  expect(beatsOf(piano(opening, ...rest.map((line) => voice(line))))).toBe(expected)
})

test('a grace note of an upbeat stands with it and is told as one', () => {
  expect(beatsOf(piano(`|${attributes()}${voice('gB3 C4/4')}`, voice('D4/16')))).toBe(
    'g59@-1 60@-1 62@0',
  )
})

test('what a first bar lacks in one hand the other may have', () => {
  const both = `${attributes({ staves: 2 })}${voice('C5/16', { staff: 1 })}${backup(16)}${voice('C3/4', { staff: 2 })}`
  expect(beatsOf(piano(both, voice('D5/16', { staff: 1 })))).toBe('48@0 72@0 74@4')
})

test('bars, tempos and keys are counted as the notes are', () => {
  const { bars, tempos, keys } = readXml(
    piano(`|${attributes({ fifths: 2 })}${voice('C#4/4')}`, voice('D4/16'), voice('E4/16')),
  )
  expect(bars.map(({ number, beat }) => `${number}@${beat}`)).toEqual(['0@-1', '1@0', '2@4'])
  expect([tempos.map(({ beat }) => beat), keys.map(({ beat }) => beat)]).toEqual([[-1], [-1]])
})
