import type { KeysText } from '@/text/keys'

export const keys: KeysText = {}
