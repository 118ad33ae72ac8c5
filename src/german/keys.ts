import type { KeysText } from '@/text/keys'

export const keys: KeysText = {
  names: { space: 'Leertaste', enter: 'Eingabe', escape: 'Esc', backspace: 'Rücktaste' },
}
