import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { planTake } from '@/devices/simulatedTake'
import { inferHands } from '@/hands/hands'
import { cutChunk } from '@/music/chunk'
import type { KeyEvent } from '@/music/keyEvent'
import { formatKey, parseKey } from '@/music/pitch'
import { key, ms, quarterMs, tempo, tick } from '@/music/units'
import { grids, quantiseTake, recordedTicks, type Recording } from '@/score/quantiseTake'
import { readPiece } from '@/score/readPiece'
import { writeMidiFile } from '@/score/writeMidiFile'
import { writeRecording } from '@/score/writeRecording'

/** At 60 quarters a minute, the first beat at 10 s: 'C4 0 480' is struck with the beat and held 480 ms. */
const recording = (played: string, more: Partial<Recording> = {}): Recording => ({
  take: {
    events: played
      .split(', ')
      .flatMap((each): KeyEvent[] => {
        const [name = '', at, held] = each.split(' ')
        const k = parseKey(name) ?? key(0)
        const start = 10_000 + Number(at)
        const down: KeyEvent = { kind: 'down', key: k, velocity: 70, at: ms(start) }
        return held === '…' ? [down] : [down, { kind: 'up', key: k, at: ms(start + Number(held)) }]
      })
      .toSorted((a, b) => a.at - b.at),
  },
  firstBeat: ms(10_000),
  end: ms(18_000),
  quarter: ms(1000),
  time: { beats: 4, beatType: 4 },
  grid: 'eighths',
  ...more,
})

/** 'C4 0 1': a quarter on the first beat. */
const written = (of: Recording): string =>
  quantiseTake(of)
    .notes.map(
      ({ key: k, start, length }) =>
        `${formatKey(k)} ${start / recordedTicks} ${length / recordedTicks}`,
    )
    .join(', ')

describe('what is played falls on the grid', () => {
  test.each([
    ['early and late', 'C4 -40 900, D4 1070 800', 'C4 0 1, D4 1 1'],
    ['a chord not quite together', 'C4 240 400, E4 268 400', 'C4 0.5 0.5, E4 0.5 0.5'],
    ['a legato that overlaps', 'C4 0 1150, D4 1000 900', 'C4 0 1, D4 1 1'],
    ['a brief touch is one place long', 'C4 0 30', 'C4 0 0.5'],
    ['a rest between', 'C4 0 480, D4 1500 480', 'C4 0 0.5, D4 1.5 0.5'],
    ['a key struck again is let go before', 'C4 0 495, C4 500 480', 'C4 0 0.5, C4 0.5 0.5'],
    ['twice in one place is one note', 'C4 0 60, C4 120 380', 'C4 0 0.5'],
    ['a long note ends on the bar line', 'C4 0 3700', 'C4 0 4'],
    ['held until the stop', 'C4 4000 …', 'C4 0 4'],
    ['bars of waiting are left out', 'C4 9000 980', 'C4 1 1'],
    ['a pickup', 'G3 -480 480, C4 20 960', 'G3 0.5 0.5, C4 1 1'],
    ['a whole bar of the count-in', 'G3 -4000 980, C4 0 960', 'G3 0 1, C4 4 1'],
  ])('%s', (_what, played, expected) => {
    expect(written(recording(played))).toBe(expected)
  })

  test('in triplets and in sixteenths', () => {
    const played = 'C4 10 300, D4 340 300, E4 660 300'
    expect(quantiseTake(recording(played, { grid: 'triplets' })).notes.map((n) => n.start)).toEqual(
      [0, 160, 320],
    )
    const quick = 'C4 10 240, D4 240 240, E4 510 240'
    expect(written(recording(quick, { grid: 'sixteenths' }))).toBe(
      'C4 0 0.25, D4 0.25 0.25, E4 0.5 0.25',
    )
  })

  test('nothing played gives nothing', () => {
    const none = { ...recording('C4 0 1'), take: { events: [] } }
    expect(quantiseTake(none).notes).toEqual([])
    expect(writeRecording(none, 'right', 'x')).toBeUndefined()
  })
})

describe('as a piece', () => {
  const read = (of: Recording, hand: 'left' | 'right' | 'both') => {
    const piece = readPiece(writeRecording(of, hand, 'Hum') ?? new Uint8Array(), 'x.mid')
    if (!piece.ok) throw new Error(piece.reason.kind)
    return inferHands(piece.value.score)
  }

  test('it keeps title, time, tempo and hand, and begins with its pickup', () => {
    const score = read(
      recording('G3 -980 960, C4 0 2900', { time: { beats: 3, beatType: 4 } }),
      'left',
    )
    expect(score.title).toBe('Hum')
    expect(score.bars.map(({ number, length, time }) => [number, length, time.beats])).toEqual([
      [0, 480, 3],
      [1, 1440, 3],
    ])
    expect(score.tempos).toEqual([{ start: 0, tempo: 60 }])
    expect(score.notes.map(({ hand, handFrom }) => `${hand} ${handFrom}`)).toEqual([
      'left file',
      'left file',
    ])
  })

  test('of both hands it is inferred which plays what', () => {
    const score = read(recording('C3 0 960, C5 0 960, E3 1000 960, D5 1000 960'), 'both')
    expect(score.notes.map(({ hand, handFrom }) => `${hand} ${handFrom}`)).toEqual([
      'left inferred',
      'right inferred',
      'left inferred',
      'right inferred',
    ])
  })
})

/**
 * A line in steps of the grid: chords, each as long as until the next or, after a rest, up to four
 * steps, where a person's own unevenness leaves no doubt.
 */
const line = fc.array(
  fc.record({
    keys: fc.uniqueArray(fc.integer({ min: 40, max: 90 }), { minLength: 1, maxLength: 3 }),
    length: fc.integer({ min: 1, max: 4 }),
    rest: fc.constantFrom(0, 0, 0, 1, 2),
  }),
  { minLength: 1, maxLength: 24 },
)

test('what the simulated player plays from a score on the grid gives the same notes back', () => {
  fc.assert(
    fc.property(
      line,
      fc.constantFrom(...grids),
      fc.integer({ min: 40, max: 110 }),
      fc.nat(10_000),
      (chords, grid, beats, seed) => {
        const step = { eighths: 240, triplets: 160, sixteenths: 120 }[grid]
        let at = 0
        const notes = chords.flatMap(({ keys, length, rest }) => {
          const start = tick(at)
          at += (length + rest) * step
          return keys.map((k) => ({ start, length: tick(length * step), key: key(k) }))
        })
        const file = readPiece(
          writeMidiFile({
            title: 'x',
            ticksPerQuarter: recordedTicks,
            tempos: [],
            times: [],
            keys: [],
            tracks: [{ name: 'right hand', notes }],
          }),
          'x.mid',
        )
        if (!file.ok) throw new Error(file.reason.kind)
        const chunk = cutChunk(file.value.score, tick(0), file.value.score.end, 'both')
        if (!chunk) throw new Error('no chunk')
        const start = ms(5000)
        const take = planTake(chunk, { tempo: tempo(beats), seed, start })
        const back = quantiseTake({
          take,
          firstBeat: start,
          end: ms((take.events.at(-1)?.at ?? 0) + 2000),
          quarter: quarterMs(tempo(beats)),
          time: { beats: 4, beatType: 4 },
          grid,
        })
        const plain = (
          all: readonly { readonly start: number; readonly length: number; readonly key: number }[],
        ): string =>
          all
            .toSorted((a, b) => a.start - b.start || a.key - b.key)
            .map((n) => `${n.key} ${n.start} ${n.length}`)
            .join(', ')
        expect(plain(back.notes)).toBe(plain(notes))
      },
    ),
    { numRuns: 300 },
  )
})

test('any key events at all give notes of positive length from the beginning on', () => {
  const event = fc.record({
    kind: fc.constantFrom('down' as const, 'up' as const),
    key: fc.integer({ min: 21, max: 108 }).map(key),
    velocity: fc.integer({ min: 1, max: 127 }),
    at: fc.double({ min: -4000, max: 60_000, noNaN: true }).map((at) => ms(at)),
  })
  fc.assert(
    fc.property(fc.array(event), fc.constantFrom(...grids), (events, grid) => {
      const take = { events: events.toSorted((a, b) => a.at - b.at) }
      const { notes, pickup } = quantiseTake({
        ...recording('C4 0 1'),
        take,
        grid,
        firstBeat: ms(0),
      })
      expect(notes.every((n) => n.start >= 0 && n.length > 0)).toBe(true)
      expect(pickup).toBeGreaterThanOrEqual(0)
      expect(notes.length > 0).toBe(events.some((e) => e.kind === 'down'))
    }),
  )
})
