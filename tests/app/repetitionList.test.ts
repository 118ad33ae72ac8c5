import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatAsked, parseAsked } from '@/app/askedRoute'
import type { RepetitionList } from '@/app/repetitionList'
import type { Reviews } from '@/app/reviews'
import { dayAt, type Day } from '@/journal/day'
import type { RepetitionRecorded } from '@/journal/journal'
import { recordedFlawKinds, recordedOverrules, recordedVerdicts } from '@/journal/words'
import { chunkId, key, noteId, pieceId, tempo } from '@/music/units'
import type { Asked } from '@/review/asked'
import { chunkStateNames } from '@/review/chunkStates'
import type { Listed } from '@/review/repetitions'
import { createMemoryStorage } from '@/storage/memory'
import { createApp } from '@/app/app'
import { melody, play, sampleOf, sitDown } from '../support/atTheDesk'
import { createDesk } from '../support/fakePorts'
import { repetition } from '../review/session'

const value = <T>(result: { ok: true; value: T } | { ok: false; reason: string }): T => {
  if (!result.ok) throw new Error(result.reason)
  return result.value
}

describe('what is asked for in the address', () => {
  const day: fc.Arbitrary<Day> = fc.integer({ min: 0, max: 4e12 }).map((at) => dayAt(at, 0))
  const anyKey = fc.integer({ min: 0, max: 127 }).map(key)
  const text = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 })
  const asked: fc.Arbitrary<Asked> = fc.record(
    {
      session: fc.constant(true as const),
      piece: text.map(pieceId),
      chunk: text.map(chunkId),
      from: day,
      to: day,
      verdict: fc.constantFrom(...recordedVerdicts),
      ended: fc.constant(true as const),
      rung: fc.double({ min: 20, max: 400, noNaN: true }).map(tempo),
      flaw: fc.constantFrom(...recordedFlawKinds),
      note: text.map(noteId),
      until: text.map(noteId),
      bar: fc.nat(9_999),
      written: anyKey,
      played: anyKey,
      cold: fc.constant(true as const),
      state: fc.constantFrom(...chunkStateNames),
      streak: fc.constant(true as const),
      overruled: fc.constantFrom(...recordedOverrules),
    },
    { requiredKeys: [] },
  )

  test('is read back as it was written, whatever the names hold', () => {
    fc.assert(
      fc.property(asked, (each) => {
        expect(parseAsked(formatAsked(each).split('/'))).toEqual(each)
      }),
    )
  })

  test.each([
    ['', {}],
    ['verdict=perfect/flaw=wrong', { flaw: 'wrong' }],
    ['bar=-1/streak=yes', {}],
    ['written=400/played=-1/from=2026-02-30/cold=no', {}],
    ['piece=%E0%A4%A/=/==', {}],
    ['rung=-4/state=perfect/ended=1', {}],
  ])('%s says %j', (address, is) => {
    expect(parseAsked(address.split('/'))).toEqual(is)
  })
})

describe('the list', () => {
  const daySeconds = 86_400
  const noon = 43_200
  const practised = async (days: number, perDay: number) => {
    const storage = createMemoryStorage()
    for (let day = 0; day < days; day++)
      for (let i = 0; i < perDay; i++)
        await storage.append(repetition(i % 3 === 2 ? 'f' : 'c', day * daySeconds + noon + i * 10))
    const read: string[] = []
    const watched: typeof storage = {
      ...storage,
      events: (query) => {
        read.push(query.kind)
        return storage.events(query)
      },
    }
    const app = createApp(createDesk([sampleOf('First', melody)], watched).ports)
    await app.open()
    read.length = 0
    return { records: app.records, read }
  }
  const open = async ({ repetitions }: Reviews, asked: Asked): Promise<RepetitionList> =>
    value(await repetitions(asked))

  test('reads so many days as fill a page, then the next ones, and no day twice', async () => {
    const { records, read } = await practised(6, 30)
    const list = await open(records, {})
    expect(read).toEqual([])
    const first = value(await list.read(0))
    expect(first.days.map(({ day }) => day)).toEqual(['2026-01-06', '2026-01-05'])
    expect(read).toEqual(['time', 'time'])
    const second = value(await list.read(first.next))
    expect(second.days.map(({ day }) => day)).toEqual(['2026-01-04', '2026-01-03'])
    const last = value(await list.read(second.next))
    expect(last.next).toBe(list.days.length)
    const all = [first, second, last].flatMap(({ days }) => days)
    expect(all.flatMap(({ repetitions }) => repetitions)).toHaveLength(180)
  })

  test('of one day reads that day alone', async () => {
    const { records, read } = await practised(6, 3)
    const day = dayAt(Date.UTC(2026, 0, 3, 12), 0)
    const list = await open(records, { from: day, to: day, verdict: 'flawed' })
    expect(list.days).toEqual([day])
    expect(value(await list.read(0)).days[0]?.repetitions).toHaveLength(1)
    expect(read).toEqual(['time'])
  })

  test('of nothing there is says so without reading', async () => {
    const { records, read } = await practised(2, 2)
    const list = await open(records, { verdict: 'brokenOff' })
    expect(list.days).toEqual([])
    expect(value(await list.read(0))).toEqual({ days: [], next: 0 })
    expect(read).toEqual([])
  })
})

describe('one repetition of a sitting', () => {
  const sitting = async () => {
    const desk = createDesk([sampleOf('First', melody)])
    const app = await sitDown(desk)
    for (const notes of ['C4 D4 E4 F4', 'C4 D4 F#4 F4', 'C4 D4 E4 F4']) await play(desk, notes)
    const list = value(await app.records.repetitions({ session: true }))
    const [day] = value(await list.read(0)).days
    const [last, middle] = day?.repetitions ?? []
    if (!last || !middle) throw new Error('nothing was listed')
    return { app, desk, list, last, middle }
  }

  test('is listed while it lasts, as the record has it', async () => {
    const { app, last, middle } = await sitting()
    expect([middle, last].map(({ repetition: { verdict } }) => verdict)).toEqual([
      'flawed',
      'clean',
    ])
    const stored = value(await app.records.repetitions({ verdict: 'flawed' }))
    const [day] = value(await stored.read(0)).days
    expect(day?.repetitions.map(({ repetition: { id } }) => id)).toEqual([middle.repetition.id])
  })

  test('is seen on the notation with the marks that it had, the right ones too', async () => {
    const { app, middle } = await sitting()
    const { sheet, marks, take } = await app.records.see(middle)
    expect(sheet?.chunk.onsets).toHaveLength(4)
    expect(marks.map(({ kind, onset }) => `${kind} ${onset}`)).toEqual([
      'right 0',
      'right 1',
      'wrong 2',
      'right 3',
    ])
    expect(take?.events.filter(({ kind }) => kind === 'down')).toHaveLength(4)
  })

  test('where the judge would say otherwise today, the marks are those of the record', async () => {
    const { app, middle } = await sitting()
    const { repetition: recorded, drill } = middle
    const [flaw] = recorded.flaws
    const other: RepetitionRecorded = {
      ...recorded,
      flaws: flaw ? [flaw, { kind: 'hesitation', onset: 1, ms: 400 }] : [],
    }
    const marks = async (of: Pick<Listed, 'repetition' | 'drill'>) =>
      (await app.records.see(of)).marks.map(({ kind, onset }) => `${kind} ${onset}`)
    const withDrill = drill ? { drill } : {}
    expect(await marks({ repetition: other, ...withDrill })).toEqual(['wrong 2', 'hesitation 1'])
    expect(await marks({ repetition: { ...other, take: '' }, ...withDrill })).toEqual([
      'wrong 2',
      'hesitation 1',
    ])
    // Without its drill nobody knows where it stands.
    expect((await app.records.see({ repetition: recorded })).sheet).toBeUndefined()
  })
})
