import { describe, expect, test } from 'vitest'
import { buildUp, type BuildUpOptions, type Exercise } from '@/exercises/buildUp'
import { demands } from '@/exercises/demands'
import { positionChangesOf } from '@/exercises/positions'
import type { Finger, Note, Score } from '@/music/music'
import { tick } from '@/music/units'
import { buildUpText, nameExercise } from '@/text/buildUp'
import { writeScore } from '../music/writeScore'
import { wholeOf } from './notation'

type Choices = Partial<BuildUpOptions> & { readonly from?: number; readonly to?: number }

const build = (score: Score, { from = 0, to, ...options }: Choices = {}): readonly Exercise[] =>
  buildUp(
    score,
    { from: tick(from * 480), to: to === undefined ? score.end : tick(to * 480) },
    { hand: 'both', thoroughness: 'thorough', direction: 'forward', ...options },
  )

/** Onsets by letters in the order of the hand's own: 'right abc' is its first three; '/' parts the stages. */
const show = (score: Score, choices: Choices = {}): string => {
  const all = build(score, choices)
  const named = all.map((exercise) => {
    const { hand, from, to, form } = exercise
    const starts = wholeOf(score, hand).onsets.map((o) => o.start + wholeOf(score, hand).start)
    const letters = starts
      .map((start, i) => (start >= from && start <= to ? String.fromCharCode(97 + i) : ''))
      .join('')
    return `${hand[0]}:${letters}${form === 'asWritten' ? '' : `~${form}`}`
  })
  return named
    .map((name, i) => (i > 0 && all[i]?.stage !== all[i - 1]?.stage ? `/ ${name}` : name))
    .join(' ')
}

const quarters = (names: string): Score => writeScore({ right: names })

/** The digits of the notes in the order of the score. */
const withFingers = (notes: readonly Note[], digits: string): readonly Note[] =>
  notes.map((note, i) => ({ ...note, fingers: [Number(digits[i]) as Finger] }))

describe('one hand', () => {
  test.each([
    ['one note', 'C5', 'b:a'],
    ['two notes', 'C5 D5', 'b:ab'],
    ['three: there are but two groups with each transition', 'C5 D5 E5', 'b:ab b:bc / b:abc'],
    ['four', 'C5 D5 E5 F5', 'b:ab b:cd / b:abc b:bcd / b:abcd'],
    ['five', 'C5 D5 E5 F5 G5', 'b:abc b:cde / b:abcd b:bcde / b:abcde'],
    [
      'nine: two groups of five that share a note on the bar line, and a bridge',
      'C5 D5 E5 F5 G5 F5 E5 D5 C5',
      'b:abc b:cde b:efg b:ghi / b:abcd b:bcde b:efgh b:fghi / b:abcde b:efghi / b:cdefg / b:abcdefghi',
    ],
  ])('%s', (_, names, expected) => {
    expect(show(quarters(names))).toBe(expected)
  })

  test('brisk has the groups, bridges and the whole', () => {
    expect(show(quarters('C5 D5 E5 F5 G5 F5 E5 D5 C5'), { thoroughness: 'brisk' })).toBe(
      'b:abcde b:efghi / b:cdefg / b:abcdefghi',
    )
  })

  test('from the end', () => {
    expect(
      show(quarters('C5 D5 E5 F5 G5 F5 E5 D5 C5'), {
        thoroughness: 'brisk',
        direction: 'fromTheEnd',
      }),
    ).toBe('b:efghi b:abcde / b:cdefg / b:abcdefghi')
  })

  test('thirteen: pairs overlap', () => {
    const all = show(quarters('C5 D5 E5 F5 G5 F5 E5 D5 C5 D5 E5 F5 G5'))
    expect(all.split(' / ').slice(2)).toEqual([
      'b:abcde b:efghi b:ijklm',
      'b:cdefg b:ghijk',
      'b:abcdefghi b:efghijklm',
      'b:abcdefghijklm',
    ])
  })

  test('sixty-four sixteenths: groups end on the beats, four and eight of them are sections', () => {
    const all = build(writeScore({ right: Array(64).fill('C5:1/4').join(' ') }), { hand: 'right' })
    const groups = all.filter(({ what, size }) => what === 'group' && size === 5)
    expect(groups.map(({ to }) => to % 480)).toEqual(Array(groups.length).fill(0))
    expect(groups.length).toBe(15)
    const sizes = all.filter(({ what }) => what === 'section').map(({ size }) => size)
    expect(sizes).toEqual([17, 17, 17, 16, 33, 32])
    expect(all.length).toBeLessThan(120)
  })

  test('a run is also played in rhythms before the whole, a broken chord blocked', () => {
    const run = writeScore({ right: 'C5:1/4 E5:1/4 G5:1/4 C6:1/4 F5' })
    expect(show(run).split(' / ').slice(-2)).toEqual([
      'b:abcde~blocked b:abcde~longShort b:abcde~shortLong',
      'b:abcde',
    ])
    expect(show(run, { thoroughness: 'brisk' })).not.toContain('~')
  })

  test('the borders fall where the hand changes its position', () => {
    const score = quarters('C5 D5 E5 F5 G5 F5 E5 D5 C5')
    const positionChanges = { right: [tick(3 * 480)] }
    const brisk = { hand: 'right', thoroughness: 'brisk', positionChanges } as const
    expect(show(score, brisk)).toBe('r:abcd r:defg r:ghi / r:bcdef r:efghi / r:abcdefghi')
  })

  test('the fingers in the score tell where that is', () => {
    const plain = quarters('C5 D5 E5 F5 G5 F5 E5 D5 C5')
    const score = { ...plain, notes: withFingers(plain.notes, '123121321') }
    const brisk = { hand: 'right', thoroughness: 'brisk' } as const
    const { right = [], left } = positionChangesOf(score)
    expect([right.map((at) => at / 480), left]).toEqual([[3, 6], []])
    expect(show(score, brisk)).toBe(show(score, { ...brisk, positionChanges: { right } }))
    expect(show(score, brisk)).not.toBe(show(plain, brisk))
  })

  // Common practice, no source: the fingers of a scale in the left hand, down and up again.
  test('in the left hand a rising finger number goes down the keys', () => {
    const plain = writeScore({ left: 'C4 B3 A3 G3 F3 E3 F3 G3 A3' })
    const changes = (digits: string) =>
      positionChangesOf({ ...plain, notes: withFingers(plain.notes, digits) }).left?.map(
        (at) => at / 480,
      )
    expect(changes('123123213')).toEqual([3, 8])
    expect(changes('123453212')).toEqual([5, 8])
  })

  test('one finger on the same key again is no move, and a chord says nothing', () => {
    const plain = writeScore({ right: 'C5 C5 D5+F5 E5 E5' })
    const notes = withFingers(plain.notes, '113511')
    expect(positionChangesOf({ ...plain, notes }).right).toEqual([])
  })

  test('a stretch within the piece', () => {
    expect(show(quarters('C5 D5 E5 F5 G5 F5 E5 D5 C5'), { from: 2, to: 5 })).toBe(
      'b:cd b:de / b:cde',
    )
  })
})

describe('both hands', () => {
  test('right, left, and both as soon as each has been there, stage by stage', () => {
    const score = writeScore({ right: 'C5 D5 E5 F5 G5', left: 'C3 D3 E3 F3 G3' })
    expect(show(score)).toBe(
      'r:abc l:abc b:abc r:cde l:cde b:cde / r:abcd l:abcd r:bcde l:bcde b:abcd b:bcde / r:abcde l:abcde / b:abcde',
    )
  })

  test('a left hand of two notes is a group of two first', () => {
    const score = writeScore({ right: 'C5 D5 E5', left: 'C3:2 G3' })
    expect(show(score)).toBe('r:ab l:ab b:ab r:bc b:bc / r:abc / b:abc')
  })

  test('where one hand rests, nothing is practised together', () => {
    const score = writeScore({ right: 'C5 D5 E5 F5 G5 A5 B5 C6 D6', left: 'r:4 r:3 C3 G3' })
    const together = build(score).filter(({ hand }) => hand === 'both')
    expect(together.every(({ to }) => to >= 7 * 480)).toBe(true)
    expect(together.length).toBeGreaterThan(0)
  })

  test('a hand that rests throughout is left out, one with a single note is not practised alone', () => {
    expect(show(quarters('C5 D5 E5'), { hand: 'both' })).not.toMatch(/[rl]:/)
    const single = writeScore({ right: 'C5 D5 E5', left: 'C3' })
    expect(show(single)).not.toContain('l:')
    expect(show(single)).toMatch(/b:abc$/)
  })

  test('brisk leaves bridges to both hands, but where the other hand rests', () => {
    const right = 'C5 D5 E5 F5 G5 A5 B5 C6 D6 C6 B5 A5 G5'
    const score = writeScore({ right, left: 'C3 D3 E3 F3 G3' })
    const bridges = show(score, { thoroughness: 'brisk' }).split(' / ')[1]
    expect(bridges).toBe('b:cdefg r:ghijk')
  })

  test('brisk, all in a row', () => {
    const line = (octave: number): string =>
      'C D E F G F E D C'.replace(/\w/g, (letter) => letter + octave)
    const score = writeScore({ right: line(5), left: line(3) })
    expect(show(score, { thoroughness: 'brisk' })).toBe(
      'r:abcde l:abcde b:abcde r:efghi l:efghi b:efghi / b:cdefg / r:abcdefghi l:abcdefghi b:abcdefghi',
    )
  })
})

test('without notes there is nothing to build', () => {
  expect(build(quarters('C5 D5'), { hand: 'left' })).toEqual([])
})

test('each says what it is and why, and the last asks for the goal tempo', () => {
  const all = build(writeScore({ right: 'C5 D5 E5 F5 G5', left: 'C3 D3 E3 F3 G3' }))
  const told = all.map((each) => `${nameExercise(each)}: ${buildUpText.purposes[each.why]}`)
  expect([told[0], told[2], told.at(-2), told.at(-1)]).toEqual([
    'group of 3: So few notes can be right at once.',
    'group of 3: Each hand knows it: now together.',
    'group of 5: So few notes can be right at once.',
    'whole: The whole passage, up to the goal tempo.',
  ])
  expect(all.at(-1)?.reach).toBe(1)
})

test('what is larger asks for no less, and no tempo to begin with is above the one to reach', () => {
  const growing = ['group', 'bridge', 'pair', 'section', 'wholeOfOneHand', 'whole'] as const
  const reaches = growing.map((what) => demands[what].reach)
  expect(reaches).toEqual(reaches.toSorted((a, b) => a - b))
  for (const { begin, reach, streakGoal } of Object.values(demands)) {
    expect(begin).toBeLessThanOrEqual(reach)
    expect(streakGoal).toBeGreaterThanOrEqual(3)
  }
})
