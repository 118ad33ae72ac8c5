import type { StudentsPort } from '@/app/ports'
import { ok } from '@/music/result'
import { localDays } from '@/storage/days'
import type { StudentStorage } from '@/storage/students'
import { explained, storagePort } from './storagePort'

/** The records of students as the app sees them. */
export const studentsPort = (storage: StudentStorage): StudentsPort => ({
  dayRule: localDays().name,
  list: async () => explained(await storage.list()),
  put: async (student) => explained(await storage.put(student)),
  remove: async (id) => explained(await storage.remove(id)),
  journal: async (id) => {
    const journal = await storage.journal(id)
    return journal.ok ? ok(storagePort(journal.value)) : explained(journal)
  },
})
