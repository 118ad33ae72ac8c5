import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { createApp } from '@/app/app'
import { review } from '@/cli/review'
import type { ReviewFigures } from '@/cli/reviewFigures'
import { formatJournal } from '@/journal/lines'
import { createMemoryStorage } from '@/storage/memory'
import {
  drillBegun,
  overruled,
  pieceAdded,
  repetition,
  repetitions,
  secure,
} from '../review/session'
import { createDesk } from '../support/fakePorts'

const folder = mkdtempSync(join(tmpdir(), 'passagework-'))
afterAll(() => rmSync(folder, { recursive: true }))

const write = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
const noon = 43_200
const evening = [
  pieceAdded('Morning Steps'),
  drillBegun(noon - 1),
  ...[0, 10, 20, 30].map((s) => repetition('c', noon + s, { rung: 120 })),
  repetition('f', noon + 40, { rung: 120, flaws: ['wrong 2 D4 D#4'] }),
  secure(noon + 41),
]
const nextDay = [repetition('c', noon + 86_400, { rung: 120 })]
const journal = write('a.jsonl', `${formatJournal([...evening, ...nextDay])}{"v":99}\n`)

const run = (options: Readonly<Record<string, string>>) => {
  const answer = review(new Map(Object.entries(options)))
  return answer.ok ? answer.value : { error: answer.reason, json: {}, text: () => answer.reason }
}

describe('review --journal', () => {
  test('gives the figures of all time, of each piece and chunk, and what could not be read', () => {
    expect(run({ journal, zone: 'UTC' }).json).toMatchObject({
      tally: { clean: 5, flawed: 1, brokenOff: 0 },
      share: { value: 5 / 6 },
      days: 2,
      pieces: [
        {
          title: 'Morning Steps',
          chunks: [{ state: 'kept', days: [{ day: '2026-01-01' }, { day: '2026-01-02' }] }],
          substitutions: [{ written: 62, played: 63, times: 1 }],
          coldChecks: [{ verdict: 'clean', before: 'secure', after: 'kept', daysSince: 1 }],
        },
      ],
      unread: [{ line: 10 }],
    })
  })

  test('prints for people, the clean share first', () => {
    const [first, states, cold, , piece, ...lines] = run({ journal, zone: 'UTC' })
      .text()
      .split('\n')
    const chunk = lines.find((line) => line.startsWith('  bar 1'))
    expect(first).toBe(
      'clean 83 % (44 to 97), 0 broken off, longest streak 4, 1 min, 6 repetitions, on 2 days',
    )
    expect(states).toBe('chunks: 0 slipped, 0 secure, 1 kept, 0 practised')
    // 1 of 1, score interval of Wilson 1927 by hand: 1 / (1 + 1.96²) = 0.207.
    expect(cold).toBe('cold checks: 1 held, 0 failed, 0 broken off, held 100 % (21 to 100)')
    expect(piece).toMatch(/^Morning Steps: clean 83 %/)
    expect(chunk).toMatch(/^ {2}bar 1 \(0 to 3_2, right\): kept, clean 83 %.*tempo 120 to 120$/)
  })

  test.each([
    ['UTC', '2026-01-01'],
    // Fourteen hours ahead: noon at UTC is two at night there.
    ['Pacific/Kiritimati', '2026-01-01'],
    // Eleven hours behind: noon is one at night.
    ['Pacific/Pago_Pago', '2025-12-31'],
  ])('days begin at four in the morning in %s: %s', (zone, day) => {
    const { pieces } = run({ journal, zone }).json as { pieces: { chunks: { days: object[] }[] }[] }
    expect(pieces[0]?.chunks[0]?.days[0]).toMatchObject({ day })
  })

  test('an empty journal has nothing to say, and says so', () => {
    const empty = write('empty.jsonl', '')
    expect(run({ journal: empty }).text()).toMatch(/^nothing clean or flawed, 0 broken off/)
  })

  test.each([
    [{}, '--journal is missing.'],
    [{ journal: 'nowhere.jsonl' }, /^nowhere.jsonl: The file cannot be opened/],
    [{ journal, zone: 'Moon/Base' }, /^--zone must be the name of a time zone/],
    [{ journal, as: 'song' }, /^--as must be one of figures, table/],
    [{ journal, hand: 'left' }, /^There is no option --hand/],
  ])('%j is refused in one line', (options, sentence) => {
    const { error = '' } = run(options as Record<string, string>) as { error?: string }
    expect(error).toMatch(sentence)
    expect(error).not.toContain('\n')
  })
})

test('the figures are those on the screen, number for number', async () => {
  const storage = createMemoryStorage()
  const events = [
    ...evening,
    ...nextDay,
    overruled(noon + 50, 'raise'),
    ...[2, 3, 40].flatMap((day) =>
      [0, 10, 20].map((s) =>
        repetition(day % 2 === 0 ? 'f' : 'b', noon + day * 86_400 + s, {
          rung: 120,
          flaws: day === 2 ? ['missing 1 E4'] : [],
        }),
      ),
    ),
  ]
  for (const event of events) await storage.append(event)
  const { records } = createApp(createDesk([], storage).ports)
  const value = <T>(result: { ok: true; value: T } | { ok: false }): T => {
    if (!result.ok) throw new Error('it could not be read')
    return result.value
  }
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone
  const path = write('same.jsonl', formatJournal(events))
  const { pieces, ofChunks, unread, ...all } = run({ journal: path, zone })
    .json as ReviewFigures & {
    readonly unread: readonly object[]
  }
  expect(unread).toEqual([])
  expect(value(await records.all())).toMatchObject(all)
  expect(value(await records.chunksOfAll())).toEqual(ofChunks)
  const [piece] = pieces
  if (!piece) throw new Error('no piece')
  const { piece: id, firstDay: _first, lastDay: _last, ...figures } = piece
  expect(value(await records.piece(id))).toMatchObject(figures)
})

test('review --as table gives the repetitions as comma-separated values', () => {
  const lines = run({ journal, as: 'table', zone: 'UTC' }).text().split('\r\n')
  expect(lines).toHaveLength(1 + 6)
  expect(lines[1]).toMatch(/,2026-01-01,\d+,Morning Steps,p1,1,1,right,asWritten,120,/)
})

test('review --import tells what a file would bring', () => {
  const other = write('b.jsonl', formatJournal([...evening, ...repetitions('cf')]))
  expect(run({ journal, import: other, zone: 'UTC' }).json).toMatchObject({
    events: 10,
    known: 8,
    fresh: { events: 2, repetitions: 2 },
    unread: [],
  })
  expect(run({ journal, import: other, zone: 'UTC' }).text()).toMatch(
    /^10 events, 8 of them here already\nnew: 2 events, 2 repetitions, 1 session, 1 day/,
  )
})
