import tonejs from '@tonejs/midi'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { KeyEvent, Take } from '@/music/keyEvent'
import { key, ms, tempo, tick } from '@/music/units'
import { parseMidiFile } from '@/score/midiFile'
import { readPiece } from '@/score/readPiece'
import { readTake } from '@/score/readTake'
import type { PieceRead } from '@/score/score'
import { writeMidiFile, writeScore, writeTake, type MidiContent } from '@/score/writeMidiFile'

const anyNote = fc.record({
  start: fc.nat(20_000).map(tick),
  length: fc.integer({ min: 1, max: 4000 }).map(tick),
  key: fc.integer({ min: 21, max: 108 }).map(key),
  velocity: fc.integer({ min: 1, max: 127 }),
})
/** Notes of which no two on one key overlap, since a file cannot say which of them ends first. */
const anyPart = fc
  .array(anyNote, { minLength: 1, maxLength: 40 })
  .map((notes) =>
    notes.filter((n, i) =>
      notes
        .slice(0, i)
        .every(
          (m) => m.key !== n.key || m.start + m.length <= n.start || n.start + n.length <= m.start,
        ),
    ),
  )
const anyTime = fc.record({
  beats: fc.integer({ min: 1, max: 12 }),
  beatType: fc.constantFrom(1, 2, 4, 8, 16),
})
const anyContent: fc.Arbitrary<MidiContent> = fc.record({
  title: fc.constantFrom('The Mill Race', 'Été à Œdenburg', '夜'),
  ticksPerQuarter: fc.constantFrom(24, 96, 480, 960),
  tempos: fc
    .uniqueArray(fc.integer({ min: 20, max: 300 }), { minLength: 1, maxLength: 4 })
    .map((tempos) => tempos.map((n, i) => ({ start: tick(i * 777), tempo: tempo(n) }))),
  times: anyTime.map((time) => [{ start: tick(0), time }]),
  keys: fc
    .record({ fifths: fc.integer({ min: -7, max: 7 }), mode: fc.constantFrom('major', 'minor') })
    .map((k) => [{ start: tick(0), ...k }]),
  tracks: fc.tuple(anyPart, anyPart).map(([a, b]) => [
    { name: 'right hand', notes: a },
    { name: 'left hand', notes: b },
  ]),
})

const read = (bytes: Uint8Array): PieceRead => {
  const piece = readPiece(bytes, 'x.mid')
  if (!piece.ok) throw new Error(JSON.stringify(piece.reason))
  return piece.value
}
const sorted = (lines: readonly string[]): readonly string[] => lines.toSorted()

describe('what is written', () => {
  test('reads back as the same notes, hands and marks', () => {
    fc.assert(
      fc.property(anyContent, (content) => {
        const { score, warnings } = read(writeMidiFile(content))
        expect(warnings).toEqual([])
        const scale = score.ticksPerQuarter / content.ticksPerQuarter
        expect(sorted(score.notes.map((n) => `${n.start} ${n.length} ${n.key} ${n.hand}`))).toEqual(
          sorted(
            content.tracks.flatMap(({ name, notes }) =>
              notes.map(
                (n) => `${n.start * scale} ${n.length * scale} ${n.key} ${name.split(' ')[0]}`,
              ),
            ),
          ),
        )
        expect(score.title).toBe(content.title)
        expect(score.keys).toEqual(content.keys)
        expect(score.bars[0]?.time).toEqual(content.times[0]?.time)
        for (const change of score.tempos) {
          const meant = content.tempos.find((t) => t.start * scale === change.start)
          // SMF 1.0 holds whole microseconds a quarter.
          const off = 60_000_000 / change.tempo - 60_000_000 / (meant?.tempo ?? 0)
          expect(Math.abs(off)).toBeLessThanOrEqual(0.5)
        }
      }),
    )
  })

  test('is the same score again when a score is written', () => {
    fc.assert(
      fc.property(anyContent, (content) => {
        const { score } = read(writeMidiFile(content))
        expect(read(writeScore(score)).score).toEqual(score)
      }),
      { numRuns: 50 },
    )
  })

  test('is read alike by another reader (the npm package @tonejs/midi)', () => {
    fc.assert(
      fc.property(anyContent, (content) => {
        const bytes = writeMidiFile(content)
        const midi = new tonejs.Midi(bytes)
        const { score } = read(bytes)
        const scale = score.ticksPerQuarter / midi.header.ppq
        const theirs = midi.tracks.flatMap((track) =>
          track.notes.map(
            (n) => `${n.ticks * scale} ${n.durationTicks * scale} ${n.midi} ${track.name}`,
          ),
        )
        const ours = score.notes.map((n) => `${n.start} ${n.length} ${n.key} ${n.hand} hand`)
        expect(sorted(theirs)).toEqual(sorted(ours))
        const time = score.bars[0]?.time
        expect(midi.header.timeSignatures[0]?.timeSignature).toEqual([time?.beats, time?.beatType])
      }),
    )
  })
})

describe('a take', () => {
  const anyEvent = fc.oneof(
    fc.record({
      kind: fc.constant('down' as const),
      key: fc.nat(127).map(key),
      velocity: fc.integer({ min: 1, max: 127 }),
    }),
    fc.record({ kind: fc.constant('up' as const), key: fc.nat(127).map(key) }),
    fc.record({
      kind: fc.constant('pedal' as const),
      pedal: fc.constantFrom('sustain', 'sostenuto', 'soft'),
      value: fc.nat(127),
    }),
  )
  const anyTake: fc.Arbitrary<Take> = fc
    .array(fc.tuple(anyEvent, fc.nat(20_000)), { maxLength: 60 })
    .map((gaps) => {
      let at = 0
      const events = gaps.map(([event, tenths]): KeyEvent => ({
        ...event,
        at: ms((at += tenths) / 10),
      }))
      return {
        events: [{ kind: 'down', key: key(60), velocity: 64, at: ms(0) }, ...events],
      }
    })

  test('written and read is the same to a tenth of a millisecond', () => {
    fc.assert(
      fc.property(anyTake, (take) => {
        const again = readTake(writeTake(take, 'a take', ms(0)))
        const events = again.ok ? again.value.events : []
        expect(events.map((e) => ({ ...e, at: 0 }))).toEqual(
          take.events.map((e) => ({ ...e, at: 0 })),
        )
        for (const [i, e] of events.entries())
          expect(e.at).toBeCloseTo(take.events[i]?.at ?? NaN, 6)
      }),
    )
  })

  test('starts its file at the origin given', () => {
    const take: Take = { events: [{ kind: 'down', key: key(60), velocity: 64, at: ms(5250.04) }] }
    const again = readTake(writeTake(take, 'late', ms(5000)))
    expect(again.ok && again.value.events[0]?.at).toBe(250)
  })
})

test('text is written in UTF-8', () => {
  const bytes = writeTake({ events: [] }, 'é', ms(0))
  expect(Array.from(bytes.subarray(22, 28))).toEqual([0x00, 0xff, 0x03, 0x02, 0xc3, 0xa9])
  expect(parseMidiFile(bytes).ok).toBe(true)
})
