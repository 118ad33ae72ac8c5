import type { WebMidi } from 'webmidi'

export type MidiLibrary = typeof WebMidi

/** The library comes while the first screen is drawn, which need not wait for it. */
export const loadMidiLibrary = async (): Promise<MidiLibrary> => (await import('webmidi')).WebMidi
