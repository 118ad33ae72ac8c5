import fc from 'fast-check'
import { expect, test } from 'vitest'
import { farthestLag, judgeTaps } from '@/judge/tapTest'
import { ms, type Ms } from '@/music/units'
import { createDice } from './player'

const gap = 750
const clicksFrom = (start: number, count = 16): Ms[] =>
  Array.from({ length: count }, (_, i) => ms(start + i * gap))

/** Strikes by how far each lies from its click; '-' is a click without one, '20+50' one struck twice. */
const tap = (text: string) => {
  const words = text.split(' ')
  const clicks = clicksFrom(1000, words.length)
  const taps = words.flatMap((word, i) =>
    word === '-' ? [] : word.split('+').map((by) => ms((clicks[i] ?? 0) + Number(by))),
  )
  return judgeTaps(clicks, taps)
}
const times = (word: string, count: number): string => Array<string>(count).fill(word).join(' ')

test.each<[string, string, object]>([
  ['sixteen alike', times('40', 16), { kind: 'trusted', lag: 40, spread: 0, counted: 13 }],
  ['before the click', times('-35', 16), { kind: 'trusted', lag: -35, counted: 13 }],
  [
    'the first three far off',
    `300 -200 150 ${times('40', 13)}`,
    { kind: 'trusted', lag: 40, counted: 13 },
  ],
  [
    'three of sixteen missed',
    `${times('40', 5)} - 40 - - ${times('40', 7)}`,
    { kind: 'trusted', lag: 40, counted: 10 },
  ],
  ['some struck twice', `${times('40 40+95', 8)}`, { kind: 'trusted', lag: 40, counted: 13 }],
  ['all struck twice', times('40+140', 16), { kind: 'trusted', lag: 40, counted: 13 }],
  [
    'one on the wrong side of the click',
    `${times('60', 8)} -300 ${times('60', 7)}`,
    { kind: 'trusted', lag: 60, counted: 12 },
  ],
  [
    'a stray strike before a good one',
    `${times('60', 8)} -300+60 ${times('60', 7)}`,
    { kind: 'trusted', lag: 60, counted: 13 },
  ],
  ['too few', times('40', 12), { kind: 'few', counted: 9 }],
  ['none', times('-', 16), { kind: 'few', counted: 0 }],
  ['all over the place', times('-250 120 10 300', 4), { kind: 'uneven', counted: 13 }],
  ['farther than a setting may leave out', times('340', 16), { kind: 'far', lag: 340 }],
])('%s: %s', (_, text, lag) => {
  expect(tap(text).lag).toMatchObject(lag)
})

test('the spread is the sample standard deviation of the strikes that count', () => {
  // Thirteen values a step of 5 apart: 5 * sqrt(13 * 14 / 12) = 19.47.
  const { lag } = tap('90 90 90 0 5 10 15 20 25 30 35 40 45 50 55 60')
  expect(lag).toMatchObject({ kind: 'trusted', lag: 30, counted: 13 })
  expect('spread' in lag && lag.spread).toBeCloseTo(19.47, 2)
})

test('each stroke says whether it counted', () => {
  const { strokes } = tap(`40 40 40 40 -250 - ${times('40', 9)}`)
  expect(strokes.map(({ counted }) => (counted ? 'x' : '.')).join('')).toBe('...x.xxxxxxxxx')
})

/** A person with a constant lag: normal deviations by the sum of twelve dice. */
const human = (seed: number, lag: number, sd: number): { clicks: Ms[]; taps: Ms[] } => {
  const dice = createDice(seed)
  const normal = (): number => Array.from({ length: 12 }, dice).reduce((a, b) => a + b, -6)
  const clicks = clicksFrom(5000 + 1000 * dice())
  const taps = clicks.map((click) => ms(click + lag + sd * normal()))
  return { clicks, taps }
}

test('under human jitter the lag is found within what the median of thirteen can tell', () => {
  // The standard error of a median is 1.2533 sd / sqrt(n) (normal values): 7.0 ms for 20 ms and 13 strikes.
  const sd = 20
  const standardError = (1.2533 * sd) / Math.sqrt(13)
  const errors = Array.from({ length: 1000 }, (_, seed) => {
    const lag = -150 + (seed % 400)
    const { clicks, taps } = human(seed, lag, sd)
    const found = judgeTaps(clicks, taps).lag
    return found.kind === 'trusted' ? found.lag - lag : NaN
  })
  const mean = errors.reduce((a, b) => a + b, 0) / errors.length
  const rms = Math.sqrt(errors.reduce((a, b) => a + b * b, 0) / errors.length)
  expect(Math.abs(mean)).toBeLessThan(1)
  expect(rms).toBeGreaterThan(0.8 * standardError)
  expect(rms).toBeLessThan(1.2 * standardError)
})

test.each([
  [20, 0.99, 1],
  [30, 0.9, 1],
  [80, 0, 0.1],
])(
  'of people with a deviation of %s ms, between %s and %s are told a figure',
  (sd, least, most) => {
    const told = Array.from({ length: 500 }, (_, seed) => {
      const { clicks, taps } = human(seed, 30, sd)
      return judgeTaps(clicks, taps).lag.kind
    }).filter((kind) => kind === 'trusted')
    expect(told.length / 500).toBeGreaterThanOrEqual(least)
    expect(told.length / 500).toBeLessThanOrEqual(most)
  },
)

test('missed, doubled and stray strikes, up to a fifth, leave an even player’s lag as it is', () => {
  const mishap = fc.constantFrom('missed', 'doubled', 'other side')
  fc.assert(
    fc.property(
      fc.integer({ min: -200, max: 200 }),
      fc.uniqueArray(fc.integer({ min: 3, max: 15 }), { maxLength: 3 }),
      fc.infiniteStream(mishap),
      fc.infiniteStream(fc.integer({ min: -5, max: 5 })),
      (lag, places, mishaps, jitter) => {
        const clicks = clicksFrom(1000)
        const taps = clicks.flatMap((click, i) => {
          const at = ms(click + lag + (jitter.next().value ?? 0))
          if (!places.includes(i)) return [at]
          const what = mishaps.next().value
          if (what === 'missed') return []
          return what === 'doubled' ? [at, ms(at + 60)] : [ms(click - Math.sign(lag || 1) * 300)]
        })
        const found = judgeTaps(clicks, taps).lag
        expect(found.kind).toBe('trusted')
        expect(Math.abs(('lag' in found ? found.lag : NaN) - lag)).toBeLessThanOrEqual(5)
      },
    ),
  )
})

test('whatever comes, nothing is counted twice, and a lag within bounds is trusted only from ten strikes', () => {
  const time = fc.double({ min: 0, max: 20_000, noNaN: true }).map(ms)
  fc.assert(
    fc.property(fc.array(time, { maxLength: 40 }), fc.nat(24), (taps, count) => {
      const { strokes, lag } = judgeTaps(clicksFrom(1000, count), taps)
      expect(new Set(strokes.map(({ click }) => click)).size).toBe(strokes.length)
      expect(strokes.length).toBeLessThanOrEqual(Math.min(count, taps.length))
      for (const { by } of strokes) expect(Math.abs(by)).toBeLessThanOrEqual(gap / 2)
      expect(lag.counted).toBe(strokes.filter(({ counted }) => counted).length)
      if (lag.kind !== 'trusted') return
      expect(lag.counted).toBeGreaterThanOrEqual(10)
      expect(Math.abs(lag.lag)).toBeLessThanOrEqual(farthestLag)
    }),
  )
})
