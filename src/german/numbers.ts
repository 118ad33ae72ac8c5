import type { NumbersText } from '@/text/numbers'

export const numbers: NumbersText = { decimalMark: ',' }
