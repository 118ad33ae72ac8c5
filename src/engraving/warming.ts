import type { Note } from '@/music/music'
import { key, noteId, tick } from '@/music/units'
import type { Stretch } from './stretch'

/** A bar of eighths for both hands, drawn and thrown away until the engraver is warm. */
const notes: readonly Note[] = Array.from({ length: 16 }, (_, i) => ({
  id: noteId(`warm${i}`),
  key: key(i % 2 === 0 ? 60 + i : 40 + i),
  start: tick(Math.floor(i / 2) * 2),
  length: tick(2),
  hand: i % 2 === 0 ? 'right' : 'left',
  handFrom: 'file',
  barIndex: 0,
}))

export const throwAway: Stretch = {
  ticksPerQuarter: 4,
  start: tick(0),
  end: tick(16),
  hands: ['right', 'left'],
  notes,
  around: [],
  bars: [{ number: 1, start: tick(0), length: tick(16), time: { beats: 4, beatType: 4 } }],
  readings: {
    left: [{ at: tick(0), clef: 'bass', octaves: 0 }],
    right: [{ at: tick(0), clef: 'treble', octaves: 0 }],
  },
  keys: [{ start: tick(0), fifths: 2, mode: 'major' }],
}
