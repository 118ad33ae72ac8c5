import { catalogue } from './text'

/** Fingering: versions, differences, reach. */
export const fingeringText = catalogue('fingering', {})

export type FingeringText = typeof fingeringText
