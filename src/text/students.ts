import { catalogue } from './text'

/** The records of students. */
export const studentsText = catalogue('students', {})

export type StudentsText = typeof studentsText
