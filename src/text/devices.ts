import { catalogue } from './text'

/** Keyboards, sound, and what goes wrong with them. */
export const devicesText = catalogue('devices', {})

export type DevicesText = typeof devicesText
