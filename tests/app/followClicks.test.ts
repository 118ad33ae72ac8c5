import fc from 'fast-check'
import { expect, test } from 'vitest'
import { clicksFrom, followClicks } from '@/app/followClicks'
import { ms, tempo } from '@/music/units'

test.each([
  ['4/4', { beats: 4, beatType: 4 }, 500],
  ['6/8, in dotted quarters', { beats: 6, beatType: 8 }, 750],
  ['3/8, in eighths', { beats: 3, beatType: 8 }, 250],
  ['2/2, in halves', { beats: 2, beatType: 2 }, 1000],
])('the clicks of %s come with its beats', (_, time, gap) => {
  expect(clicksFrom(ms(0), time, tempo(120)).gap).toBe(gap)
})

test('moved, the nearest click falls on the one that is heard, and the first keeps its place in the bar', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1e7, noNaN: true }),
      fc.integer({ min: -8, max: 20_000 }),
      fc.double({ min: -200, max: 200, noNaN: true }),
      (first, passed, off) => {
        const clicks = clicksFrom(ms(first), { beats: 4, beatType: 4 }, tempo(120))
        const heard = ms(first + passed * 500 + off)
        const moved = followClicks(clicks, heard)
        expect(moved.first + passed * moved.gap).toBeCloseTo(heard, 6)
        expect(moved.first - first).toBeCloseTo(off, 6)
      },
    ),
  )
})
