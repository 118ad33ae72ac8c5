import fc from 'fast-check'
import { expect, test } from 'vitest'
import { tempo } from '@/music/units'
import {
  beginBeating,
  changeBeating,
  changePattern,
  firstBeat,
  nextClick,
  planClicks,
  skipClicks,
  type Beating,
  type Click,
} from '@/sound/clicks'
import type { ClickPattern, MetronomeSettings } from '@/sound/sound'

const settings = (changes: Partial<MetronomeSettings> = {}): MetronomeSettings => ({
  tempo: tempo(60),
  time: { beats: 4, beatType: 4 },
  countInBars: 1,
  ...changes,
})
const clicksUntil = (beating: Beating, until: number): readonly Click[] =>
  planClicks(beating, until)[1]
/** 'bar.beat@seconds' */
const show = (clicks: readonly Click[]): string =>
  clicks.map((click) => `${click.bar}.${click.beat}@${click.at}`).join(' ')

test('a bar of 4/4 is counted in, then the music’s first bar begins', () => {
  const beating = beginBeating(settings(), 10)
  expect(show(clicksUntil(beating, 15.5))).toBe('-1.0@10 -1.1@11 -1.2@12 -1.3@13 0.0@14 0.1@15')
  expect(firstBeat(beating).at).toBe(14)
})

// Tempo is in quarters a minute. At 120 a quarter lasts 0.5 s (60 / 120): arithmetic.
test.each([
  ['3/4', { beats: 3, beatType: 4 }, [0, 0.5, 1, 1.5, 2]],
  ['2/2', { beats: 2, beatType: 2 }, [0, 1, 2, 3, 4]],
  ['6/8', { beats: 6, beatType: 8 }, [0, 0.75, 1.5, 2.25, 3]],
  ['3/8', { beats: 3, beatType: 8 }, [0, 0.25, 0.5, 0.75, 1]],
])('in %s at 120 quarters a minute the clicks fall on the beat', (_, time, times) => {
  const beating = beginBeating(settings({ tempo: tempo(120), time, countInBars: 0 }), 0)
  expect(
    clicksUntil(beating, 60)
      .slice(0, 5)
      .map((click) => click.at),
  ).toEqual(times)
})

test('over an hour every click is at its exact multiple: no drift', () => {
  for (const quarters of [60, 63, 92, 138, 207]) {
    let beating = beginBeating(settings({ tempo: tempo(quarters), countInBars: 0 }), 3)
    let count = 0
    for (let now = 0; now < 3600; now += 0.05) {
      const [next, clicks] = planClicks(beating, now + 0.25)
      beating = next
      for (const click of clicks) expect(click.at).toBe(3 + (count++ * 60) / quarters)
    }
    expect(count).toBe(Math.ceil(((3600 + 0.2 - 3) * quarters) / 60))
  }
})

test('however the wakings fall, each click is given once and in order', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 1, maxLength: 30 }),
      fc.integer({ min: 20, max: 300 }),
      fc.integer({ min: 1, max: 4 }),
      (steps, quarters, perBeat) => {
        const all = settings({ tempo: tempo(quarters), perBeat: perBeat as 1 | 2 | 3 | 4 })
        let beating = beginBeating(all, 0)
        let now = 0
        const piecewise: Click[] = []
        for (const step of steps) {
          const [next, clicks] = planClicks(beating, (now += step))
          beating = next
          piecewise.push(...clicks)
        }
        expect(piecewise).toEqual(clicksUntil(beginBeating(all, 0), now))
      },
    ),
  )
})

test('another tempo holds from the next click on, which keeps its time', () => {
  const [beating] = planClicks(beginBeating(settings({ countInBars: 0 }), 0), 2.5)
  const faster = changeBeating(beating, tempo(120))
  expect(nextClick(faster).at).toBe(3)
  expect(show(clicksUntil(faster, 4.9))).toBe('0.3@3 1.0@3.5 1.1@4 1.2@4.5')
})

test('a change during the count-in moves the first beat', () => {
  const [beating] = planClicks(beginBeating(settings(), 0), 1.5)
  expect(firstBeat(changeBeating(beating, tempo(120))).at).toBe(3)
})

test('clicks missed while the page slept are left out, and the rest stays on the beat', () => {
  const late = skipClicks(beginBeating(settings({ countInBars: 0 }), 0), 10.3)
  expect(show(clicksUntil(late, 12.5))).toBe('2.3@11 3.0@12')
})

test('music that begins on the third beat is counted in from the third beat', () => {
  const beating = beginBeating(settings({ barOffset: 2 }), 0)
  const clicks = clicksUntil(beating, 5.5)
  expect(show(clicks)).toBe('-1.2@0 -1.3@1 0.0@2 0.1@3 0.2@4 0.3@5')
  expect(clicks.map((click) => click.accent)).toEqual([
    'medium',
    'weak',
    'strong',
    'weak',
    'medium',
    'weak',
  ])
  expect(clicks.map((click) => click.countIn)).toEqual([true, true, true, true, false, false])
  expect(firstBeat(beating).at).toBe(4)
})

test('music that begins between two beats is counted from the beat before it', () => {
  const beating = beginBeating(settings({ barOffset: 1.5, perBeat: 2 }), 0)
  expect(show(clicksUntil(beating, 1.1))).toBe('-1.1@0 -1.1@0.5 -1.2@1')
})

test('with two bars sounding and two silent, in turns, every beat is still there, and the count-in sounds', () => {
  const turns = { sounding: 2, silent: 2 }
  const beating = beginBeating(settings({ time: { beats: 2, beatType: 4 }, turns }), 0)
  const clicks = clicksUntil(beating, 14)
  const loud = clicksUntil(beginBeating(settings({ time: { beats: 2, beatType: 4 } }), 0), 14)
  expect(show(clicks)).toBe(show(loud))
  expect(clicks.map(({ silent }) => (silent ? '-' : 'x')).join('')).toBe('xxxxxx----xxxx')
})

test('another pattern leaves every beat where it is', () => {
  const patterns = fc.constantFrom<ClickPattern>(
    {},
    { perBeat: 2 },
    { perBeat: 3 },
    { perBeat: 4, turns: { sounding: 2, silent: 2 } },
  )
  const onBeat = (clicks: readonly Click[]): string =>
    show(clicks.filter(({ accent }) => accent !== 'soft'))
  fc.assert(
    fc.property(
      patterns,
      fc.array(fc.tuple(patterns, fc.double({ min: 0.01, max: 3, noNaN: true })), {
        maxLength: 12,
      }),
      fc.constantFrom(0, 1, 2.5),
      (first, changes, barOffset) => {
        let beating = beginBeating(settings({ ...first, barOffset }), 0)
        let until = 0
        const heard: Click[] = []
        for (const [pattern, after] of changes) {
          const [next, clicks] = planClicks(beating, (until += after))
          heard.push(...clicks)
          beating = changePattern(next, pattern)
          const beat = firstBeat(beating)
          expect(beat.accent).not.toBe('soft')
          expect(Number.isInteger(Math.round(beat.at * 1e9) / 1e9)).toBe(true)
        }
        expect(onBeat(heard)).toBe(
          onBeat(clicksUntil(beginBeating(settings({ barOffset }), 0), until)),
        )
        const times = heard.map(({ at }) => at)
        expect(times).toEqual([...new Set(times)].toSorted((a, b) => a - b))
      },
    ),
  )
})

test('amid a beat the next beat is told, not the click between', () => {
  const [beating] = planClicks(beginBeating(settings({ countInBars: 0, perBeat: 2 }), 0), 2.2)
  expect(nextClick(beating).at).toBe(2.5)
  expect(firstBeat(beating).at).toBe(3)
})
