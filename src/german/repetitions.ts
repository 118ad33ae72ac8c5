import type { RepetitionsText } from '@/text/repetitions'

export const repetitions: RepetitionsText = {}
