/**
 * Damaged files of every kind are read or refused in one sentence, soon, without an exception; what
 * is read is a sound score. `npm run fuzz` tries many more than `npm test`.
 */
import fc from 'fast-check'
import { strToU8, zipSync } from 'fflate'
import { describe, expect, test } from 'vitest'
import { explainReadProblem } from '@/score/readProblem'
import { readPiece } from '@/score/readPiece'
import { readTake } from '@/score/readTake'
import { anyScore, asMusicXml } from './anyScore'
import { attributes, backup, bytesOf, partwise, piano, voice } from './musicXmlText'
import { middleC, smf, specificationExample } from './smf'
import { findUnsound } from './soundScore'

/** npm names the script that it runs, on every system. */
const thorough = process.env.npm_lifecycle_event === 'fuzz'
/** Milliseconds for one small file: thousands of times what it takes, so that a busy machine fails nothing. */
const patience = 5000
const minutes = 600_000

interface Tally {
  read: number
  refused: number
}

const tryFile = (bytes: Uint8Array, tally: Tally): void => {
  const start = performance.now()
  const piece = readPiece(bytes, 'x')
  expect(performance.now() - start).toBeLessThan(patience)
  if (piece.ok) {
    tally.read++
    expect(findUnsound(piece.value.score)).toBeUndefined()
  } else {
    tally.refused++
    expect(explainReadProblem(piece.reason)).toMatch(/^[A-Z][^\n]+\.$/)
  }
}

const byteChange = fc.record({
  at: fc.nat(),
  kind: fc.constantFrom('set', 'flip', 'delete', 'insert', 'double'),
  byte: fc.constantFrom(
    0x00,
    0x7f,
    0x80,
    0x90,
    0xf0,
    0xf7,
    0xff,
    0x2f,
    0x51,
    0x58,
    0x01,
    0x3c,
    0x26,
  ),
})
const byteChanges = fc.array(byteChange, { minLength: 1, maxLength: 6 })
type ByteChange = typeof byteChange extends fc.Arbitrary<infer T> ? T : never

const changeBytes = (whole: Uint8Array, changes: readonly ByteChange[]): Uint8Array => {
  let bytes = [...whole]
  for (const { at, kind, byte } of changes) {
    const i = at % (bytes.length || 1)
    if (kind === 'set') bytes[i] = byte
    if (kind === 'flip') bytes[i] = (bytes[i] ?? 0) ^ (1 << (at % 8))
    if (kind === 'delete') bytes.splice(i, 1 + (at % 3))
    if (kind === 'insert') bytes.splice(i, 0, byte)
    if (kind === 'double') bytes = [...bytes.slice(0, i), ...bytes.slice(i >> 1)]
  }
  return Uint8Array.from(bytes)
}

describe('a Standard MIDI File', () => {
  const wholes = [
    specificationExample.format0,
    specificationExample.format1,
    smf([`00 FF 03 05 52 69 67 68 74 ${middleC}`, `00 F0 02 01 F7 ${middleC}`, middleC]),
  ]
  const runs = thorough ? 10_000 : 2000
  test(`changed in ${runs} ways`, { timeout: minutes }, () => {
    const tally = { read: 0, refused: 0 }
    fc.assert(
      fc.property(fc.constantFrom(...wholes), byteChanges, (whole, changes) => {
        const bytes = changeBytes(whole, changes)
        tryFile(bytes, tally)
        const take = readTake(bytes)
        if (!take.ok) expect(explainReadProblem(take.reason)).not.toBe('')
      }),
      { numRuns: runs },
    )
    expect(Math.min(tally.read, tally.refused)).toBeGreaterThan(runs / 50)
  })
})

const left =
  '<barline location="left"><repeat direction="forward"/><ending number="1" type="start"/></barline>'
const right =
  '<barline location="right"><ending number="1" type="stop"/><repeat direction="backward" times="3"/></barline>'
const trill =
  '<notations><ornaments><trill-mark/></ornaments><technical><fingering>3</fingering></technical><arpeggiate/></notations>'
const rich = piano(
  `|${attributes({ staves: 2, more: '<transpose><chromatic>2</chromatic></transpose>' })}<sound tempo="90"/>${voice('G4/4', { staff: 1 })}`,
  left +
    voice('gA4 gB4 C5+E5/8~ ~C5/8', { staff: 1, marks: trill }) +
    backup(16) +
    voice('C3/16~', { staff: 2, voice: 5 }) +
    right,
  `<attributes><divisions>6</divisions><time><beats>3+2</beats><beat-type>8</beat-type></time></attributes>${voice('D5/2 E5/2 F5/2 G5/9', { divisions: 6 })}<sound dacapo="yes" fine="yes"/>`,
)
const several = partwise([
  { name: 'Voice', measures: [attributes() + voice('A4/16')] },
  {
    name: 'Piano',
    measures: [
      attributes({ staves: 2 }) +
        voice('C5/16', { staff: 1 }) +
        backup(16) +
        voice('C3/16', { staff: 2 }),
    ],
  },
])
const scores = fc.oneof(fc.constantFrom(rich, several), anyScore.map(asMusicXml))

/** Changes that leave well-formed XML: the readers of the music are to meet them, not only the XML parser. */
const wordChange = fc.record({
  at: fc.nat(),
  kind: fc.constantFrom('number', 'drop', 'double', 'move', 'rename'),
  value: fc.constantFrom(
    '0',
    '-1',
    '1',
    '3',
    '7',
    '16',
    '0.5',
    '1e9',
    '99999999999',
    '-99999999999',
    'NaN',
    'Infinity',
    '',
    ' ',
    'x',
    '__proto__',
    'constructor',
    '1000000007',
    '.0001',
    '1/2',
  ),
})
type WordChange = typeof wordChange extends fc.Arbitrary<infer T> ? T : never

const names = [
  'note',
  'chord',
  'grace',
  'backup',
  'forward',
  'measure',
  'part',
  'pitch',
  'rest',
  'attributes',
  'divisions',
  'direction',
  'sound',
  'barline',
  'constructor',
]

const changeWords = (text: string, changes: readonly WordChange[]): string => {
  let result = text
  for (const { at, kind, value } of changes) {
    const leaves = [
      ...result.matchAll(
        /<([a-z-]+)[^<>]*>[^<>]*<\/\1>|<[a-z-]+[^<>]*\/>|<(note|backup|forward|attributes|measure)\b.*?<\/\2>/gs,
      ),
    ]
    const leaf = leaves[at % (leaves.length || 1)]
    if (!leaf) continue
    const [whole] = leaf
    const from = leaf.index
    const without = result.slice(0, from) + result.slice(from + whole.length)
    if (kind === 'number')
      result =
        result.slice(0, from) +
        whole.replace(/>[^<>]*</, `>${value}<`) +
        result.slice(from + whole.length)
    if (kind === 'drop') result = without
    if (kind === 'double') result = result.slice(0, from) + whole + result.slice(from)
    if (kind === 'move') {
      const other = leaves[(at * 7) % leaves.length]?.index ?? 0
      result = other < from ? without.slice(0, other) + whole + without.slice(other) : result
    }
    if (kind === 'rename') {
      const [, name = ''] = /^<([a-z-]+)/.exec(whole) ?? []
      const other = names[at % names.length] ?? 'note'
      const renamed = whole
        .replace(`<${name}`, `<${other}`)
        .replace(new RegExp(`</${name}>$`), `</${other}>`)
      result = result.slice(0, from) + renamed + result.slice(from + whole.length)
    }
  }
  return result
}

describe('a MusicXML file', () => {
  const runs = thorough ? 10_000 : 500
  test(`whose bytes are changed in ${runs} ways`, { timeout: minutes }, () => {
    const tally = { read: 0, refused: 0 }
    fc.assert(
      fc.property(scores, byteChanges, (text, changes) =>
        tryFile(changeBytes(bytesOf(text), changes), tally),
      ),
      { numRuns: runs },
    )
    expect(tally.refused).toBeGreaterThan(runs / 10)
  })

  test(`whose elements are changed in ${runs} ways`, { timeout: minutes }, () => {
    const tally = { read: 0, refused: 0 }
    fc.assert(
      fc.property(scores, fc.array(wordChange, { minLength: 1, maxLength: 8 }), (text, changes) =>
        tryFile(bytesOf(changeWords(text, changes)), tally),
      ),
      { numRuns: runs },
    )
    expect(tally.read).toBeGreaterThan(runs / 10)
  })

  test(`that is compressed, changed in ${runs} ways`, { timeout: minutes }, () => {
    const tally = { read: 0, refused: 0 }
    const list = '<container><rootfiles><rootfile full-path="a.xml"/></rootfiles></container>'
    fc.assert(
      fc.property(fc.constantFrom(rich, several), byteChanges, (text, changes) => {
        const archive = zipSync({ 'META-INF/container.xml': strToU8(list), 'a.xml': strToU8(text) })
        tryFile(changeBytes(archive, changes), tally)
      }),
      { numRuns: runs },
    )
    expect(tally.refused).toBeGreaterThan(runs / 10)
  })
})
