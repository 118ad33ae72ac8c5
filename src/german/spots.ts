import type { SpotsText } from '@/text/spots'

export const spots: SpotsText = {}
