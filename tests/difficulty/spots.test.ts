import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { assessDifficulty, type HardSpot } from '@/difficulty/difficulty'
import type { Score } from '@/music/music'
import { key, noteId, tempo, tick } from '@/music/units'
import { readPiece } from '@/score/readPiece'
import { tellReason } from '@/text/spots'
import listed from '@samples/samples.json'
import { writeScore } from '../music/writeScore'

const at96 = [{ start: tick(0), tempo: tempo(96) }]
const calm = { right: 'C5 D5 E5 D5', left: 'C3:2 G3:2' }

/** Eight calm bars of 4/4 with others in the place of bars 4 and 5. */
const plant = (bars: { readonly right?: string; readonly left?: string }): Score => {
  const hand = (side: 'right' | 'left'): string =>
    Array.from({ length: 8 }, (_, i) =>
      i === 3 || i === 4 ? (bars[side] ?? calm[side]) : calm[side],
    ).join(' ')
  return writeScore({ right: hand('right'), left: hand('left'), tempos: at96 })
}
const bars = ({ from, to }: HardSpot): string => `${from / 1920 + 1} to ${to / 1920}`
const hardest = (score: Score): HardSpot => {
  const [first] = assessDifficulty(score).spots
  if (!first) throw new Error('there is a hard spot')
  return first
}

const run =
  'C5:1/4 D5:1/4 E5:1/4 F5:1/4 G5:1/4 A5:1/4 B5:1/4 C6:1/4 B5:1/4 A5:1/4 G5:1/4 F5:1/4 E5:1/4 D5:1/4 C5:1/4 B4:1/4'
const triplets =
  'C5:1/3 E5:1/3 G5:1/3 C5:1/3 E5:1/3 G5:1/3 C5:1/3 E5:1/3 G5:1/3 C5:1/3 E5:1/3 G5:1/3'
const eighths = 'C3:1/2 G3:1/2 C3:1/2 G3:1/2 C3:1/2 G3:1/2 C3:1/2 G3:1/2'

const samples = listed.map(({ file }) => {
  const piece = readPiece(new Uint8Array(readFileSync(`sample-midi/${file}`)), file)
  if (!piece.ok) throw new Error(`${file} cannot be read`)
  return piece.value.score
})

/** What they share is more than half of what they cover. */
const isSamePlace = (one: HardSpot, other: HardSpot): boolean => {
  const shared = Math.min(one.to, other.to) - Math.max(one.from, other.from)
  const covered = Math.max(one.to, other.to) - Math.min(one.from, other.from)
  return one.hand === other.hand && 2 * shared > covered
}

describe('a hard spot', () => {
  test.each([
    ['a run', { right: run }, 'right', /^fast: 6\.4 onsets a second$/],
    [
      'leaps',
      { left: 'C2:1/2 C4:1/2 C2:1/2 C4:1/2 C2:1/2 C4:1/2 C2:1/2 C4:1/2' },
      'left',
      /^leaps: up to two octaves$/,
    ],
    ['three against two', { right: triplets, left: eighths }, 'both', /^3 against 2$/],
    [
      'chords',
      {
        right:
          'C5+E5+G5+C6:1/2 D5+F5+A5+D6:1/2 C5+E5+G5+C6:1/2 D5+F5+A5+D6:1/2 C5+E5+G5+C6:1/2 D5+F5+A5+D6:1/2 C5+E5+G5+C6:1/2 D5+F5+A5+D6:1/2',
      },
      'right',
      /^chords of up to 4 notes in one hand$/,
    ],
    [
      'octaves',
      { right: 'C5+C6:1/2 D5+D6:1/2 E5+E6:1/2 D5+D6:1/2 C5+C6:1/2 D5+D6:1/2 E5+E6:1/2 D5+D6:1/2' },
      'right',
      /^octaves$/,
    ],
    [
      'thirds',
      { right: 'C5+E5:1/2 D5+F5:1/2 E5+G5:1/2 D5+F5:1/2 C5+E5:1/2 D5+F5:1/2 E5+G5:1/2 D5+F5:1/2' },
      'right',
      /^thirds$/,
    ],
    [
      'repeated notes',
      {
        right:
          'C5:1/4 C5:1/4 C5:1/4 C5:1/4 C5:1/4 C5:1/4 C5:1/4 C5:1/4 C5:1/4 C5:1/4 C5:1/4 C5:1/4 C5:1/4 C5:1/4 C5:1/4 C5:1/4',
      },
      'right',
      /^repeated notes$/,
    ],
    ['crossing hands', { right: 'C4 D4 C4 D4', left: 'E5 F5 E5 F5' }, 'both', /^the hands cross$/],
  ] as const)('%s is found in its bars and told', (_, planted, hand, reason) => {
    const spot = hardest(plant(planted))
    // The beat on which the hand lands may belong to it.
    expect(bars(spot)).toMatch(/^4 to 5(\.25)?$/)
    expect(spot.hand).toBe(hand)
    expect(spot.reasons.some((each) => reason.test(tellReason(each)))).toBe(true)
  })

  test('a stretch is one for a small hand, a reach for a large one', () => {
    const tenths = plant({ left: 'C3+C4 D3+D4 C3+C4 D3+D4' })
    const reasons = (span: 'small' | 'large'): string =>
      assessDifficulty(tenths, { span }).spots[0]?.reasons.map(tellReason).join() ?? ''
    expect(reasons('small')).toMatch(/stretches: up to an octave/)
    expect(reasons('large')).not.toMatch(/stretches/)
  })

  test('pieces without notes have none', () => {
    const empty = { ...writeScore({ right: 'C4' }), notes: [] }
    expect(assessDifficulty(empty)).toEqual({
      difficulty: 0,
      uncertainty: 0,
      local: 0,
      length: 1,
      compass: 1,
      signature: 1,
      spots: [],
    })
  })

  test('one note less does not move the hardest spot of a sample', () => {
    const some = fc
      .constantFrom(...samples.slice(0, 4))
      .chain((score) => fc.record({ score: fc.constant(score), i: fc.nat(score.notes.length - 1) }))
    fc.assert(
      fc.property(some, ({ score, i }) => {
        const before = assessDifficulty(score)
        const after = assessDifficulty({ ...score, notes: score.notes.toSpliced(i, 1) })
        const [first] = before.spots
        const again = after.spots.filter(
          (spot) => first && spot.from < first.to && spot.to > first.from,
        )
        expect(again.length).toBeGreaterThan(0)
        expect(Math.abs(after.difficulty - before.difficulty)).toBeLessThan(0.1 * before.difficulty)
      }),
      { numRuns: 60 },
    )
  })

  test('a note less or more loses few of the spots elsewhere, and none of them passes a clearly harder one', () => {
    const change = fc.record({
      s: fc.nat(samples.length - 1),
      place: fc.nat(999),
      isMore: fc.boolean(),
    })
    fc.assert(
      fc.property(change, ({ s, place, isMore }) => {
        const score = samples[s]
        const i = Math.floor(((score?.notes.length ?? 0) * place) / 1000)
        const note = score?.notes[i]
        if (!score || !note) throw new Error('there are so many notes')
        const more = { ...note, id: noteId('one more'), key: key(note.key + 2) }
        const notes = isMore ? score.notes.toSpliced(i + 1, 0, more) : score.notes.toSpliced(i, 1)
        const before = assessDifficulty(score).spots
        const after = assessDifficulty({ ...score, notes }).spots
        // Two quarters around it are what the note itself changes.
        const elsewhere = before.filter(
          ({ from, to }) => note.start < from - 960 || note.start > to + 960,
        )
        const again = elsewhere.flatMap((spot) => {
          const twin = after.find((other) => isSamePlace(spot, other))
          return twin ? [[spot.difficulty, twin.difficulty] as const] : []
        })
        expect(again.length).toBeGreaterThanOrEqual(elsewhere.length - 2)
        for (const [was, is] of again)
          for (const [other, otherNow] of again)
            if (was > 1.25 * other) expect(is).toBeGreaterThan(otherNow)
      }),
      { numRuns: 60 },
    )
  })
})
