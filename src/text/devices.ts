import { catalogue } from './text'

/** Keyboards, sound, and what goes wrong with them. */
export const devicesText = catalogue('devices', {
  /** In the head of the page, each in a few words, and what to do. */
  looking: 'Looking for a keyboard …',
  unsupported: {
    short: 'No MIDI in this browser',
    advice:
      'This browser has no Web MIDI. Chrome, Edge, Opera and Firefox on a computer have it, Chrome on Android too.',
  },
  denied: {
    short: 'MIDI not allowed',
    advice:
      'The browser was told not to let this page hear MIDI. Allow it in the site settings (the sign beside the address) and load the page again.',
  },
  failed: {
    short: 'MIDI failed',
    advice: (detail: string) =>
      `The MIDI system could not be opened: ${detail} Close other programs that use it, and load the page again.`,
  },
  unplugged: {
    short: 'Keyboard unplugged',
    advice: 'The chosen keyboard is not there. Plug it in, or choose another under Options.',
  },
  /** `name`: which keyboard another program holds. */
  taken: {
    short: 'Keyboard in use',
    advice: (name: string) =>
      `${name} is in use by another program. Close it there: it is heard here again by itself.`,
  },
  /** One is heard, the other is not. */
  alsoTaken: (heard: string, taken: string) => `${heard} (${taken} in use)`,
  none: {
    short: 'No keyboard',
    advice: 'Switch the keyboard on and connect it by USB; it is found by itself.',
  },
  /** The letters as they are printed on the computer's keys. */
  otherWays: (white: string) =>
    `Until then the keys on screen play, and the computer’s keys: ${white} … are the white ones, those above them the black.`,
  /** Why nothing sounds, or not yet. */
  sound: {
    off: 'Sound is off: see Options.',
    blocked: 'The browser holds the sound back: click once more.',
    loading: (loaded: number, wanted: number) => `Fetching the piano: ${loaded} of ${wanted}`,
    none: (detail: string) => `This browser gives no sound: ${detail}`,
    noPiano: (detail: string) => `The piano sound could not be loaded: ${detail}`,
  },
})

export type DevicesText = typeof devicesText
