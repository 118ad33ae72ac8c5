import { expect, test } from 'vitest'
import { beginCoach, stepCoach } from '@/coach/coach'
import { ms, tempo } from '@/music/units'

/** Expected tries until k successes in a row at success probability p: (1 - p^k) / (p^k (1 - p)). */
const expectedTries = (p: number, k: number): number => (1 - p ** k) / (p ** k * (1 - p))

/** Values of that closed form, rounded (computed, renewal theory). */
test.each([
  [0.5, 5, 62],
  [0.7, 3, 6.38],
  [0.8, 5, 10.26],
  [0.9, 10, 18.68],
  [0.95, 7, 8.64],
])(
  'at clean share %f a streak of %i takes about %f tries (computed, renewal theory)',
  (p, k, tries) => {
    expect(Math.abs(expectedTries(p, k) - tries)).toBeLessThan(0.01)
  },
)

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
