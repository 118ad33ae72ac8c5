import type { RecordsText } from '@/text/records'

export const records: RecordsText = {}
