import { catalogue } from './text'

/** Lists of repetitions, and a single one seen again. */
export const repetitionsText = catalogue('repetitions', {})

export type RepetitionsText = typeof repetitionsText
