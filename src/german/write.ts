import type { WriteText } from '@/text/write'

export const write: WriteText = {}
