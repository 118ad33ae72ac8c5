import type { ReadingText } from '@/text/reading'

export const reading: ReadingText = {}
