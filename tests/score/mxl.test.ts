/** Archives made by fflate; facts on them from MusicXML 4.0, “Compressed MXL files”, and APPNOTE 6.3.10. */
import { constants, deflateRawSync } from 'node:zlib'
import { strToU8, zipSync, type Zippable } from 'fflate'
import { describe, expect, test } from 'vitest'
import { readPiece } from '@/score/readPiece'
import { explainReadProblem } from '@/score/readProblem'
import { attributes, declaration, piano, voice } from './musicXmlText'
import { middleC, smf } from './smf'
import { explainWarning } from '@/score/warning'

const score = piano(attributes() + voice('C4/16'))
const container = (...paths: readonly string[]): string =>
  `${declaration}<container><rootfiles>${paths.map((path) => `<rootfile full-path="${path}"/>`).join('')}</rootfiles></container>`

const zip = (files: Zippable): Uint8Array => zipSync(files)
const mxl = (path: string, content: string | Uint8Array, more: Zippable = {}): Uint8Array =>
  zip({
    mimetype: [strToU8('application/vnd.recordare.musicxml'), { level: 0 }],
    'META-INF/container.xml': strToU8(container(path)),
    [path]: typeof content === 'string' ? strToU8(content) : content,
    ...more,
  })

const outcome = (bytes: Uint8Array): string => {
  const piece = readPiece(bytes, 'piece.mxl')
  if (!piece.ok) return explainReadProblem(piece.reason)
  return [
    piece.value.score.notes.map((n) => n.key).join(' '),
    ...piece.value.warnings.map(explainWarning),
  ].join('; ')
}

/** The archive with the 32-bit number that stands at an offset of each file's entry in the directory changed. */
const tampered = (bytes: Uint8Array, offset: number, value: number): Uint8Array => {
  const copy = bytes.slice()
  const view = new DataView(copy.buffer)
  for (let at = 0; at + 46 < copy.length; at++)
    if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + offset, value, true)
  return copy
}
const packedAt = 20
const sizeAt = 24

describe('a compressed score', () => {
  test('is the root file that the container names, packed or stored', () => {
    expect(outcome(mxl('score.xml', score))).toBe('60')
    expect(outcome(mxl('music/the score.musicxml', score))).toBe('60')
    const stored = zipSync(
      { 'META-INF/container.xml': strToU8(container('a.xml')), 'a.xml': strToU8(score) },
      { level: 0 },
    )
    expect(outcome(stored)).toBe('60')
  })
  test('is the first root file of MusicXML, whatever else the container names', () => {
    const list = container('cover.pdf', 'a.xml', 'b.xml').replace(
      'full-path="cover.pdf"',
      'full-path="cover.pdf" media-type="application/pdf"',
    )
    const two = { 'a.xml': strToU8(score), 'b.xml': strToU8(score.replace('>C<', '>D<')) }
    expect(outcome(zip({ 'META-INF/container.xml': strToU8(list), ...two }))).toBe('60')
  })
  test('is found without a container when it is the only one, with a warning', () => {
    const alone = { 'a.xml': strToU8(score), '__MACOSX/a.xml': strToU8('x'), 'a.png': strToU8('x') }
    expect(outcome(zip(alone))).toBe(
      '60; The archive has no list of its contents; “a.xml” was taken as the score.',
    )
  })
  test('is known by its content, whatever the name; so are a plain score and a MIDI file', () => {
    for (const name of ['a.mid', 'a.xml', 'a.mxl', 'a.musicxml', 'a'])
      for (const bytes of [mxl('score.xml', score), strToU8(score), smf([middleC])])
        expect(readPiece(bytes, name).ok).toBe(true)
  })
})

describe('an archive that cannot be opened gets one sentence', () => {
  const whole = mxl('score.xml', score)
  const bad = 'The compressed file cannot be opened: '
  const again = '; export the piece again as .mxl or .musicxml.'
  const large = 40 * 1024 * 1024
  test.each<[string, Uint8Array, string]>([
    ['cut short', whole.slice(0, -30), `${bad}its list of contents is missing${again}`],
    ['a few bytes only', whole.slice(0, 6), `${bad}its list of contents is missing${again}`],
    [
      'without a score',
      zip({ 'word/document.xml.rels': strToU8('x') }),
      'The compressed file holds no MusicXML score: export the piece as .mxl or .musicxml and choose that.',
    ],
    [
      'with two scores and no container',
      zip({ 'a.xml': strToU8(score), 'b.xml': strToU8(score) }),
      'The compressed file holds 2 scores and does not say which is meant: unpack it and choose one of them.',
    ],
    [
      'whose container names a file that is not there',
      zip({ 'META-INF/container.xml': strToU8(container('b.xml')), 'a.xml': strToU8(score) }),
      `${bad}the score “b.xml” that it names is not in it${again}`,
    ],
    [
      'whose container names nothing',
      zip({ 'META-INF/container.xml': strToU8(container()), 'a.xml': strToU8(score) }),
      `${bad}its list of contents names no score${again}`,
    ],
    [
      'whose container is broken',
      zip({ 'META-INF/container.xml': strToU8('<container>'), 'a.xml': strToU8(score) }),
      `${bad}its list of contents (META-INF/container.xml) is damaged${again}`,
    ],
    [
      'with a MIDI file in it',
      mxl('a.mid', smf([middleC])),
      `${bad}what it names as its score is no XML${again}`,
    ],
    ...['../../etc/score.xml', '/score.xml', 'C:\\score.xml', 'a/../../b.xml'].map(
      (path): [string, Uint8Array, string] => [
        `that points outside of itself (${path})`,
        mxl(path, score),
        `${bad}the score that it names lies outside of it${again}`,
      ],
    ),
    [
      'of thousands of files',
      zip(Object.fromEntries(Array.from({ length: 2001 }, (_, i) => [`${i}`, new Uint8Array()]))),
      `${bad}it holds 2001 files, and at most 2000 are looked at${again}`,
    ],
    [
      'that says it becomes 40 MB',
      tampered(whole, sizeAt, large),
      'The compressed file would become 40 MB when opened, more than a score of its size or of any size can hold (at most 32 MB): export the piece alone.',
    ],
    [
      'that packs better than notation can',
      mxl('score.xml', score, { 'META-INF/container.xml': new Uint8Array(3_000_000) }),
      'The compressed file would become 3 MB when opened, more than a score of its size or of any size can hold (at most 32 MB): export the piece alone.',
    ],
    [
      'that becomes more than it says',
      tampered(whole, sizeAt, 100),
      `${bad}“META-INF/container.xml” in it is damaged${again}`,
    ],
    [
      'that becomes less than it says',
      tampered(whole, sizeAt, 1000),
      `${bad}“META-INF/container.xml” in it is damaged${again}`,
    ],
    [
      'that says it is longer packed than the file',
      tampered(whole, packedAt, 0x7fffffff),
      `${bad}“META-INF/container.xml” in it is cut short${again}`,
    ],
  ])('%s', (_, bytes, sentence) => {
    expect(outcome(bytes)).toBe(sentence)
  })

  test('locked by a password, or packed in another way', () => {
    const flagged = tampered(whole, 8, 1 | (8 << 16))
    expect(outcome(flagged)).toBe(
      `${bad}“META-INF/container.xml” in it is locked by a password${again}`,
    )
    const other = tampered(whole, 8, 12 << 16)
    expect(outcome(other)).toMatch(/packed in an unusual way \(method 12\)/)
  })

  test('with a changed byte in the score: the checksum tells', () => {
    const stored = zipSync(
      { 'META-INF/container.xml': strToU8(container('a.xml')), 'a.xml': strToU8(score) },
      { level: 0 },
    )
    const at = new TextDecoder('latin1').decode(stored).indexOf('<step>C') + 6
    stored[at] = 'D'.charCodeAt(0)
    expect(outcome(stored)).toBe(`${bad}“a.xml” in it is damaged${again}`)
  })

  test('that would grow to gigabytes is stopped before it does', () => {
    const block = deflateRawSync(new Uint8Array(1 << 20), { finishFlush: constants.Z_FULL_FLUSH })
    const packed = new Uint8Array(block.length * 4000)
    for (let i = 0; i < 4000; i++) packed.set(block, i * block.length)
    const stored = zipSync({ 'a.xml': packed }, { level: 0 })
    const bomb = tampered(tampered(stored, 8, 8 << 16), sizeAt, 90_000)
    const start = performance.now()
    expect(outcome(bomb)).toBe(`${bad}“a.xml” in it is damaged${again}`)
    expect(performance.now() - start).toBeLessThan(3000)
  })
})
