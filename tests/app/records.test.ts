import { describe, expect, test } from 'vitest'
import { createApp } from '@/app/app'
import type { ChosenFile } from '@/app/library'
import { formatJournal } from '@/journal/lines'
import type { JournalEvent } from '@/journal/journal'
import { createMemoryStorage } from '@/storage/memory'
import { melody, sampleOf } from '../support/atTheDesk'
import { createDesk } from '../support/fakePorts'
import { drillBegun, pieceAdded, repetition, repetitions } from '../review/session'

const fileOf = (content: string | Uint8Array, name = 'record.jsonl'): ChosenFile => {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content
  return { name, size: bytes.length, read: () => Promise.resolve(bytes) }
}

const open = async (storage = createMemoryStorage()) => {
  const desk = createDesk([sampleOf('First', melody)], storage)
  const app = createApp(desk.ports)
  await app.open()
  return { app, desk, records: app.records, state: () => app.records.import.getState() }
}

const played = [pieceAdded('A Study'), drillBegun(1), ...repetitions('ccfb')]

test('a file is looked at first, and changes nothing until it is taken', async () => {
  const { records, state, desk } = await open()
  await records.look([fileOf(formatJournal(played))])
  expect(state()).toMatchObject({
    kind: 'preview',
    preview: { events: 6, known: 0, fresh: { repetitions: 4, days: 1 }, unread: [] },
  })
  const stored = await desk.storage.events({ kind: 'all' })
  expect(stored.ok && stored.value.events).toEqual([])
  await records.take()
  expect(state()).toMatchObject({ kind: 'done', outcome: { added: 6, known: 0, taken: [] } })
  const all = await records.all()
  expect(all.ok && all.value.tally).toEqual({ clean: 2, flawed: 1, brokenOff: 1 })
})

test('taken twice, the second time brings nothing', async () => {
  const { records, state } = await open()
  for (const known of [0, 6]) {
    await records.look([fileOf(formatJournal(played))])
    expect(state()).toMatchObject({ kind: 'preview', preview: { known } })
    await records.take()
  }
  expect(state()).toMatchObject({ kind: 'done', outcome: { added: 0, known: 6 } })
})

test.each([
  ['an empty file', '', 'This file is empty.'],
  ['noise', new Uint8Array([0xff, 0xfe, 0xc0, 0x80]), 'it is no text'],
  ['another text', 'to be or not\n', 'no line of it is one. Line 1: This is not JSON'],
])('%s is refused with the reason', async (_, content, why) => {
  const { records, state } = await open()
  await records.look([fileOf(content)])
  const now = state()
  expect(now.kind).toBe('failed')
  expect(now.kind === 'failed' && now.message).toContain(why)
})

test('a file that is too large is refused unread', async () => {
  const { records, state } = await open()
  const read = () => Promise.reject(new Error('it was read'))
  await records.look([{ name: 'all.jsonl', size: 400_000_001, read }])
  expect(state()).toMatchObject({ kind: 'failed', message: expect.stringContaining('400 MB') })
})

test('lines that cannot be read are counted from the first of the file, however long it is', async () => {
  const { records, state } = await open()
  const many = Array.from({ length: 900 }, (_, i) => repetition('c', i + 1))
  const lines = formatJournal(many).split('\n')
  lines[850] = 'odd'
  await records.look([fileOf(lines.join('\n'))])
  expect(state()).toMatchObject({
    kind: 'preview',
    preview: { events: 899, unread: [{ line: 851, why: expect.stringContaining('not JSON') }] },
  })
})

test('several files at once are one preview: each event once, and odd lines with the name of their file', async () => {
  const { records, state, desk } = await open()
  const lines = formatJournal(played).trimEnd().split('\n')
  await records.look([
    fileOf(`${lines.slice(0, 4).join('\n')}\nodd`, 'january.jsonl'),
    fileOf(lines.slice(2).join('\n'), 'february.jsonl'),
  ])
  expect(state()).toMatchObject({
    kind: 'preview',
    fileName: '2 files',
    preview: { events: 6, unread: [{ of: 'january.jsonl', line: 5 }] },
  })
  await records.take()
  expect(state()).toMatchObject({ kind: 'done', outcome: { added: 6 } })
  const stored = await desk.storage.events({ kind: 'all' })
  expect(stored.ok && stored.value.events).toHaveLength(6)
  await records.look([fileOf(lines.join('\n'), 'good.jsonl'), fileOf('', 'empty.jsonl')])
  expect(state()).toMatchObject({ kind: 'failed', fileName: 'empty.jsonl' })
})

test('a file that is left, or another one chosen meanwhile, does not come back', async () => {
  const { records, state } = await open()
  const slow = records.look([fileOf(formatJournal(played), 'slow.jsonl')])
  await records.look([fileOf(formatJournal(played), 'quick.jsonl')])
  await slow
  expect(state()).toMatchObject({ kind: 'preview', fileName: 'quick.jsonl' })
  records.forget()
  await records.take()
  expect(state()).toEqual({ kind: 'none' })
})

describe('pieces', () => {
  const wholeRecord = async () => {
    const { desk, records, app } = await open()
    for (const event of played) await desk.storage.append(event)
    const piece = await app.library.add(fileOf(midi, 'study.mid'))
    if (!piece) throw new Error('the piece is not read')
    const { id } = piece.score
    await desk.storage.saveHands(id, corrections)
    await desk.storage.saveSpots(id, spots)
    await records.save()
    const [, text = ''] = [...desk.saved][0] ?? []
    return { id, text }
  }
  const { bytes: midi } = sampleOf('Study', 'E4 D4 C4 D4')
  const corrections = [{ from: '0', to: '1', hand: 'left' }]
  const spots = { said: [{ from: '0', to: '2', hand: 'left', word: 'accepted' }], order: [] }

  test('come with the record: on a new machine file, hands and words are as they were', async () => {
    const { id, text } = await wholeRecord()
    const { records, state, desk, app } = await open()
    await records.look([fileOf(text)])
    const one = { fresh: 1, newer: 0, known: 0 }
    expect(state()).toMatchObject({
      kind: 'preview',
      preview: { kept: { pieceFile: one, pieceHands: one, pieceSpots: one }, unread: [] },
    })
    expect(await desk.storage.pieces()).toEqual({ ok: true, value: [] })
    await records.take()
    expect(state()).toMatchObject({ kind: 'done', outcome: { added: 6 }, pieces: 1 })
    expect(app.library.store.getState().listed).toContainEqual(
      expect.objectContaining({ id, from: 'file', title: 'Study' }),
    )
    const stored = await desk.storage.piece(id)
    expect(stored.ok && stored.value?.bytes).toEqual(midi)
    expect(await desk.storage.hands(id)).toEqual({ ok: true, value: corrections })
    expect(await desk.storage.spots(id)).toEqual({ ok: true, value: spots })
    const opened = await app.library.open(id)
    expect(opened?.score.notes).toHaveLength(4)
    await records.look([fileOf(text)])
    expect(state()).toMatchObject({
      preview: { kept: { pieceFile: { fresh: 0, newer: 0, known: 1 } } },
    })
  })

  test('come alone where nothing was played, and one that is open shows what has come', async () => {
    const { id, text } = await wholeRecord()
    const pieces = text
      .split('\n')
      .filter((line) => line.includes('"v":4'))
      .join('\n')
    const { records, state, app } = await open()
    await app.library.add(fileOf(midi, 'study.mid'))
    expect((await app.library.open(id))?.score.title).toBe('Study')
    const renamed = pieces
      .replace(/"title":"[^"]*"/, '"title":"A better name"')
      .replace(/"atEpochMs":\d+/g, `"atEpochMs":${Date.now() + 1000}`)
    await records.look([fileOf(renamed)])
    expect(state()).toMatchObject({ preview: { kept: { pieceFile: { newer: 1, known: 0 } } } })
    await records.take()
    expect(state()).toMatchObject({ kind: 'done', outcome: { added: 0 }, pieces: 1 })
    expect((await app.library.open(id))?.score.title).toBe('A better name')
    expect(app.library.store.getState().listed.filter((each) => each.id === id)).toHaveLength(1)
  })
})

test('a record that cannot be read is told, not shown as empty', async () => {
  const storage = createMemoryStorage()
  const broken: typeof storage = {
    ...storage,
    sums: () =>
      Promise.resolve({ ok: false, reason: { kind: 'failed', message: 'disk error' } as const }),
  }
  const { records } = await open(broken)
  expect(await records.all()).toMatchObject({
    ok: false,
    reason: expect.stringContaining('disk error'),
  })
})

test('the table of repetitions has their bars, whatever part of the record tells them', async () => {
  const { records, desk } = await open()
  for (const event of played as readonly JournalEvent[]) await desk.storage.append(event)
  expect((await records.saveTable()).ok).toBe(true)
  const [name = '', table = ''] = [...desk.saved][0] ?? []
  expect(name).toMatch(/^passagework-repetitions-\d{4}-\d\d-\d\d\.csv$/)
  // RFC 4180: CR LF after each line.
  expect(table.trimEnd().split('\r\n')).toHaveLength(5)
  expect(table).toContain('A Study')
})
