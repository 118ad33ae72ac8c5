import type { OptionsText } from '@/text/options'

export const options: OptionsText = {}
