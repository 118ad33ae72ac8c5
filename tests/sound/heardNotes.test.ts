import { describe, expect, test } from 'vitest'
import type { KeyEvent } from '@/music/keyEvent'
import { key, ms, tempo } from '@/music/units'
import { planHearing, planTake } from '@/sound/heardNotes'
import { writeChunk } from '../support/chunks'

const show = (text: string, quarters: number): string =>
  planHearing(writeChunk(text), tempo(quarters))
    .map((note) => `${note.key}@${note.at}+${Math.round(note.length * 1000) / 1000}`)
    .join(' ')

test.each([
  ['C4 D4 E4:2', 60, '60@0+1 62@1+1 64@2+2'],
  ['C4 D4 E4:2', 120, '60@0+0.5 62@0.5+0.5 64@1+1'],
  ['C4+E4+G4:1/2 C5:1/2', 60, '60@0+0.5 64@0+0.5 67@0+0.5 72@0.5+0.5'],
])('%s at %d is heard as %s', (text, quarters, notes) => {
  expect(show(text, quarters)).toBe(notes)
})

test('a key that is struck again is let go a moment before', () => {
  expect(show('C4 C4 D4', 60)).toBe('60@0+0.97 60@1+1 62@2+1')
  expect(show('C4:1/32 C4', 60)).toBe('60@0+0.016 60@0.03125+1')
})

test('the top note of a chord is louder than the others', () => {
  const [low = 0, middle = 0, top = 0] = planHearing(writeChunk('C4+E4+G4'), tempo(60)).map(
    (note) => note.velocity,
  )
  expect(low).toBe(middle)
  expect(top).toBeGreaterThan(middle)
})

describe('a take is heard as it was played', () => {
  /** '60@500v90 60^700 P800 p900': key down with its velocity, key up, damper pedal down, up; milliseconds. */
  const eventOf = (word: string): KeyEvent => {
    const [, number = '', sign = '', at = '', velocity = '64'] =
      /^(\d*)([@^Pp])(\d+)(?:v(\d+))?$/.exec(word) ?? []
    const when = { at: ms(Number(at)) }
    const struck = { key: key(Number(number)), ...when }
    if (sign === '@') return { kind: 'down', ...struck, velocity: Number(velocity) }
    if (sign === '^') return { kind: 'up', ...struck }
    return { kind: 'pedal', pedal: 'sustain', value: sign === 'P' ? 127 : 0, ...when }
  }
  const showTake = (text: string): string =>
    planTake({ events: text.split(' ').filter(Boolean).map(eventOf) })
      .map(({ key: struck, at, length, velocity }) => `${struck}@${at}+${length}v${velocity}`)
      .join(' ')

  test.each([
    [
      'its own times and velocities, from the first key on',
      '60@500v90 60^700 62@1100v31 62^1350',
      '60@0+0.2v90 62@0.6+0.25v31',
    ],
    ['keys that overlap', '60@0 62@250 60^375 62^500', '60@0+0.375v64 62@0.25+0.25v64'],
    [
      'the damper pedal holds what is let go',
      '60@0 P100 60^250 62@500 62^625 p1000',
      '60@0+1v64 62@0.5+0.5v64',
    ],
    [
      'a key struck again under the pedal begins anew',
      'P0 60@0 60^250 60@500v20 60^750 p1000',
      '60@0+0.5v64 60@0.5+0.5v20',
    ],
    ['a key held beyond the pedal', 'P0 60@0 p250 60^500', '60@0+0.5v64'],
    ['a key that never came up', '60@0', '60@0+1v64'],
    ['nothing', '', ''],
  ])('%s', (_, text, notes) => {
    expect(showTake(text)).toBe(notes)
  })
})
