import { catalogue } from './text'

/** The coach: why it does or asks something, what causes a flaw, what may help. */
export const coachText = catalogue('coach', {})

export type CoachText = typeof coachText
