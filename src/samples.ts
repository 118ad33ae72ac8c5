import listed from '@samples/samples.json'
import type { Sample } from '@/app/ports'
import { handChoices } from '@/music/music'
import { tempo } from '@/music/units'

const urls: Readonly<Record<string, string>> = import.meta.glob('@samples/*.mid', {
  query: '?url',
  import: 'default',
  eager: true,
})

/** The pieces that come with the program, in the order of the list. */
export const loadSamples = (): Promise<readonly Sample[]> =>
  Promise.all(
    listed.map(async ({ file, title, passage }): Promise<Sample> => {
      const hand = handChoices.find((choice) => choice === passage.hand)
      if (!hand) throw new Error(`${file}: no such hand: ${passage.hand}`)
      return {
        title,
        fileName: file,
        bytes: await fetchBytes(file),
        suggestion: { ...passage, hand, goalTempo: tempo(passage.goalTempo) },
      }
    }),
  )

const fetchBytes = async (file: string): Promise<Uint8Array> => {
  const url = Object.entries(urls).find(([path]) => path.endsWith(`/${file}`))?.[1]
  if (url === undefined) throw new Error(`the list of samples names ${file}, which is not there`)
  const response = await fetch(url)
  if (!response.ok) throw new Error(`${file} could not be fetched: ${response.status}`)
  return new Uint8Array(await response.arrayBuffer())
}
