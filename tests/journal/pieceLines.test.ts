import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatBase64, parseBase64 } from '@/journal/base64'
import { decodeEvent } from '@/journal/decode'
import { parseJournal } from '@/journal/lines'
import {
  decodePieceLine,
  formatPieceLine,
  mergePieceLines,
  type PieceLine,
} from '@/journal/pieceLines'
import { anyPieceLine } from '../support/anyPieceLine'

const lines = fc.array(anyPieceLine, { maxLength: 8 })

test('any line is read back as it was written, among events and without them', () => {
  fc.assert(
    fc.property(lines, (all) => {
      const read = parseJournal(all.map(formatPieceLine).join(''))
      expect(read).toEqual({ events: [], pieces: all, unread: [] })
    }),
  )
})

describe('the union of lines', () => {
  test('is the same in any order, any number of times, and in any grouping', () => {
    fc.assert(
      fc.property(lines, lines, lines, (a, b, c) => {
        const all = mergePieceLines(a, b, c)
        expect(mergePieceLines(c, a, b)).toEqual(all)
        expect(mergePieceLines(mergePieceLines(b, a), c)).toEqual(all)
        expect(mergePieceLines(a, mergePieceLines(c, b))).toEqual(all)
        expect(mergePieceLines(all, all, a)).toEqual(all)
      }),
    )
  })

  test('holds of each piece its newest file, hands and spots, and nothing else', () => {
    fc.assert(
      fc.property(lines, (all) => {
        const held = mergePieceLines(all)
        const namesOf = (some: readonly PieceLine[]) => some.map((l) => `${l.kind} ${l.piece}`)
        expect(new Set(namesOf(held))).toEqual(new Set(namesOf(all)))
        for (const line of held)
          for (const other of all.filter((l) => l.kind === line.kind && l.piece === line.piece))
            expect(line.atEpochMs).toBeGreaterThanOrEqual(other.atEpochMs)
      }),
    )
  })
})

test('bytes come back from base64 as Node writes it, whatever they are', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 64 }), (bytes) => {
      const text = formatBase64(bytes)
      expect(text).toBe(Buffer.from(bytes).toString('base64').replace(/=+$/, ''))
      expect(Uint8Array.from(parseBase64(text) ?? [])).toEqual(bytes)
    }),
  )
})

const hands = {
  v: 4,
  kind: 'pieceHands',
  piece: 'p1',
  atEpochMs: 5,
  corrections: [{ from: '0', to: '3_2', hand: 'left' }],
}
const file = {
  v: 4,
  kind: 'pieceFile',
  piece: 'p1',
  atEpochMs: 5,
  title: 'A Study',
  fileName: 'study.mid',
  addedAtEpochMs: 5,
  bytes: 'TVRoZA',
}

test.each([
  ['a hand that is none', { ...hands, corrections: [{ from: '0', to: '1', hand: 'third' }] }],
  ['a place that is none', { ...hands, corrections: [{ from: 'x', to: '1', hand: 'left' }] }],
  ['an unknown field', { ...hands, colour: 'red' }],
  ['bytes that are no base64', { ...file, bytes: '%%' }],
  ['no piece', { ...file, piece: '' }],
  ['an earlier version', { ...file, v: 3 }],
])('a line with %s is refused, named, and the others are read', (_, odd) => {
  expect(decodePieceLine(hands).ok && decodePieceLine(file).ok).toBe(true)
  const text = [file, odd, hands].map((line) => JSON.stringify(line)).join('\n')
  const { pieces, unread } = parseJournal(text)
  expect(pieces).toHaveLength(2)
  expect(unread).toMatchObject([{ line: 2, reason: { kind: 'wrongShape' } }])
})

test('a file of more than 32 MB is refused', () => {
  const bytes = 'A'.repeat(Math.ceil((32 * 1024 * 1024 * 4) / 3) + 4)
  expect(decodePieceLine({ ...file, bytes })).toMatchObject({
    ok: false,
    reason: { kind: 'wrongShape', path: 'bytes', message: 'stands for more than 32 MB' },
  })
})

test('a line of a version to come is told as one', () => {
  expect(decodePieceLine({ ...hands, v: 9, corrections: {} })).toEqual({
    ok: false,
    reason: { kind: 'newerVersion', version: 9, known: 4 },
  })
})

describe('the frozen sample of version 4', () => {
  const frozen = readFileSync(new URL('../journals/v4.jsonl', import.meta.url), 'utf8')

  test('is read whole, and written as it stands', () => {
    const { pieces, unread } = parseJournal(frozen)
    expect(unread).toEqual([])
    expect(pieces.map(formatPieceLine).join('')).toBe(frozen)
  })

  test('a program that knows events alone names its lines as those of a newer version', () => {
    for (const line of frozen.trim().split('\n'))
      expect(decodeEvent(JSON.parse(line))).toEqual({
        ok: false,
        reason: { kind: 'newerVersion', version: 4, known: 3 },
      })
  })
})
