import type { TeacherText } from '@/text/teacher'

export const teacher: TeacherText = {}
