import type { Chunk, ExpectedNote } from '@/music/chunk'
import { parseKey } from '@/music/pitch'
import { chunkId, noteId, pieceId, tick } from '@/music/units'

const perQuarter = 480

/**
 * A chunk in a small notation: onsets by blanks, chords joined by +, a length in quarters after a
 * colon (1 when left out): 'C4 E4+G4:2 C5:1/2'. In bars of 4/4.
 */
export const writeChunk = (text: string): Chunk => {
  let start = 0
  const onsets = text.split(' ').map((onset) => {
    const [names = '', length = '1'] = onset.split(':')
    const [over = 1, under = 1] = length.split('/').map(Number)
    const ticks = (over / under) * perQuarter
    const [first, ...rest] = names.split('+').map((name): ExpectedNote => {
      const key = parseKey(name)
      if (key === undefined) throw new Error(`no pitch: ${name}`)
      const id = noteId(`n${start}k${key}`)
      return { ids: [id], key, start: tick(start), length: tick(ticks), hand: 'right' }
    })
    if (!first) throw new Error(`no notes: ${onset}`)
    const here = {
      start: tick(start),
      notes: [first, ...rest] as const,
      auxiliaries: [],
      rolled: false,
    }
    start += ticks
    return here
  })
  return {
    id: chunkId(text),
    piece: pieceId('p'),
    hand: 'right',
    ticksPerQuarter: perQuarter,
    start: tick(0),
    end: tick(start),
    barOffset: tick(0),
    barLength: tick(4 * perQuarter),
    onsets,
  }
}
