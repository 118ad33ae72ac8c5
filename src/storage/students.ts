import { deleteDB, openDB, type DBSchema, type IDBPDatabase } from 'idb'
import type { SessionId, StudentId } from '@/journal/ids'
import { failed, ok } from '@/music/result'
import { strict } from './connection'
import { openStorage } from './indexedDb'
import { createMemoryStorage } from './memory'
import { problemOf } from './problem'
import type { Storage, Stored } from './storage'

/**
 * Records of students beside one's own: each in a database of its own, so that nothing of one can come
 * into another, and to remove one is to delete its database. Who they are stands in one database more.
 */
export interface StudentStorage {
  /** In no order. */
  readonly list: () => Stored<readonly StudentListing[]>
  readonly put: (student: StudentListing) => Stored<void>
  /** With the whole record. Nothing happens when there is none by that name. */
  readonly remove: (id: StudentId) => Stored<void>
  /** The student's own record; empty at first. */
  readonly journal: (id: StudentId) => Stored<Storage>
  readonly close: () => void
}

export interface StudentListing {
  readonly id: StudentId
  /** As whoever opened the record calls them: a journal bears no name. */
  readonly name: string
  /** The file that was taken in last, and when. */
  readonly fileName: string
  readonly takenAtEpochMs: number
  /** By which a newer file of the same student is known. */
  readonly sessions: readonly SessionId[]
  /** What the record comes to, as the app saved it; `undefined` before it was counted. */
  readonly kept: unknown
}

interface Schema extends DBSchema {
  students: { key: string; value: StudentListing }
}

export const openStudentStorage = (name = 'passagework students'): StudentStorage => {
  let opening: Promise<IDBPDatabase<Schema>> | undefined
  const journals = new Map<StudentId, Stored<Storage>>()

  const letGo = (): void => {
    void opening?.then(
      (database) => database.close(),
      () => undefined,
    )
    opening = undefined
  }
  const open = (): Promise<IDBPDatabase<Schema>> =>
    openDB<Schema>(name, 1, {
      upgrade: (database) => void database.createObjectStore('students', { keyPath: 'id' }),
      blocking: letGo,
      terminated: letGo,
    })
  const within = async <T>(run: (database: IDBPDatabase<Schema>) => Promise<T>): Stored<T> => {
    try {
      opening ??= open()
      return ok(await run(await opening))
    } catch (error) {
      opening = undefined
      return failed(problemOf(error))
    }
  }
  const journalOf = (id: StudentId): string => `${name} ${id}`
  const openJournal = async (id: StudentId): Stored<Storage> => {
    const opened = await openStorage(journalOf(id))
    // What could not be opened now is tried again the next time.
    if (!opened.ok) journals.delete(id)
    return opened
  }

  return {
    list: () => within((database) => database.getAll('students')),
    put: (student) =>
      within(async (database) => {
        const change = database.transaction('students', 'readwrite', strict)
        await Promise.all([change.store.put(student), change.done])
      }),
    remove: (id) =>
      within(async (database) => {
        const journal = await journals.get(id)
        if (journal?.ok) journal.value.close()
        journals.delete(id)
        await deleteDB(journalOf(id))
        await database.delete('students', id)
      }),
    journal: (id) => {
      const opened = journals.get(id) ?? openJournal(id)
      journals.set(id, opened)
      return opened
    },
    close: () => {
      letGo()
      for (const journal of journals.values())
        void journal.then((opened) => opened.ok && opened.value.close())
    },
  }
}

/** The same contract without a disk: everything is gone when the page is closed. */
export const createStudentMemory = (): StudentStorage => {
  const students = new Map<StudentId, StudentListing>()
  const journals = new Map<StudentId, Storage>()
  return {
    list: () => Promise.resolve(ok([...students.values()])),
    put: (student) => {
      students.set(student.id, structuredClone(student))
      return Promise.resolve(ok(undefined))
    },
    remove: (id) => {
      students.delete(id)
      journals.delete(id)
      return Promise.resolve(ok(undefined))
    },
    journal: (id) => {
      const journal = journals.get(id) ?? createMemoryStorage()
      journals.set(id, journal)
      return Promise.resolve(ok(journal))
    },
    close: () => undefined,
  }
}
