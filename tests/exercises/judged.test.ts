import fc from 'fast-check'
import { expect, test } from 'vitest'
import { formsOf, writeVariant } from '@/exercises/variants'
import { replayTake } from '@/judge/replay'
import type { Verdict } from '@/judge/repetition'
import { cutChunk, type Chunk } from '@/music/chunk'
import { keepsOnsets } from '@/music/form'
import type { KeyEvent } from '@/music/keyEvent'
import type { Score } from '@/music/music'
import { ms, tick } from '@/music/units'
import { writeScore } from '../music/writeScore'
import { wholeOf } from './notation'

/** A quarter in milliseconds. */
const quarter = 800

/** Plays one chunk evenly as it stands, and has the judge hear it as another. */
const verdictOf = (played: Chunk, expected: Chunk): readonly Verdict[] => {
  const events = played.onsets.flatMap(({ start, notes }) =>
    notes.flatMap(({ key }): KeyEvent[] => {
      const at = 1000 + (start / played.ticksPerQuarter) * quarter
      return [
        { kind: 'down', key, velocity: 64, at: ms(at) },
        { kind: 'up', key, at: ms(at + 60) },
      ]
    }),
  )
  const take = { events: events.toSorted((a, b) => a.at - b.at) }
  const settings = { standard: 'time', forgiveBrushed: false } as const
  return replayTake(expected, settings, take).repetitions.map(({ verdict }) => verdict)
}

const scale = writeScore({
  right: 'C5:1/4 D5:1/4 E5:1/4 F5:1/4 G5:1/4 A5:1/4 B5:1/4 C6:1/4 D6',
})
const whole = wholeOf(scale)

test('the judge takes each variant as any chunk: played as it stands it is clean', () => {
  for (const form of formsOf(scale, whole)) {
    const chunk = writeVariant(scale, whole, form)?.chunk ?? whole
    expect([form, verdictOf(chunk, chunk)]).toEqual([form, ['clean']])
  }
})

test('a run played evenly is no dotted rhythm, and the other way round', () => {
  const dotted = writeVariant(scale, whole, 'longShort')?.chunk ?? whole
  expect([verdictOf(whole, dotted), verdictOf(dotted, whole)]).toEqual([['flawed'], ['flawed']])
})

const run = fc
  .record({
    keys: fc.array(fc.constantFrom('C5', 'E5', 'G5', 'B5', 'C6', 'D5'), {
      minLength: 1,
      maxLength: 30,
    }),
    value: fc.constantFrom('1/4', '1/3', '1/2', '1/6', '1'),
    left: fc.array(fc.constantFrom('C3', 'E3', 'G3', 'r'), { maxLength: 8 }),
    time: fc.constantFrom([4, 4], [3, 4], [6, 8], [2, 2]) as fc.Arbitrary<[number, number]>,
    pickup: fc.constantFrom(0, 0.5),
    ticksPerQuarter: fc.constantFrom(12, 96, 480),
    from: fc.nat(6),
  })
  .map(({ keys, value, left, from, ...sheet }) => {
    const right = keys.map((name) => `${name}:${value}`).join(' ')
    const score = writeScore({ ...sheet, right, left: left.join(' ') })
    const written = cutChunk(score, tick(from * sheet.ticksPerQuarter), score.end, 'both')
    const variants = written
      ? formsOf(score, written).flatMap((form) => writeVariant(score, written, form) ?? [])
      : []
    return { score, variants, names: written ? namesOf(written) : [] }
  })

const namesOf = (chunk: Chunk): string[] =>
  chunk.onsets.flatMap(({ notes }) =>
    notes.flatMap(({ ids, key }) => ids.map((id) => `${id}${key}`)),
  )

test('a variant has the notes of the score under their names, at whole ticks inside its bars', () => {
  fc.assert(
    fc.property(run, ({ variants, names }) => {
      for (const { form, chunk, score } of variants) {
        const kept = namesOf(chunk)
        if (form === 'blocked') for (const name of kept) expect(names).toContain(name)
        else expect(kept.toSorted()).toEqual(names.toSorted())
        if (form !== 'asWritten') expect(oddities(score)).toEqual([])
      }
    }),
  )
})

test('onsets keep their order and are never joined, but in a form that says so', () => {
  fc.assert(
    fc.property(run, ({ variants }) => {
      const [written] = variants
      for (const { form, chunk } of variants)
        if (keepsOnsets(form))
          expect(chunk.onsets.map(({ notes }) => notes.map(({ key }) => key))).toEqual(
            written?.chunk.onsets.map(({ notes }) => notes.map(({ key }) => key)),
          )
    }),
  )
})

/** What a validated score must not have. */
const oddities = ({ notes, bars, end }: Score): readonly string[] => [
  ...notes.flatMap((note, i) => {
    const bar = bars[note.barIndex]
    const before = notes[i - 1]
    return [
      ...(Number.isInteger(note.start) && Number.isInteger(note.length) ? [] : ['part of a tick']),
      ...(note.length > 0 ? [] : ['no length']),
      ...(bar && note.start >= bar.start && note.start < bar.start + bar.length ? [] : ['bar']),
      ...(before && before.start > note.start ? ['not sorted'] : []),
    ]
  }),
  ...(bars.every((bar, i) => bar.start === (bars[i - 1]?.start ?? 0) + (bars[i - 1]?.length ?? 0))
    ? []
    : ['bars apart']),
  ...((bars.at(-1)?.start ?? 0) + (bars.at(-1)?.length ?? 0) === end ? [] : ['end']),
]
