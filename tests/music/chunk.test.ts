import { expect, test } from 'vitest'
import { beatQuarters } from '@/music/beat'
import { clickGrid, countNotes, cutChunk, type Chunk } from '@/music/chunk'
import type { HandChoice, Note, Score } from '@/music/music'
import { formatKey } from '@/music/pitch'
import { tick } from '@/music/units'
import { writeScore } from './writeScore'

const cut = (score: Score, hand: HandChoice = 'both', from = 0, to: number = score.end): Chunk => {
  const chunk = cutChunk(score, tick(from * 480), tick(to * 480), hand)
  if (!chunk) throw new Error('no chunk')
  return chunk
}

/** '0:C4+E4' is a chord at the chunk's start; keys in brackets are allowed, not demanded. */
const show = (chunk: Chunk): string =>
  chunk.onsets
    .map((o) => {
      const keys = o.notes.map((n) => formatKey(n.key)).join('+')
      const aside =
        o.auxiliaries.length > 0 ? `(${o.auxiliaries.map((k) => formatKey(k)).join('+')})` : ''
      return `${o.start / 480}:${keys}${aside}`
    })
    .join(' ')

const two = writeScore({ right: 'C5 D5:1/2 E5:1/2 F5+A5 G5', left: 'C3:2 G2:2' })

test.each([
  ['both', 0, 4, '0:C3+C5 1:D5 1.5:E5 2:G2+F5+A5 3:G5'],
  ['right', 0, 4, '0:C5 1:D5 1.5:E5 2:F5+A5 3:G5'],
  ['left', 0, 4, '0:C3 2:G2'],
  ['both', 1, 3, '0:D5 0.5:E5 1:G2+F5+A5'],
  ['left', 1, 4, '0:G2'],
] as const)('of %s from quarter %i to %i: %s', (hand, from, to, expected) => {
  expect(show(cut(two, hand, from, to))).toBe(expected)
})

test('a chunk knows where it stands in the score and in its bar', () => {
  const score = writeScore({ right: 'C5 D5 E5 F5 G5', time: [3, 4] })
  expect(cut(score, 'right', 4, 5)).toMatchObject({
    start: 1920,
    end: 2400,
    barOffset: 480,
    barLength: 1440,
    beat: 480,
  })
})

test('a pickup is the end of a whole bar', () => {
  const score = writeScore({ right: 'G4:1/2 C5 D5 E5', time: [3, 4], pickup: 0.5 })
  expect(cut(score, 'right')).toMatchObject({ start: 0, barOffset: 1200, barLength: 1440 })
  expect(cut(score, 'right', 0.5)).toMatchObject({ start: 240, barOffset: 0, barLength: 1440 })
})

test.each([
  [[4, 4], 480, 3 * 480, 480, 0],
  [[4, 4], 480, 2.5 * 480, 480, 240],
  [[6, 8], 480, 2 * 480, 720, 240],
  [[3, 8], 480, 240, 240, 0],
  [[2, 2], 480, 480, 960, 480],
] as const)(
  'in %j, %i ticks a quarter, %i after the bar line: clicks come each %i, the last %i before',
  ([beats, beatType], ticksPerQuarter, barOffset, beat, behind) => {
    const counted = tick(beatQuarters({ beats, beatType }) * ticksPerQuarter)
    expect(clickGrid({ ticksPerQuarter, barOffset: tick(barOffset), beat: counted })).toEqual({
      beat,
      behind,
    })
  },
)

test('where no note starts there is no chunk', () => {
  expect(cutChunk(two, tick(100), tick(400), 'both')).toBe(undefined)
})

test('a unison of both hands is one key with two ids, as long as the longer', () => {
  const chunk = cut(writeScore({ right: 'C4', left: 'C4:2' }))
  expect(countNotes(chunk)).toBe(1)
  expect(chunk.onsets[0]?.notes[0]).toMatchObject({ ids: ['n0k60', 'n0k60b'], length: 960 })
})

test('grace notes are not demanded, but allowed at the onset that they lead to', () => {
  expect(show(cut(writeScore({ right: 'C5 (C#5) D5 E5' })))).toBe('0:C5 1:D5(C#5) 2:E5')
})

test('a grace note with a place of its own belongs to the onset after it', () => {
  const score = writeScore({ right: 'C5 D5 E5' })
  const grace: Note = {
    ...noteAt(score, 1),
    start: tick(470),
    grace: true,
    key: noteAt(score, 0).key,
  }
  const notes = [noteAt(score, 0), grace, noteAt(score, 1), noteAt(score, 2)]
  expect(show(cut({ ...score, notes }))).toBe('0:C5 1:D5(C5) 2:E5')
})

test('a trill allows the keys up to a whole tone to either side', () => {
  const score = writeScore({ right: 'C5 D5' })
  const notes = [{ ...noteAt(score, 0), ornament: 'trill' as const }, noteAt(score, 1)]
  expect(show(cut({ ...score, notes }))).toBe('0:C5(A#4+B4+C5+C#5+D5) 1:D5')
})

test('a tremolo of two onsets goes to and fro: each allows the keys of the other', () => {
  const score = writeScore({ right: 'C4 G4 C5' })
  const notes = [0, 1, 2].map((i) => noteAt(score, i))
  const [first, second, last] = notes
  const tremolo = (note: Note | undefined): Note[] =>
    note ? [{ ...note, ornament: 'tremolo' as const }] : []
  const chunk = cut({
    ...score,
    notes: [...tremolo(first), ...tremolo(second), ...(last ? [last] : [])],
  })
  expect(chunk.onsets.map((o) => o.auxiliaries.map((k) => formatKey(k)).join(' '))).toEqual([
    'A#3 B3 C4 C#4 D4 G4',
    'C4 F4 F#4 G4 G#4 A4',
    '',
  ])
})

test('a trill in one hand of a unison stays a trill', () => {
  const score = writeScore({ right: 'C4', left: 'C4' })
  const notes = [{ ...noteAt(score, 0), ornament: 'trill' as const }, noteAt(score, 1)]
  expect(cut({ ...score, notes }).onsets[0]?.notes[0]?.ornament).toBe('trill')
})

test('one rolled note makes the chord a rolled one', () => {
  const score = writeScore({ right: 'C4+E4+G4 C4' })
  const notes = score.notes.map((n, i) => (i === 1 ? { ...n, rolled: true as const } : n))
  expect(cut({ ...score, notes }).onsets.map((o) => o.rolled)).toEqual([true, false])
})

test('the same place of the same piece has the same id at any resolution, and each hand its own', () => {
  const at = (ticksPerQuarter: number, hand: HandChoice): string | undefined => {
    const score = writeScore({ right: 'C5 D5 E5 F5', left: 'C3 D3 E3 F3', ticksPerQuarter })
    return cutChunk(score, tick(ticksPerQuarter), tick(3 * ticksPerQuarter), hand)?.id
  }
  expect(at(96, 'both')).toBe(at(480, 'both'))
  expect(new Set([at(96, 'both'), at(96, 'left'), at(96, 'right')]).size).toBe(3)
})

const noteAt = (score: Score, index: number): Note => {
  const note = score.notes[index]
  if (!note) throw new Error('no such note')
  return note
}
