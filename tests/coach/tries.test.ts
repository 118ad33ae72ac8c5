import fc from 'fast-check'
import { expect, test } from 'vitest'
import { beginCoach, stepCoach } from '@/coach/coach'
import { expectedTries } from '@/exercises/expectedTries'
import { ms, tempo } from '@/music/units'

/** Expected tries until k clean in a row at clean share p (computed from the closed form, renewal theory). */
test.each([
  [0.5, '14 62 254 2046'],
  [0.7, '6.38 16.5 37.1 114.7'],
  [0.8, '4.77 10.3 18.8 41.6'],
  [0.9, '3.72 6.94 10.9 18.7'],
  [0.95, '3.33 5.85 8.64 13.4'],
])('at clean share %f streaks of 3, 5, 7 and 10 take %s tries (computed)', (p, tries) => {
  const table = tries.split(' ')
  const ours = [3, 5, 7, 10].map((k, i) => {
    const digits = table[i]?.split('.')[1]?.length ?? 0
    return expectedTries(p, k).toFixed(digits)
  })
  expect(ours).toEqual(table)
})

/**
 * The same from the Markov chain with the states 0 to k clean in a row, in whole numbers: from state i
 * a try leads to i + 1 with probability n/d, else to 0, so that E(i) = 1 + n/d E(i+1) + (1 - n/d) E(0)
 * and E(k) = 0. With E(i) = (a + b E(0)) / d^(k-i) this is solved from k down to 0.
 */
const triesOfChain = (n: bigint, d: bigint, k: number): readonly [bigint, bigint] => {
  let [a, b] = [0n, 0n]
  for (let i = k - 1, power = 1n; i >= 0; i--, power *= d) {
    a = power * d + n * a
    b = (d - n) * power + n * b
  }
  return [a, d ** BigInt(k) - b]
}

test('the Markov chain gives the same for every share and streak', () => {
  expect(triesOfChain(1n, 2n, 3)).toEqual([14n, 1n])
  fc.assert(
    fc.property(fc.integer({ min: 5, max: 100 }), fc.integer({ min: 1, max: 10 }), (n, k) => {
      const [tries, unit] = triesOfChain(BigInt(n), 100n, k)
      const exact = Number((tries * 1_000_000n) / unit) / 1_000_000
      expect(Math.abs(expectedTries(n / 100, k) / exact - 1)).toBeLessThan(1e-6)
    }),
  )
})

/** Mulberry32: a small generator with a 32-bit state, so that the run is the same each time. */
const seeded = (seed: number) => () => {
  seed = (seed + 0x6d2b79f5) | 0
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed)
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
  return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
}

const triesUntilStreak = (p: number, streakGoal: number, random: () => number): number => {
  let coach = beginCoach({ goalTempo: tempo(120), streakGoal, ladder: { kind: 'classic' } })
  for (let n = 1; ; n++) {
    const verdict = random() < p ? 'clean' : 'flawed'
    const at = ms(n * 10_000)
    const event = { kind: 'repetition', verdict, flaws: [], start: at, at } as const
    const [next, commands] = stepCoach(coach, event)
    if (commands.some((c) => c.kind === 'streakMet')) return n
    coach = next
  }
}

test.each([
  [0.5, 3],
  [0.7, 5],
  [0.8, 5],
  [0.9, 10],
])(
  'the coach itself at clean share %f and streak goal %i takes as long, within 4 per cent',
  (p, k) => {
    const random = seeded(20260101)
    const runs = 8_000
    let total = 0
    for (let run = 0; run < runs; run++) total += triesUntilStreak(p, k, random)
    expect(Math.abs(total / runs / expectedTries(p, k) - 1)).toBeLessThan(0.04)
  },
)
