import { catalogue } from './text'

/** The list of keys. */
export const keysText = catalogue('keys', {
  /** What is printed on the keys of the computer. */
  names: { space: 'Space', enter: 'Enter', escape: 'Esc', backspace: 'Backspace' },
})

export type KeysText = typeof keysText
