import { key, tempo, tick } from '@/music/units'
import { writeMidiFile } from '@/score/writeMidiFile'

/** Five hundred bars of eighths, a hand to a track. */
export const longPiece = (): Uint8Array =>
  writeMidiFile({
    title: 'A Long Walk',
    ticksPerQuarter: 480,
    tempos: [{ start: tick(0), tempo: tempo(96) }],
    times: [{ start: tick(0), time: { beats: 4, beatType: 4 } }],
    keys: [{ start: tick(0), fifths: 0, mode: 'major' }],
    tracks: [60, 48].map((lowest, hand) => ({
      name: hand === 0 ? 'Right hand' : 'Left hand',
      notes: Array.from({ length: 4000 }, (_, i) => ({
        start: tick(i * 240),
        length: tick(240),
        key: key(lowest + ((i * 5 + Math.floor(i / 16) * 3) % 13)),
      })),
    })),
  })
