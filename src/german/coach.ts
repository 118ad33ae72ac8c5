import type { CoachText } from '@/text/coach'

export const coach: CoachText = {}
