import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Ports } from './ports'
import type { Shelf } from './reviewedRecord'
import type { Students } from './students'

/** What is for lessons: pages for the teacher, and the records of students. */
export interface Lessons {
  /** Questions and remarks, by the address of their page; kept while the program is open. */
  readonly remarks: StoreApi<Readonly<Record<string, string>>>
  /** Gives a page to the person as a file. */
  readonly savePage: (fileName: string, text: string) => void
  /** Records of students, beside one's own; loaded when they are wanted. */
  readonly openStudents: () => Promise<Students>
}

export const createLessons = (ports: Ports, shelf: Shelf): Lessons => {
  let students: Promise<Students> | undefined
  return {
    remarks: createStore<Readonly<Record<string, string>>>(() => ({})),
    savePage: (fileName, text) => ports.saveFile(fileName, [text]),
    openStudents: () =>
      (students ??= import('./students').then(({ createStudents }) =>
        createStudents(ports, shelf),
      )),
  }
}
