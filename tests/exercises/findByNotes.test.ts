import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { emptySearch, findByNotes, searchStep, type Answer } from '@/exercises/findByNotes'
import type { HandChoice } from '@/music/music'
import { parseKey } from '@/music/pitch'
import { key, ms, type Key } from '@/music/units'
import { writeScore } from '../music/writeScore'

/** Two bars alike, a third that differs; chords below. */
const score = writeScore({
  right: 'C5 D5 E5 F5 C5 D5 E5 G5 E5 E5 F5 E5',
  left: 'C3+E3+G3:4 D3+F3:4 r:4',
})

const keysOf = (names: string): Key[] =>
  names.split(' ').map((name) => {
    const found = parseKey(name)
    if (found === undefined) throw new Error(name)
    return found
  })

/** In quarters: '0-2 4-6'. */
const found = (names: string, hand: HandChoice = 'right'): string =>
  findByNotes(score, hand, keysOf(names))
    .map(({ from, to }) => `${from / 480}-${to / 480}`)
    .join(' ')

describe('notes are found', () => {
  test.each([
    ['C5 D5 E5', 'right', '0-2 4-6'],
    ['C5 D5 E5 F5', 'right', '0-3'],
    ['D5 E5 G5', 'right', '5-7'],
    ['C5 E5 G5', 'right', ''],
    ['E5 E5 F5', 'right', '8-10'],
    ['C5 D5', 'right', ''],
    ['C5 D5 E5', 'left', ''],
    // A chord in any order, and on to the next one.
    ['G3 C3 E3', 'left', '0-0'],
    ['C3 E3 G3 D3', 'left', '0-4'],
    // A key of either hand belongs to an onset of both.
    ['C3 C5 D5', 'both', '0-1'],
  ] as const)('%s, %s hand: %s', (names, hand, places) => {
    expect(found(names, hand)).toBe(places)
  })

  test('wherever one begins in a piece, its next notes are found there', () => {
    const line = score.notes.filter((note) => note.hand === 'right')
    fc.assert(
      fc.property(fc.nat(line.length - 3), fc.integer({ min: 3, max: 6 }), (from, count) => {
        const played = line.slice(from, from + count)
        const places = findByNotes(
          score,
          'right',
          played.map((n) => n.key),
        )
        expect(places.map((place) => place.from)).toContain(played[0]?.start)
      }),
    )
  })
})

/** What each key answers; '|' is a pause of two seconds. '1/2@4' is the first of two places, at quarter 4. */
const search = (played: string): string => {
  let state = emptySearch
  let at = 0
  return played
    .split(' ')
    .flatMap((word) => {
      if (word === '|') {
        at += 2000
        return []
      }
      at += 200
      let answer: Answer | undefined
      ;[state, answer] = searchStep(
        state,
        { key: keysOf(word)[0] ?? key(0), at: ms(at) },
        score,
        'right',
      )
      return answer ? [`${answer.place}/${answer.places}@${answer.found.from / 480}`] : ['-']
    })
    .join(' ')
}

describe('playing searches', () => {
  test.each([
    ['the third note names the first place', 'C5 D5 E5', '- - 1/2@0'],
    ['a fourth may tell which', 'C5 D5 E5 G5', '- - 1/2@0 1/1@4'],
    [
      'the same again is the next place, then the first',
      'C5 D5 E5 | C5 D5 E5 | C5 D5 E5',
      '- - 1/2@0 - - 2/2@4 - - 1/2@0',
    ],
    ['again without a pause', 'C5 D5 E5 C5 D5 E5', '- - 1/2@0 - - 2/2@4'],
    ['other notes begin anew', 'C5 D5 E5 | E5 E5 F5', '- - 1/2@0 - - 1/1@8'],
    ['what is not there moves nothing', 'C5 C#5 D5 D#5', '- - - -'],
  ])('%s', (_, played, answers) => {
    expect(search(played)).toBe(answers)
  })
})
