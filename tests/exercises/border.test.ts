import { expect, test } from 'vitest'
import { borderPlace, type BorderPlace } from '@/exercises/border'
import { tick } from '@/music/units'

const places = (
  beats: number,
  beatType: number,
  eighths: number,
  pickup?: number,
): BorderPlace[] => {
  const whole = (beats * 4 * 480) / beatType
  const bar = {
    number: pickup === undefined ? 1 : 0,
    start: tick(960),
    length: tick(pickup ?? whole),
    time: { beats, beatType },
  }
  return Array.from({ length: eighths }, (_, i) => borderPlace(tick(960 + 240 * i), bar, 480))
}

// Beats of simple and compound time: common practice, no source.
test.each([
  [2, 4, 'barLine between halfBar between'],
  [3, 4, 'barLine between beat between beat between'],
  [4, 4, 'barLine between beat between halfBar between beat between'],
  [3, 8, 'barLine beat beat'],
  [6, 8, 'barLine between between halfBar between between'],
  [9, 8, 'barLine between between beat between between beat between between'],
] as const)('in %i/%i the eighths stand at: %s', (beats, beatType, expected) => {
  const words = expected.split(' ')
  expect(places(beats, beatType, words.length)).toEqual(words)
})

test('a pickup of three eighths in 4/4 begins between the beats and has the last beat after one eighth', () => {
  expect(places(4, 4, 3, 720)).toEqual(['between', 'beat', 'between'])
})
