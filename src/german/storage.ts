import type { StorageText } from '@/text/storage'

export const storage: StorageText = {}
