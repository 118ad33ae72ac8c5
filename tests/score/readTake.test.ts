import { describe, expect, test } from 'vitest'
import type { KeyEvent } from '@/music/keyEvent'
import { readTake } from '@/score/readTake'
import { smf } from './smf'

const read = (bytes: Uint8Array): readonly KeyEvent[] => {
  const take = readTake(bytes)
  if (!take.ok) throw new Error(JSON.stringify(take.reason))
  return take.value.events
}
const times = (bytes: Uint8Array): number[] => read(bytes).map((e) => e.at)

describe('a take', () => {
  // SMF 1.0: 96 ticks a quarter at 120 quarters a minute are 500 ms.
  test('has its times in milliseconds from the start of the file', () => {
    expect(times(smf(['60 90 3C 40 30 3C 00']))).toEqual([500, 750])
  })
  test('follows tempo changes of any track, from their tick on', () => {
    const tempos = '60 FF 51 03 0F 42 40 60 FF 51 03 03 D0 90' // 60 after a quarter, then 240
    expect(times(smf(['00 90 3C 40 60 3C 00 60 3C 40 60 3C 00', tempos]))).toEqual([
      0, 500, 1500, 1750,
    ])
  })
  // SMF 1.0: E7 28 is 25 frames of 40 ticks, a tick is a millisecond whatever the tempo says.
  test('in film frames counts milliseconds', () => {
    const bytes = smf(['07 FF 51 03 0F 42 40 00 90 3C 40 81 00 3C 00'], { division: 0xe728 })
    expect(times(bytes)).toEqual([7, 135])
  })
  test('keeps velocities and pedals (MIDI 1.0: controllers 64, 66, 67)', () => {
    const bytes = smf(['00 B0 40 7F 00 42 01 00 43 40 00 07 64 00 90 3C 2A 60 80 3C 40'])
    expect(read(bytes)).toEqual([
      { kind: 'pedal', pedal: 'sustain', value: 127, at: 0 },
      { kind: 'pedal', pedal: 'sostenuto', value: 1, at: 0 },
      { kind: 'pedal', pedal: 'soft', value: 64, at: 0 },
      { kind: 'down', key: 60, velocity: 42, at: 0 },
      { kind: 'up', key: 60, at: 500 },
    ])
  })
  test('without a key, or with drums only, is refused', () => {
    expect(readTake(smf(['00 B0 40 7F']))).toEqual({ ok: false, reason: { kind: 'noNotes' } })
    expect(readTake(smf(['00 99 24 40']))).toEqual({ ok: false, reason: { kind: 'onlyDrums' } })
  })
})
