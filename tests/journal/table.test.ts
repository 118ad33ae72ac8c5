import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dayAt } from '@/journal/day'
import { formatRepetitionTable, formatTable } from '@/journal/table'
import { drillBegun, pieceAdded, repetition, repetitions } from '../review/session'

const dayOf = (epochMs: number) => dayAt(epochMs, 0)

/** A reader of RFC 4180, so that what is written is read by rules of its own. */
const readTable = (text: string): string[][] => {
  const rows: string[][] = [[]]
  const field = /("(?:[^"]|"")*"|[^",\r\n]*)(,|\r\n)/gy
  for (let found = field.exec(text); found; found = field.exec(text)) {
    const [, content = '', end] = found
    const plain = content.startsWith('"') ? content.slice(1, -1).replaceAll('""', '"') : content
    rows.at(-1)?.push(plain)
    if (end === '\r\n') rows.push([])
  }
  return rows.slice(0, -1)
}

describe('comma-separated values', () => {
  // The examples of RFC 4180, section 2: rules 1, 3, 6 and 7.
  test.each([
    [
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
    ],
    [
      [
        ['field_name', 'field_name'],
        ['aaa', 'bbb'],
      ],
      'field_name,field_name\r\naaa,bbb\r\n',
    ],
    [[['aaa', 'b\r\nbb', 'ccc']], 'aaa,"b\r\nbb",ccc\r\n'],
    [[['aaa', 'b"bb', 'ccc']], 'aaa,"b""bb",ccc\r\n'],
    [[['a,b', '', '"']], '"a,b",,""""\r\n'],
  ])('%j', (rows, text) => {
    expect(formatTable(rows)).toBe(text)
  })

  test('any fields are read back', () => {
    const field = fc.string({ unit: fc.constantFrom('a', ',', '"', '\r', '\n', ' ', 'é') })
    const rows = fc.array(fc.array(field, { minLength: 1, maxLength: 4 }), { maxLength: 5 })
    fc.assert(
      fc.property(rows, (table) => {
        expect(readTable(formatTable(table))).toEqual(table)
      }),
    )
  })
})

describe('the table of repetitions', () => {
  const events = [
    ...repetitions('cf').toReversed(),
    repetition('f', 90, { flaws: ['wrong 2 D4 D#4', 'hesitation 3 E4'] }),
    drillBegun(1),
    pieceAdded('Steps, "slow"'),
  ]
  const [names = [], ...rows] = readTable(formatRepetitionTable(events, dayOf))
  const column = (name: string) => rows.map((row) => row[names.indexOf(name)])

  test('has a row for each, in the order of time', () => {
    expect(column('verdict')).toEqual(['clean', 'flawed', 'flawed'])
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([names.length]))
  })

  test('has title, place, tempo and flaws in words', () => {
    expect(column('title')[0]).toBe('Steps, "slow"')
    expect(column('hand')[0]).toBe('right')
    expect(column('tempo asked')[0]).toBe('72')
    expect(column('flaws')).toEqual(['', '', 'wrong at 3; hesitation at 4'])
    expect(column('day')[0]).toBe('2025-12-31')
  })

  test.each(['=1+1', '+1', '-1', '@x', '\t=1'])(
    'a title that a spreadsheet would run as a formula is text: %j',
    (title) => {
      const [, row] = readTable(
        formatRepetitionTable([pieceAdded(title), ...repetitions('c')], dayOf),
      )
      expect(row?.[names.indexOf('title')]).toBe(`'${title}`)
    },
  )
})
