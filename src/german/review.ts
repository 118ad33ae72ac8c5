import type { ReviewText } from '@/text/review'

export const review: ReviewText = {}
