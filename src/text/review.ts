import { catalogue } from './text'

/** The review. */
export const reviewText = catalogue('review', {})

export type ReviewText = typeof reviewText
