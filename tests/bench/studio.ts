import { deserialize, serialize } from 'node:v8'
import { createLibrary } from '@/app/library'
import { createStudents } from '@/app/students'
import { ok } from '@/music/result'
import { localDays } from '@/storage/days'
import type { StudentListing, StudentStorage } from '@/storage/students'
import { sortRows } from '@/views/studioRows'
import { studentsPort } from '../../src/studentsPort'
import { createDesk } from '../support/fakePorts'
import { studentCount, studentListing, studentYear } from '../support/studio'
import type { Measure } from './measure'

const end = Date.UTC(2026, 0, 5, 18)

/**
 * A studio of thirty students with a year each: the table of all from what is kept. In place of the
 * database stands the structured clone of Node; who asks for a student's record fails, since the table
 * must not need it.
 */
export const benchStudio = async (): Promise<readonly Measure[]> => {
  const stored = Array.from({ length: studentCount }, (_, student) =>
    serialize(studentListing(student, end, localDays().name)),
  )
  const storage: StudentStorage = {
    list: () => Promise.resolve(ok(stored.map((each) => deserialize(each) as StudentListing))),
    put: () => Promise.reject(new Error('the table writes')),
    remove: () => Promise.reject(new Error('the table removes')),
    journal: () => Promise.reject(new Error('the table reads a record')),
    close: () => undefined,
  }
  const desk = createDesk([])
  const ports = { ...desk.ports, students: () => Promise.resolve(studentsPort(storage)) }
  const library = createLibrary(ports)
  const openTable = async (): Promise<number> => {
    const studio = await createStudents(ports, library)
    await studio.load()
    const { students } = studio.store.getState()
    const rows = (['all', 'fourWeeks', 'week'] as const).map((since) =>
      sortRows(studio.rows(students, since), { by: 'share', down: false }, ({ piece }) => piece),
    )
    const counted = rows[0]?.reduce((n, { repetitions }) => n + repetitions, 0)
    if (counted !== repetitions) throw new Error(`${counted} of ${repetitions}`)
    return rows[0]?.length ?? 0
  }
  const repetitions = studentCount * studentYear(0, end).filter(isRepetition).length
  let best = Infinity
  for (let run = 0; run < 5; run++) {
    const before = performance.now()
    if ((await openTable()) < studentCount) throw new Error('each student has a piece')
    best = Math.min(best, performance.now() - before)
  }
  const bytes = stored.reduce((sum, each) => sum + each.length, 0)
  return [
    {
      name: `studio of ${studentCount}, ${repetitions.toLocaleString('en')} repetitions`,
      value: best,
      unit: 'ms',
      budget: 2000,
    },
    {
      name: 'kept of one student for it',
      value: bytes / studentCount / 1000,
      unit: 'kB',
      budget: 200,
    },
  ]
}

const isRepetition = ({ kind }: { readonly kind: string }): boolean => kind === 'repetition'
