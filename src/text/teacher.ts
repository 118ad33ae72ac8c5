import { catalogue } from './text'

/** The page for a teacher. */
export const teacherText = catalogue('teacher', {})

export type TeacherText = typeof teacherText
