import { catalogue } from './text'

/** Build-ups and exercises. */
export const buildUpText = catalogue('buildUp', {})

export type BuildUpText = typeof buildUpText
