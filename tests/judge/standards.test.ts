import { describe, expect, test } from 'vitest'
import { ms } from '@/music/units'
import { flaws, listen, verdicts } from './notation'

const run = 'C4 D4 E4 F4 G4 A4 B4'

/** The run in quarters of 400 ms, each gap changed by a share of it. */
const gapsOf = (shares: readonly number[]): string =>
  run
    .split(' ')
    .map((key, i) => (i === 0 ? key : `${Math.round((shares[i - 1] ?? 0) * 400)} ${key}`))
    .join(' ')

describe('notes judges keys and order only', () => {
  test('any timing is clean', () => {
    expect(verdicts(run, gapsOf([2.4, -0.8, 1.5, 0, -0.9, 0.7]))).toBe('clean')
    expect(verdicts('[C4 E4 G4] D4', 'C4 -50 E4 -50 G4 D4')).toBe('clean')
  })
})

describe('flow judges stops too', () => {
  test('a pause under 1.5 times the written gap is clean', () => {
    expect(flaws(run, gapsOf([0, 0, 0.45, 0, 0, 0]), 'flow')).toBe('')
  })

  test('a pause of twice the written gap and 0.3 s over it is a hesitation, and is named once', () => {
    expect(flaws(run, gapsOf([0, 0, 1, 0, 0, 0]), 'flow')).toBe('hesitation')
    expect(flaws(run, gapsOf([1, 0, 0, 0, 0, 0]), 'flow')).toBe('hesitation')
    expect(flaws(run, gapsOf([0, 0, 0, 0, 0, 1]), 'flow')).toBe('hesitation')
    expect(flaws('C4 D4 E4', 'C4 D4 400 E4', 'flow')).toBe('hesitation')
  })

  test('its size is the time over the written gap', () => {
    const [first] = listen(run, gapsOf([0, 0, 1.5, 0, 0, 0]), { standard: 'flow' })
    expect(first?.flaws.map((f) => [f.kind, f.onset, f.ms])).toEqual([['hesitation', 3, 600]])
  })

  test('a stutter is one repeated key, and the time it takes no hesitation besides', () => {
    expect(flaws(run, 'C4 D4 E4 E4 F4 G4 A4 B4', 'flow')).toBe('repeated')
  })

  test('going back is one restart', () => {
    expect(flaws(run, 'C4 D4 E4 F4 300 D4 E4 F4 G4 A4 B4', 'flow')).toBe('restart')
  })

  test('a slow but steady tempo is no hesitation, nor is a long written note', () => {
    expect(verdicts(run, gapsOf([2, 2, 2, 2, 2, 2]), 'flow')).toBe('clean')
    expect(
      verdicts('C4:1/2 D4:1/2 E4:3 F4:1/2 G4', 'C4 -200 D4 -200 E4 800 F4 -200 G4', 'flow'),
    ).toBe('clean')
  })
})

describe('time judges the pulse too', () => {
  const clean: readonly (readonly [string, readonly number[]])[] = [
    ['gaps within 20 %, one after another', [0.2, -0.2, 0.15, -0.2, 0.2, -0.1]],
    ['a tempo change of 11 %', [-0.055, -0.033, -0.011, 0.011, 0.033, 0.055]],
  ]
  test.each(clean)('%s: clean', (_, shares) => {
    expect(flaws(run, gapsOf(shares), 'time')).toBe('')
  })

  const flawed: readonly (readonly [string, readonly number[], string])[] = [
    ['gaps off by 35 % one after another', [0.35, -0.35, 0.35, -0.35, 0.35, -0.35], 'uneven'],
    ['one onset late by 35 %', [0, 0, 0.35, -0.35, 0, 0], 'late'],
    ['one onset early by 35 %', [0, -0.35, 0.35, 0, 0, 0], 'early'],
    ['half as slow again at the end', [-0.25, -0.15, -0.05, 0.05, 0.15, 0.25], 'drift'],
    ['half as fast again at the end', [0.25, 0.15, 0.05, -0.05, -0.15, -0.25], 'drift'],
    ['a stop', [0, 0, 1, 0, 0, 0], 'hesitation'],
  ]
  test.each(flawed)('%s: %s', (_, shares, kinds) => {
    expect(flaws(run, gapsOf(shares), 'time')).toBe(kinds)
  })

  test('a chord spread over 60 ms is together, over 200 ms it is not', () => {
    const chord = '[C4 E4 G4] D4 E4 F4'
    expect(flaws(chord, 'C4 -370 E4 -370 G4 -60 D4 E4 F4', 'time')).toBe('')
    expect(flaws(chord, 'C4 -300 E4 -300 G4 -200 D4 E4 F4', 'time')).toBe('spread')
  })

  test('a chord that is written rolled may be rolled', () => {
    expect(flaws('[C4 E4 G4]r D4 E4 F4', 'C4 -300 E4 -300 G4 -200 D4 E4 F4', 'time')).toBe('')
  })

  test('early is negative, late positive, in milliseconds', () => {
    const late = listen(run, gapsOf([0, 0, 0.4, -0.4, 0, 0]), { standard: 'time' })[0]?.flaws[0]
    const early = listen(run, gapsOf([0, -0.4, 0.4, 0, 0, 0]), { standard: 'time' })[0]?.flaws[0]
    expect([late?.onset, late?.ms, early?.onset, early?.ms]).toEqual([3, 160, 2, -160])
  })
})

describe('with the metronome early and late are against the click', () => {
  /** Takes begin at 1000 ms: with this click the first onset is on it. */
  const onClick = { standard: 'time', quarter: ms(400), click: ms(200) } as const
  const kinds = (played: string): string =>
    listen(run, played, onClick)
      .flatMap((r) => r.flaws.map((f) => f.kind))
      .join(' ')

  test('on the click: clean', () => {
    expect(kinds(gapsOf([0, 0, 0, 0, 0, 0]))).toBe('')
  })

  test('one onset off the click is that one', () => {
    expect(kinds(gapsOf([0, 0, 0.4, -0.4, 0, 0]))).toBe('late')
    expect(kinds(gapsOf([0, -0.4, 0.4, 0, 0, 0]))).toBe('early')
  })

  test('running away from the click is one drift', () => {
    expect(kinds(gapsOf([-0.35, -0.35, -0.35, -0.35, -0.35, -0.35]))).toBe('drift')
  })

  test('steady, but behind the click throughout, is one late', () => {
    const behind = { ...onClick, click: ms(1000 - 150 - 400) }
    const found = listen(run, gapsOf([0, 0, 0, 0, 0, 0]), behind).flatMap((r) => r.flaws)
    expect(found.map((f) => [f.kind, f.ms])).toEqual([['late', 150]])
  })
})

describe('a brushed key', () => {
  const forgiving = { forgiveBrushed: true }
  const verdictsOf = (played: string, settings = {}): string =>
    listen('C4 D4 E4', played, settings)
      .map((r) => `${r.verdict} ${r.flaws.length}`)
      .join(' ')

  test('counts as an extra one', () => {
    expect(verdictsOf('C4 -350 B3! -50 D4 E4')).toBe('flawed 1')
  })

  test('is shown and recorded, but not counted, where it is forgiven', () => {
    expect(verdictsOf('C4 -350 B3! -50 D4 E4', forgiving)).toBe('clean 1')
  })

  test('a full extra key is never forgiven', () => {
    expect(verdictsOf('C4 -350 B3 -50 D4 E4', forgiving)).toBe('flawed 1')
  })
})
