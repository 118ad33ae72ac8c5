import { createStore, type StoreApi } from 'zustand/vanilla'

/** What the person writes on pages for the teacher; kept while the program is open. */
export interface ForTeacher {
  readonly name: string
  /** Questions and remarks, by the address of their page. */
  readonly remarks: Readonly<Record<string, string>>
}

export const createForTeacher = (): StoreApi<ForTeacher> =>
  createStore<ForTeacher>(() => ({ name: '', remarks: {} }))
