import { Header } from '@tonejs/midi'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { TempoChange } from '@/music/music'
import { msAt, tempoAt } from '@/music/tempoMap'
import { tempo, tick } from '@/music/units'

const changes = (...list: readonly (readonly [start: number, tempo: number])[]): TempoChange[] =>
  list.map(([start, t]) => ({ start: tick(start), tempo: tempo(t) }))

const slower = changes([0, 120], [960, 60], [1440, 240])

// By hand: 2 quarters at 120 are 1000 ms, then 1 quarter at 60 is 1000 ms, then each quarter is 250 ms.
test.each([
  [0, 0],
  [480, 500],
  [960, 1000],
  [1200, 1500],
  [1440, 2000],
  [1920, 2250],
  [2400, 2500],
])('through two tempo changes tick %i sounds at %i ms', (at, milliseconds) => {
  expect(msAt(slower, 480, tick(at))).toBeCloseTo(milliseconds, 9)
})

test.each([
  [0, 120],
  [959, 120],
  [960, 60],
  [1439, 60],
  [1440, 240],
  [99_999, 240],
])('at tick %i the tempo is %i', (at, expected) => {
  expect(tempoAt(slower, tick(at))).toBe(expected)
})

// Standard MIDI Files 1.0 (RP-001): without a tempo event 120 quarters a minute are assumed.
test('without any tempo the music goes at 120', () => {
  expect(tempoAt([], tick(0))).toBe(120)
  expect(msAt([], 480, tick(960))).toBeCloseTo(1000, 9)
})

test('times agree with those of another reader of tempo maps', () => {
  const map = fc.record({
    gaps: fc.array(fc.integer({ min: 1, max: 5000 }), { maxLength: 8 }),
    tempos: fc.array(fc.integer({ min: 20, max: 300 }), { minLength: 9, maxLength: 9 }),
    resolution: fc.constantFrom(24, 96, 480, 960),
    at: fc.nat(40_000),
  })
  fc.assert(
    fc.property(map, ({ gaps, tempos, resolution, at }) => {
      let start = 0
      const starts = [0, ...gaps.map((gap) => (start += gap))]
      const list = starts.map((s, i) => [s, tempos[i] ?? 120] as const)
      const header = new Header()
      header.fromJSON({
        name: '',
        ppq: resolution,
        meta: [],
        tempos: list.map(([ticks, bpm]) => ({ ticks, bpm })),
        timeSignatures: [],
        keySignatures: [],
      })
      expect(msAt(changes(...list), resolution, tick(at))).toBeCloseTo(
        1000 * header.ticksToSeconds(at),
        6,
      )
    }),
  )
})
