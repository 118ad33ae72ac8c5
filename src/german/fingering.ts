import type { FingeringText } from '@/text/fingering'

export const fingering: FingeringText = {}
