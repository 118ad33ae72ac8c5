import { expect, test } from 'vitest'
import { quarterMs, tempo } from '@/music/units'

// Standard MIDI Files 1.0 (RP-001): tempo FF 51 03 07 A1 20 is 500,000 microseconds a quarter, 120 a minute.
test.each([
  [120, 500],
  [60, 1000],
  [40, 1500],
  [208, 60_000 / 208],
])('at %i quarters a minute a quarter lasts %d ms', (quarters, milliseconds) => {
  expect(quarterMs(tempo(quarters))).toBeCloseTo(milliseconds, 9)
})
