import { catalogue } from './text'

/** Options, and keys and pedals as commands. */
export const optionsText = catalogue('options', {})

export type OptionsText = typeof optionsText
