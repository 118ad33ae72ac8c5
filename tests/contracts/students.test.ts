import 'fake-indexeddb/auto'
import { beforeEach, describe, expect, test } from 'vitest'
import { sessionId, studentId } from '@/journal/ids'
import type { JournalEvent } from '@/journal/journal'
import {
  createStudentMemory,
  openStudentStorage,
  type StudentListing,
  type StudentStorage,
} from '@/storage/students'
import { repetitions } from '../review/session'

let count = 0

const listing = (id: string, name = id): StudentListing => ({
  id: studentId(id),
  name,
  fileName: `${id}.jsonl`,
  takenAtEpochMs: 5,
  sessions: [sessionId('s1')],
  kept: { any: ['thing'] },
})
const idsIn = async (students: StudentStorage, id: string): Promise<readonly string[]> => {
  const journal = await students.journal(studentId(id))
  const events = journal.ok ? await journal.value.events({ kind: 'all' }) : journal
  return events.ok ? events.value.events.map((event) => event.id) : [events.reason.kind]
}
const add = async (
  students: StudentStorage,
  id: string,
  events: readonly JournalEvent[],
): Promise<void> => {
  const journal = await students.journal(studentId(id))
  expect(journal.ok && (await journal.value.importAll(events)).ok).toBe(true)
}

/** What every storage of students keeps to, the database and the one in memory. */
describe.each([
  ['in memory', () => createStudentMemory()],
  ['in the database', () => openStudentStorage(`students ${count++}`)],
])('the records of students %s', (_, open) => {
  let students: StudentStorage
  beforeEach(() => {
    students = open()
    return () => students.close()
  })

  test('are none at first', async () => {
    expect(await students.list()).toEqual({ ok: true, value: [] })
    expect(await idsIn(students, 'ada')).toEqual([])
  })

  test('are listed as they were put, the newer in place of the older', async () => {
    for (const each of [listing('ada'), listing('ben'), listing('ada', 'Ada')])
      expect(await students.put(each)).toEqual({ ok: true, value: undefined })
    const listed = await students.list()
    expect(listed.ok && listed.value.toSorted((a, b) => (a.id < b.id ? -1 : 1))).toEqual([
      listing('ada', 'Ada'),
      listing('ben'),
    ])
  })

  test('stay apart, and a removed one is gone with its record alone', async () => {
    const [first, second] = [repetitions('cc'), repetitions('cfb')]
    await students.put(listing('ada'))
    await students.put(listing('ben'))
    await add(students, 'ada', first)
    await add(students, 'ben', second)
    expect(await idsIn(students, 'ada')).toEqual(first.map(({ id }) => id))
    expect(await students.remove(studentId('ada'))).toEqual({ ok: true, value: undefined })
    const listed = await students.list()
    expect(listed.ok && listed.value.map(({ id }) => id)).toEqual(['ben'])
    expect(await idsIn(students, 'ada')).toEqual([])
    expect(await idsIn(students, 'ben')).toEqual(second.map(({ id }) => id))
    expect(await students.remove(studentId('nobody'))).toEqual({ ok: true, value: undefined })
  })
})

test('what was put is there when the program is opened again', async () => {
  const before = openStudentStorage('kept students')
  await before.put(listing('ada'))
  await add(before, 'ada', repetitions('cc'))
  before.close()
  const after = openStudentStorage('kept students')
  expect(await after.list()).toEqual({ ok: true, value: [listing('ada')] })
  expect((await idsIn(after, 'ada')).length).toBe(2)
  after.close()
})

test('without a database each question is answered with the reason', async () => {
  const { indexedDB } = globalThis
  Object.defineProperty(globalThis, 'indexedDB', { value: undefined, configurable: true })
  const students = openStudentStorage('nowhere')
  const answers = [await students.list(), await students.put(listing('ada'))]
  Object.defineProperty(globalThis, 'indexedDB', { value: indexedDB, configurable: true })
  expect(answers.map(({ ok }) => ok)).toEqual([false, false])
})
