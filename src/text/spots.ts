import { catalogue } from './text'

/** Hard spots and their reasons. */
export const spotsText = catalogue('spots', {})

export type SpotsText = typeof spotsText
