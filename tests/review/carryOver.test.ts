import { expect, test } from 'vitest'
import { carryEvents, compareEditions } from '@/review/carryOver'
import type { JournalEvent } from '@/journal/journal'
import { cutBars } from '@/music/cutBars'
import type { HandChoice, Score } from '@/music/music'
import { placeOf } from '@/music/place'
import { chunkId, pieceId } from '@/music/units'
import { parseTypedMusic } from '@/score/parseTypedMusic'
import { scoreTyped } from '@/score/readTypedPiece'
import { readPiece } from '@/score/readPiece'
import { writeScore } from '@/score/writeMidiFile'

const edition = (text: string): Score => {
  const music = parseTypedMusic(text)
  const piece = music.ok ? scoreTyped(music.value, 'x') : music
  if (!piece.ok) throw new Error(JSON.stringify(piece.reason))
  return piece.value.score
}

/** A drill of some bars, and one repetition of it; cast, since nothing else of the events matters here. */
const drilled = (score: Score, bar: number, hand: HandChoice): readonly JournalEvent[] => {
  const chunk = cutBars(score, bar, bar, hand)
  if (!chunk) throw new Error('no notes there')
  const named = { piece: score.id, chunk: chunk.id }
  return [
    { kind: 'drillBegun', ...named, place: placeOf(chunk) },
    { kind: 'repetition', ...named },
  ] as unknown as readonly JournalEvent[]
}

const old = edition('right: C4 D4 E4 F4 | G4 A4 B4 C5\nleft: C3:4 | E3:4')
const practised = [
  ...drilled(old, 1, 'right'),
  ...drilled(old, 2, 'right'),
  ...drilled(old, 2, 'left'),
  ...drilled(old, 1, 'both'),
]
/** Which chunks carry over, by their places and hands. */
const carriedTo = (better: Score): string => {
  const { practised: n, carried } = compareEditions(practised, old, better)
  return `${n}: ${carried.map(({ to }) => to.slice(better.id.length + 1)).join(' ')}`
}

test.each([
  [
    'the same music',
    'right: C4 D4 E4 F4 | G4 A4 B4 C5\nleft: C3:4 | E3:4',
    '4: 0-3:right 4-7:right 4-4:left 0-3:both',
  ],
  [
    'another note in bar 2',
    'right: C4 D4 E4 F4 | G4 A4 Bb4 C5\nleft: C3:4 | E3:4',
    '4: 0-3:right 4-4:left 0-3:both',
  ],
  [
    'a shorter note',
    'right: C4 D4 E4 F4:1/2 r | G4:1 A4 B4 C5\nleft: C3:4 | E3:4',
    '4: 0-3:right 4-7:right 4-4:left 0-3:both',
  ],
  [
    'another note in the left hand',
    'right: C4 D4 E4 F4 | G4 A4 B4 C5\nleft: A2:4 | E3:4',
    '4: 0-3:right 4-7:right 4-4:left',
  ],
  ['the hands exchanged', 'left: C4 D4 E4 F4 | G4 A4 B4 C5\nright: C3:4 | E3:4', '4: 0-3:both'],
  [
    'another rhythm',
    'right: C4:3/2 D4:1/2 E4:1 F4 | G4 A4 B4 C5\nleft: C3:4 | E3:4',
    '4: 4-7:right 4-4:left',
  ],
  ['a bar later', 'right: r:4 C4:1 D4 E4 F4 G4 A4 B4 C5', '4: '],
  [
    'a note more in a chord',
    'right: C4 D4 E4 [F4 A4] | G4 A4 B4 C5\nleft: C3:4 | E3:4',
    '4: 4-7:right 4-4:left',
  ],
])('of a better edition with %s', (_what, text, expected) => {
  expect(carriedTo(edition(text))).toBe(expected)
})

test('the same music at another resolution agrees throughout', () => {
  const file = readPiece(writeScore({ ...old, ticksPerQuarter: old.ticksPerQuarter }), 'x.mid')
  const coarse = readPiece(writeScore(atResolution(old, 480)), 'x.mid')
  if (!file.ok || !coarse.ok) throw new Error('unreadable')
  expect(coarse.value.score.ticksPerQuarter).toBe(480)
  expect(compareEditions(practised, old, coarse.value.score).carried).toHaveLength(4)
})

/** The score in other ticks. */
const atResolution = (score: Score, ticksPerQuarter: number): Score => {
  const change = <T>(value: T): T =>
    JSON.parse(
      JSON.stringify(value, (name, v: unknown) =>
        typeof v === 'number' && ['start', 'length', 'end'].includes(name)
          ? (v * ticksPerQuarter) / score.ticksPerQuarter
          : v,
      ),
    ) as T
  return { ...change(score), ticksPerQuarter }
}

test('what was begun and never played is not counted', () => {
  const begun = practised.filter((event) => event.kind === 'drillBegun')
  expect(compareEditions(begun, old, old)).toEqual({ practised: 0, carried: [] })
})

test('events of carried chunks become those of the better edition; all others stay', () => {
  const [first] = practised
  const from = first && 'chunk' in first ? first.chunk : chunkId('')
  const to = chunkId('p2:0-3:right')
  const carried = carryEvents(practised, [{ from, to }], pieceId('p2'))
  expect(
    carried.filter((event) => 'chunk' in event && event.chunk === to && event.piece === 'p2'),
  ).toHaveLength(2)
  expect(carried.slice(2)).toEqual(practised.slice(2))
})
