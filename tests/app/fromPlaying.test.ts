import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { correctByPlaying, type PlayedRecord, type PlayedSpot } from '@/app/fromPlaying'
import type { HardSpot } from '@/difficulty/difficulty'
import { cutChunk } from '@/music/chunk'
import type { HandChoice } from '@/music/music'
import { placeOf } from '@/music/place'
import { tempo, tick } from '@/music/units'
import type { ChunkState } from '@/review/chunkStates'
import { estimateShare } from '@/review/proportion'
import { writeScore } from '../music/writeScore'

const quarters = (pitch: string): string => Array.from({ length: 32 }, () => pitch).join(' ')
const score = writeScore({ right: quarters('C5'), left: quarters('C3') })

const spot = (
  from: number,
  to: number,
  difficulty: number,
  hand: HandChoice = 'right',
): HardSpot => ({
  from: tick(from * 480),
  to: tick(to * 480),
  hand,
  difficulty,
  reasons: [{ kind: 'accidentals' }],
  strains: false,
})

interface Drilled {
  readonly from: number
  readonly to: number
  readonly hand?: HandChoice
  readonly clean: number
  readonly flawed: number
  readonly state?: ChunkState
  readonly form?: 'asWritten' | 'blocked'
  /** By the onset in the chunk: how many flaws of one kind. */
  readonly flaws?: Readonly<Record<number, number>>
}

const recordOf = (...all: readonly Drilled[]): PlayedRecord => {
  const chunks = all.map((drilled) => {
    const { from, to, hand = 'right', form = 'asWritten' } = drilled
    const chunk = cutChunk(score, tick(from * 480), tick(to * 480), hand)
    if (!chunk) throw new Error('there are notes')
    const { clean, flawed, state = 'practised', flaws = {} } = drilled
    const drill = {
      place: { ...placeOf(chunk), fromBar: 1, toBar: 8 },
      form,
      time: { beats: 4, beatType: 4 },
      goalTempo: tempo(100),
    }
    return { chunk, drill, state, tally: { clean, flawed, brokenOff: 0 }, flaws }
  })
  return {
    chunks: chunks.map(({ chunk, ...rest }) => ({ ...rest, chunk: chunk.id })),
    places: chunks.flatMap(({ chunk, flaws }) =>
      Object.entries(flaws).map(([onset, times]) => {
        const note = chunk.onsets[Number(onset)]?.notes[0]
        return {
          chunk: chunk.id,
          onset: Number(onset),
          kind: 'wrong' as const,
          notes: note?.ids ?? [],
          times,
        }
      }),
    ),
  }
}

/** 'right 4-6 15.0 9/20': hand, quarters, difficulty, flawed of how many. */
const told = (spots: readonly PlayedSpot[]): readonly string[] =>
  spots.map(({ from, to, hand, difficulty, played }) => {
    const figures = played ? ` ${played.flawed}/${played.of}` : ''
    return `${hand} ${from / 480}-${to / 480} ${difficulty.toFixed(1)}${figures}`
  })

const two = [spot(4, 8, 20), spot(16, 20, 10)]
const nine = estimateShare(9, 20)?.low ?? NaN

describe('the record corrects the guess', () => {
  test('flaws that pile up in a found spot raise it by the share that is sure', () => {
    const record = recordOf({ from: 14, to: 22, clean: 11, flawed: 9, flaws: { 3: 9 } })
    expect(told(correctByPlaying(score, two, record))).toEqual([
      'right 4-8 20.0',
      `right 16-20 ${(10 * (1 + nine)).toFixed(1)} 9/20`,
    ])
  })
  test('a raised spot comes before one that was harder by the notes alone', () => {
    const close = [spot(4, 8, 11), spot(16, 20, 10)]
    const record = recordOf({ from: 14, to: 22, clean: 11, flawed: 9, flaws: { 3: 9 } })
    expect(told(correctByPlaying(score, close, record))[0]).toMatch(/^right 16-20 12\.\d 9\/20$/)
  })
  test('where none was found there is one, of the beats in which they pile up', () => {
    const record = recordOf({ from: 24, to: 30, clean: 11, flawed: 9, flaws: { 2: 9, 3: 8 } })
    const spots = correctByPlaying(score, two, record)
    expect(told(spots)[1]).toBe(`right 26-28 ${(10 * (1 + nine)).toFixed(1)} 9/20`)
    expect(spots[1]).toMatchObject({ reasons: [] })
  })
  test('a flaw of one hand is none of the other', () => {
    const record = recordOf({ from: 4, to: 8, hand: 'both', clean: 11, flawed: 9, flaws: { 1: 9 } })
    // The first note of each onset is the left hand's.
    expect(told(correctByPlaying(score, two, record))).toEqual([
      'right 4-8 20.0',
      `left 5-6 ${(10 * (1 + nine)).toFixed(1)} 9/20`,
      'right 16-20 10.0',
    ])
  })
  test('drills that meet in a beat count together', () => {
    const record = recordOf(
      { from: 14, to: 22, clean: 6, flawed: 4, flaws: { 3: 4 } },
      { from: 17, to: 19, clean: 5, flawed: 5, flaws: { 0: 5 } },
    )
    expect(told(correctByPlaying(score, two, record))[1]).toMatch(/ 9\/20$/)
  })
  test.each([
    ['all of a handful', { from: 14, to: 22, clean: 0, flawed: 9, flaws: { 3: 9 } }],
    ['two of twelve', { from: 14, to: 22, clean: 10, flawed: 2, flaws: { 3: 2 } }],
    [
      'what is the same everywhere',
      { from: 14, to: 18, clean: 10, flawed: 10, flaws: { 0: 6, 1: 6, 2: 6, 3: 6 } },
    ],
    [
      'what is secure by now',
      { from: 14, to: 22, clean: 11, flawed: 9, flaws: { 3: 9 }, state: 'secure' },
    ],
    [
      'what was played as chords',
      { from: 14, to: 22, clean: 11, flawed: 9, flaws: { 3: 9 }, form: 'blocked' },
    ],
    ['an empty record', { from: 14, to: 22, clean: 0, flawed: 0 }],
  ] as const)('%s changes nothing', (_, drilled) => {
    expect(correctByPlaying(score, two, recordOf(drilled))).toEqual(two)
  })
  test('they pile up where the rest of what was played goes better, be it one beat beside another', () => {
    const record = recordOf({ from: 16, to: 18, clean: 11, flawed: 9, flaws: { 0: 9 } })
    expect(told(correctByPlaying(score, two, record))[1]).toMatch(/^right 16-20 .* 9\/20$/)
  })
  test('in a piece without found spots the record alone makes one', () => {
    const record = recordOf({ from: 14, to: 22, clean: 11, flawed: 9, flaws: { 3: 9 } })
    expect(told(correctByPlaying(score, [], record))).toEqual([
      `right 17-18 ${(1 + nine).toFixed(1)} 9/20`,
    ])
  })

  test('no record ever makes a spot easier or takes one away, and more flaws never lower it', () => {
    const onset = fc.integer({ min: 0, max: 7 })
    const drilled = fc.record({ onset, clean: fc.nat(40), flawed: fc.nat(40), more: fc.nat(10) })
    fc.assert(
      fc.property(drilled, ({ onset: at, clean, flawed, more }) => {
        const play = (times: number): readonly PlayedSpot[] =>
          correctByPlaying(
            score,
            two,
            recordOf({ from: 14, to: 22, clean, flawed: times, flaws: { [at]: times } }),
          )
        const difficultyOf = (spots: readonly PlayedSpot[], { from }: HardSpot): number =>
          spots.find((each) => each.from === from)?.difficulty ?? NaN
        for (const each of two) {
          const once = difficultyOf(play(flawed), each)
          expect(once).toBeGreaterThanOrEqual(each.difficulty)
          expect(difficultyOf(play(flawed + more), each)).toBeGreaterThanOrEqual(once)
        }
      }),
    )
  })
})
