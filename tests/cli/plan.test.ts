import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { plan } from '@/cli/plan'
import type { JournalEvent } from '@/journal/journal'
import { formatJournal } from '@/journal/lines'
import { decided, drillBegun, pieceAdded, repetition, secure } from '../review/session'

const folder = mkdtempSync(join(tmpdir(), 'passagework-'))
afterAll(() => rmSync(folder, { recursive: true }))

const write = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
const noon = 43_200
const journal = write(
  'a.jsonl',
  `${formatJournal([
    pieceAdded('Morning Steps'),
    drillBegun(noon - 1),
    ...[0, 10, 20, 30, 40].map((s) => repetition('c', noon + s, { rung: 120 })),
    secure(noon + 41),
  ])}{"v":99}\n`,
)
const empty = write('empty.jsonl', '')
const mill = 'sample-midi/morning-at-the-mill.mid'
const ferry = 'sample-midi/ferry-at-dusk.mid'

const run = (options: Readonly<Record<string, string>>) => {
  const answer = plan(new Map(Object.entries({ zone: 'UTC', ...options })))
  return answer.ok
    ? { ...answer.value, error: '' }
    : { error: answer.reason, json: {}, text: () => answer.reason }
}

interface Told {
  readonly items: readonly {
    readonly kind: string
    readonly minutes: number
    readonly title?: string
  }[]
  readonly pieces: readonly {
    readonly weeks: { readonly low: number; readonly high: number }
    readonly places: readonly {
      readonly kind: string
      readonly state: string
      readonly difficulty: number
    }[]
  }[]
  readonly minutes: number
}

describe('plan --journal --minutes --day', () => {
  test('without a record the pieces are laid out, and the minutes are filled', () => {
    const told = run({
      journal: empty,
      minutes: '45',
      day: '2026-01-02',
      piece: `${mill},${ferry}`,
    }).json as Told
    expect(told.minutes).toBeGreaterThan(40.5)
    expect(told.minutes).toBeLessThan(49.5)
    expect(told.items[0]?.kind).toBe('warmUp')
    expect(told.items.map(({ kind }) => kind)).toContain('rest')
    expect(new Set(told.items.map(({ title }) => title)).size).toBe(3)
    expect(told.pieces).toHaveLength(2)
    for (const { weeks, places } of told.pieces) {
      expect(weeks.low).toBeLessThan(weeks.high)
      expect(new Set(places.map(({ state }) => state))).toEqual(new Set(['untouched']))
    }
  })

  test('stretches are harder for a small hand than for a large one', () => {
    const hardest = (span: string): number => {
      const wishes = { journal: empty, minutes: '45', day: '2026-01-02', span }
      const told = run({ ...wishes, piece: 'sample-midi/clogs-on-the-stairs.mid' }).json as Told
      return Math.max(...(told.pieces[0]?.places.map(({ difficulty }) => difficulty) ?? []))
    }
    expect(hardest('small')).toBeGreaterThan(hardest('large'))
  })

  test('without the file of the piece, what the journal tells is checked when it is due', () => {
    expect(run({ journal, minutes: '20', day: '2026-01-02' }).json).toMatchObject({
      items: [
        {
          kind: 'coldCheck',
          chunk: 'a',
          startTempo: 120,
          place: { fromBar: 1, toBar: 1, hand: 'right' },
          reason: 'Secure yesterday: once through, cold, to see whether it is kept.',
        },
      ],
      unread: [{ line: 9 }],
    })
  })

  test('on the day itself nothing is due yet; what was played later is not known', () => {
    const kinds = (day: string) =>
      (run({ journal, minutes: '20', day }).json as Told).items.map(({ kind }) => kind)
    expect(kinds('2026-01-01')).toEqual(['warmUp'])
    expect(kinds('2025-12-31')).toEqual([])
    expect(run({ journal, minutes: '20', day: '2025-12-31' }).text()).toContain(
      'Nothing is due and nothing is begun.',
    )
  })

  test('a piece that was laid aside is not planned until it is taken up', () => {
    const file = (...decisions: readonly JournalEvent[]): string =>
      write('b.jsonl', formatJournal([drillBegun(1), repetition('c', 2), secure(3), ...decisions]))
    const kinds = (path: string) =>
      (run({ journal: path, minutes: '20', day: '2026-01-03' }).json as Told).items
    expect(kinds(file())).toHaveLength(1)
    const aside = file(decided(4, 'laidAside'))
    expect(kinds(aside)).toEqual([])
    expect(run({ journal: aside, minutes: '20', day: '2026-01-03' }).text()).toContain('laid aside')
    expect(kinds(file(decided(4, 'laidAside'), decided(5, 'takenUp')))).toHaveLength(1)
  })

  test('prints for people: today, then each piece with its places, then what it rests on', () => {
    const lines = run({ journal: empty, minutes: '30', day: '2026-01-02', piece: mill })
      .text()
      .split('\n')
    expect(lines[0]).toBe('2026-01-02: 30 min')
    expect(lines[1]).toMatch(
      /^ {2}3 min {2}warm-up: Morning at the Mill, bar \d, right hand, at \d+\./,
    )
    expect(lines.join('\n')).toMatch(
      /Morning at the Mill: about \d+ repetitions left, \d+ to \d+ weeks/,
    )
    expect(lines.join('\n')).toContain('Nothing is kept yet')
    expect(lines.join('\n')).toContain('Estimated without a record, from:')
  })

  test.each([
    [{ journal: empty, day: '2026-01-02' }, '--minutes is missing.'],
    [{ journal: empty, day: '2026-01-02', minutes: '2' }, /^--minutes must be a number from 5/],
    [{ journal: empty, day: '2026-02-30', minutes: '30' }, /^--day must be a day such as/],
    [{ journal: empty, minutes: '30' }, '--day is missing.'],
    [{ day: '2026-01-02', minutes: '30' }, '--journal is missing.'],
    [
      { journal: empty, day: '2026-01-02', minutes: '30', piece: `${mill},nowhere.mid` },
      /^nowhere.mid: The file cannot be opened/,
    ],
    [{ journal: empty, day: '2026-01-02', minutes: '30', days: '9' }, /^--days must be/],
    [
      { journal: empty, day: '2026-01-02', minutes: '30', piece: mill, span: 'wide' },
      /^--span must be one of small, medium, large/,
    ],
    [{ journal: empty, day: '2026-01-02', minutes: '30', hand: 'left' }, /^There is no option/],
  ])('%j is refused in one line', (options, sentence) => {
    const { error } = run(options as Record<string, string>)
    expect(error).toMatch(sentence)
    expect(error).not.toContain('\n')
  })
})
