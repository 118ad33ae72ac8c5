import type { StudentsText } from '@/text/students'

export const students: StudentsText = {}
