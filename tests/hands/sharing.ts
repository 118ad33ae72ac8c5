import { inferHands } from '@/hands/hands'
import { nameNotes } from '@/music/identity'
import type { Hand, Note, Score } from '@/music/music'
import { formatKey, parseKey } from '@/music/pitch'
import { pieceId, tick } from '@/music/units'

/** What each hand plays: voices that begin together. */
export type Written = Readonly<Record<Hand, readonly string[]>>

const ticksPerQuarter = 24

/** A voice: 'C4/2 E4+G4 r/.5 A4', quarters after the stroke, one where nothing stands, + within a chord, r a rest. */
const readVoice = (voice: string, hand: Hand): Omit<Note, 'id'>[] => {
  let start = 0
  return voice.split(' ').flatMap((word) => {
    const [chord = '', quarters = '1'] = word.split('/')
    const length = Number(quarters) * ticksPerQuarter
    const at = start
    start += length
    if (chord === 'r') return []
    return chord.split('+').map((pitch): Omit<Note, 'id'> => {
      const key = parseKey(pitch)
      if (key === undefined) throw new Error(`${pitch} is no pitch`)
      const times = { start: tick(at), length: tick(length) }
      return { ...times, key, barIndex: 0, hand, handFrom: 'inferred' }
    })
  })
}

/** A score that does not say the hands; the hand of each note is the one that it was written for. */
const scoreOf = ({ left, right }: Written): Score => {
  const notes = [
    ...left.flatMap((voice) => readVoice(voice, 'left')),
    ...right.flatMap((voice) => readVoice(voice, 'right')),
  ].sort((a, b) => a.start - b.start || a.key - b.key)
  const end = tick(Math.max(...notes.map(({ start, length }) => start + length)))
  return {
    id: pieceId('p'),
    title: '',
    ticksPerQuarter,
    bars: [{ number: 1, start: tick(0), length: end, time: { beats: 4, beatType: 4 } }],
    tempos: [],
    keys: [],
    notes: nameNotes(notes, ticksPerQuarter),
    end,
  }
}

/** The notes that did not come back to the hand they were written for: 'E4 at 2'. */
export const astray = (written: Written): readonly string[] => {
  const score = scoreOf(written)
  const found = inferHands({ ...score, notes: score.notes.map((n) => ({ ...n, hand: 'right' })) })
  return score.notes.flatMap(({ key, start, hand }, i) =>
    found.notes[i]?.hand === hand ? [] : [`${formatKey(key)} at ${start / ticksPerQuarter}`],
  )
}
