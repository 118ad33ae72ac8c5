import { expect, test } from 'vitest'
import { createApp } from '@/app/app'
import type { ChosenFile } from '@/app/library'
import { nameFrom } from '@/app/studentRecords'
import type { Since } from '@/app/students'
import { eventId, sessionId } from '@/journal/ids'
import type { JournalEvent } from '@/journal/journal'
import { formatJournal } from '@/journal/lines'
import { melody, sampleOf } from '../support/atTheDesk'
import { createDesk } from '../support/fakePorts'
import { drillBegun, pieceAdded, repetition, repetitions } from '../review/session'

const fileOf = (events: readonly JournalEvent[] | string, name = 'ada.jsonl'): ChosenFile => {
  const text = typeof events === 'string' ? events : formatJournal(events)
  const bytes = new TextEncoder().encode(text)
  return { name, size: bytes.length, read: () => Promise.resolve(bytes) }
}

const filesOf = (
  events: readonly JournalEvent[] | string,
  name?: string,
): readonly ChosenFile[] => [fileOf(events, name)]

const open = async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = createApp(desk.ports)
  await app.open()
  const students = await app.lessons.openStudents()
  await students.load()
  return {
    desk,
    app,
    students,
    incoming: () => students.incoming.store.getState(),
    listed: () => students.store.getState().students,
    names: () => students.store.getState().students.map(({ name }) => name),
    send: async (events: readonly JournalEvent[], name: string) => {
      await students.incoming.look(filesOf(events, `${name}.jsonl`))
      const state = students.incoming.store.getState()
      if (state.kind !== 'preview') throw new Error(state.kind)
      await students.incoming.take(state.of ? { student: state.of } : { name: state.name })
    },
  }
}

const played = [pieceAdded('A Study'), drillBegun(1), ...repetitions('ccfb')]
/** The same practice in sessions of somebody else. */
const bens = played.map((event) => ({ ...event, session: sessionId('ben 1') }))

test('a student’s file is looked at first; taken in it stands beside one’s own record and never in it', async () => {
  const { students, incoming, listed, app, desk } = await open()
  await students.incoming.look(filesOf(played, 'ada-week_3.jsonl'))
  expect(incoming()).toMatchObject({
    kind: 'preview',
    name: 'ada week 3',
    preview: { fresh: { repetitions: 4, days: 1 }, unread: [] },
  })
  expect(listed()).toEqual([])
  await students.incoming.take({ name: '  Ada   the Example ' })
  expect(incoming()).toMatchObject({ kind: 'done', outcome: { added: 6, known: 0, taken: [] } })
  expect(listed()).toMatchObject([
    {
      name: 'Ada the Example',
      pieces: [{ title: 'A Study', days: [{ tally: { clean: 2, flawed: 1 } }] }],
    },
  ])
  const own = await desk.storage.events({ kind: 'all' })
  expect(own.ok && own.value.events).toEqual([])
  const reviewed = await app.records.all()
  expect(reviewed.ok && reviewed.value.repetitions).toBe(0)
})

test('a file with sessions of one’s own record is told of, and may be taken all the same', async () => {
  const { students, incoming, desk, names } = await open()
  for (const event of played) await desk.storage.append(event)
  const isOwn = async (events: readonly JournalEvent[]): Promise<boolean | undefined> => {
    await students.incoming.look(filesOf(events))
    const state = incoming()
    return state.kind === 'preview' ? state.isOwn : undefined
  }
  expect(await isOwn(bens.map((event) => ({ ...event, id: eventId(`ben ${event.id}`) })))).toBe(
    false,
  )
  // Somebody else's first and one's own after it.
  const begun = {
    ...pieceAdded('Another Study'),
    id: eventId('ben 0'),
    session: sessionId('ben 0'),
  }
  expect(await isOwn([begun, ...played])).toBe(true)
  await students.incoming.take({ name: 'Myself' })
  expect(names()).toEqual(['Myself'])
})

test('it is reviewed as one’s own is', async () => {
  const { students, listed, send } = await open()
  await send(played, 'ada')
  const [ada] = listed()
  const opened = ada && (await students.open(ada.id))
  if (!opened?.ok || !opened.value) throw new Error('not opened')
  expect(opened.value.student.name).toBe('ada')
  const all = await opened.value.reviews.all()
  expect(all.ok && all.value.tally).toEqual({ clean: 2, flawed: 1, brokenOff: 1 })
  const piece = all.ok && all.value.pieces[0]?.piece
  const page = piece && (await opened.value.reviews.teacherPage({ piece }))
  expect(page && page.ok && page.value.pieces).toMatchObject([
    { title: 'A Study', days: 1, tally: { clean: 2, flawed: 1, brokenOff: 1 } },
  ])
})

test('a newer file of the same student is known by its sessions and adds what is new; another student stays apart', async () => {
  const { students, incoming, listed, names, send } = await open()
  await send(played, 'ada')
  await send(bens, 'ben')
  expect(names()).toEqual(['ada', 'ben'])
  const later = repetition('c', 90)
  const [ada] = listed()
  if (!ada) throw new Error('nobody')
  await students.incoming.look(filesOf([...played, later], 'ada-new.jsonl'))
  expect(incoming()).toMatchObject({ kind: 'preview', of: ada.id })
  await students.incoming.take({ student: ada.id })
  expect(incoming()).toMatchObject({ kind: 'done', outcome: { added: 1, known: 6 } })
  expect(names()).toEqual(['ada', 'ben'])
  expect(listed().map(({ pieces }) => pieces[0]?.days[0]?.tally.clean)).toEqual([3, 2])
  // An older file once more takes nothing away.
  await send(played.slice(0, 4), 'ada-old')
  expect(listed()[0]?.pieces[0]?.days[0]?.tally.clean).toBe(3)
})

test('a bad file is refused with line and reason, and nothing is changed', async () => {
  const { students, incoming, names, send } = await open()
  await send(played, 'ada')
  await students.incoming.look(filesOf('to be or not\n', 'essay.txt'))
  expect(incoming()).toMatchObject({
    kind: 'failed',
    message: expect.stringMatching(
      /no line of it is one\. Line 1: This is not JSON.*Nothing was changed\./,
    ),
  })
  const text = formatJournal(bens).split('\n')
  text[2] = '{"v":2,"kind":"repetition"}'
  await students.incoming.look(filesOf(text.join('\n'), 'ben.jsonl'))
  expect(incoming()).toMatchObject({ kind: 'preview', preview: { unread: [{ line: 3 }] } })
  students.incoming.forget()
  expect(names()).toEqual(['ada'])
})

test('several files are looked at one after another; a bad one holds up none', async () => {
  const { students, incoming, names } = await open()
  const files = [fileOf(played, 'ada.jsonl'), fileOf('odd\n', 'odd.txt'), fileOf(bens, 'ben.jsonl')]
  await students.incoming.look(files)
  expect(incoming()).toMatchObject({ kind: 'preview', fileName: 'ada.jsonl', waiting: 2 })
  await students.incoming.take({ name: 'Ada' })
  expect(incoming()).toMatchObject({ kind: 'failed', fileName: 'odd.txt', waiting: 1 })
  students.incoming.forget()
  await expect.poll(incoming).toMatchObject({ kind: 'preview', fileName: 'ben.jsonl', waiting: 0 })
  await students.incoming.take({ name: '' })
  expect(incoming()).toMatchObject({ kind: 'done' })
  expect(names()).toEqual(['Ada', 'ben'])
})

test('a student is called otherwise, keeps the record, and can be removed', async () => {
  const { students, listed, names, send } = await open()
  await send(played, 'ada')
  await send(bens, 'ben')
  const [ada] = listed()
  if (!ada) throw new Error('nobody')
  await students.rename(ada.id, 'Zoe')
  expect(names()).toEqual(['ben', 'Zoe'])
  await students.rename(ada.id, '   ')
  expect(names()).toEqual(['ben', 'Zoe'])
  await students.remove(ada.id)
  expect(names()).toEqual(['ben'])
  expect(await students.open(ada.id)).toEqual({ ok: true, value: undefined })
})

test('what was not counted yet, or by another rule, is counted when the students are opened', async () => {
  const { students, desk, listed, send } = await open()
  await send(played, 'ada')
  const port = await desk.ports.students()
  const stored = await port.list()
  if (!stored.ok || !stored.value[0]) throw new Error('nobody is stored')
  await port.put({ ...stored.value[0], kept: { version: 1, dayRule: 'Elsewhere', pieces: [] } })
  await students.load()
  expect(listed()[0]?.pieces).toMatchObject([{ title: 'A Study' }])
})

test('the table has a row for each student and piece that was practised as far back as is asked', async () => {
  const { students, listed, send } = await open()
  await send(played, 'ada')
  // The day of the desk is 5 January 2026; those of the fixtures about New Year.
  const daysAgo = (days: number) =>
    bens.map((event) => ({ ...event, atEpochMs: event.atEpochMs - days * 86_400_000 }))
  await send(daysAgo(20), 'ben')
  const rows = (since: Since) =>
    students.rows(listed(), since).map(({ student, repetitions: n }) => `${student.name} ${n}`)
  expect(rows('all')).toEqual(['ada 4', 'ben 4'])
  expect(rows('fourWeeks')).toEqual(['ada 4', 'ben 4'])
  expect(rows('week')).toEqual(['ada 4'])
})

test.each([
  ['Ada B.jsonl', 'Ada B'],
  ['ben_miller-2026.jsonl', 'ben miller 2026'],
  ['passagework-2026-11-25.jsonl', 'Student 4'],
  ['.jsonl', 'Student 4'],
])('the file %s proposes the name %s', (file, name) => {
  expect(nameFrom(file, 4)).toBe(name)
})

test('a figure of a student’s review leads to the student’s repetitions, none of one’s own', async () => {
  const { students, app, desk, listed, send } = await open()
  await desk.storage.append(repetition('f', 500))
  await send(bens, 'Ben')
  const [ben] = listed()
  const opened = ben && (await students.open(ben.id))
  if (!opened?.ok || !opened.value) throw new Error('no record')
  const verdictsIn = async (reviews: typeof opened.value.reviews): Promise<string> => {
    const list = await reviews.repetitions({})
    const read = list.ok ? await list.value.read(0) : list
    if (!read.ok) throw new Error(read.reason)
    return read.value.days
      .flatMap(({ repetitions: of }) => of.map(({ repetition: { verdict } }) => verdict))
      .join(' ')
  }
  expect(await verdictsIn(opened.value.reviews)).toBe('brokenOff flawed clean clean')
  expect(await verdictsIn(app.records)).toBe('flawed')
})
