import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { diagnose, likelyKinds, type LikelyKind } from '@/coach/diagnose'
import type { Sighting } from '@/coach/problems'
import type { Problem } from '@/coach/reasons'
import { recordedCauses } from '@/journal/words'
import { flawKinds, type FlawKind } from '@/judge/flaw'
import { cutChunk, type Chunk } from '@/music/chunk'
import { parseKey } from '@/music/pitch'
import { key, tick, type Key } from '@/music/units'
import { coachText } from '@/text/coach'
import { writeScore } from '../music/writeScore'

const pitch = (name: string): Key => {
  const found = parseKey(name)
  if (found === undefined) throw new Error(`no pitch name: ${name}`)
  return found
}

const chunkOf = (music: string): Chunk => {
  const [right = '', left = ''] = music.split(' | ')
  const score = writeScore({ right, left })
  const chunk = cutChunk(score, tick(0), score.end, left === '' ? 'right' : 'both')
  if (!chunk) throw new Error(`no notes: ${music}`)
  return chunk
}

/** 'wrong 1 E5 D5': the kind, the onset counted from 0, the written and the played key, - for none. */
const problemOf = (text: string): Problem => {
  const [kind = '', place = '0', written = '-', played = '-'] = text.split(' ')
  const flaw = flawKinds.find((each) => each === kind)
  if (!flaw) throw new Error(`no flaw: ${kind}`)
  return {
    flaw,
    place: Number(place),
    ...(written === '-' ? {} : { written: pitch(written) }),
    ...(played === '-' ? {} : { played: pitch(played) }),
    times: 2,
  }
}

const seen = (text: string, ...repetitions: number[]): Sighting => {
  const { flaw, place, written, played } = problemOf(text)
  const keys = { ...(written ? { written } : {}), ...(played ? { played } : {}) }
  return { flaw: { kind: flaw, onset: place, ...keys }, repetitions, named: 0 }
}

const likely = (music: string, problem: string, ...also: Sighting[]): LikelyKind =>
  diagnose(problemOf(problem), chunkOf(music), also).likely

/** Worked examples of our own; what is likely rests on common practice. Right hand | left hand. */
describe('the likely kind of a problem', () => {
  test.each<[LikelyKind, string, string]>([
    ['shortLeap', 'C4 E5 F5', 'wrong 1 E5 D5'],
    ['shortLeap', 'C4 E5 F5', 'wrong 1 E5 D#5'],
    ['shortLeap', 'C6 D5 C5', 'wrong 1 D5 E5'],
    ['shortLeap', 'C4+E4 C5+E5', 'wrong 1 C5 B4'],
    ['longLeap', 'C4 E5 F5', 'wrong 1 E5 F5'],
    ['longLeap', 'C6 D5 C5', 'wrong 1 D5 C5'],
    ['accidental', 'E4 F#4 G4', 'wrong 1 F#4 F4'],
    ['accidental', 'A4 Bb4 C5', 'wrong 1 Bb4 B4'],
    ['accidental', 'A4 B4 C5', 'wrong 1 B4 Bb4'],
    ['unknown', 'D4 E4 F4', 'wrong 1 E4 F4'],
    ['unknown', 'C4 D4 E4', 'wrong 1 D4 A4'],
    ['unknown', 'C4 E5 F5', 'wrong 1 E5 A3'],
    ['positionChange', 'C4 E4 G4 B4 D5', 'wrong 3 B4 D5'],
    ['unknown', 'C4 E4 G4 B4 D5', 'wrong 3 B4 E5'],
    ['weakFinger', 'C4 C4+E4+G4 C4', 'missing 1 E4'],
    ['weakFinger', 'C4 C4+E4+G4 C4', 'missing 1 G4'],
    ['unknown', 'C4 C4+E4+G4 C4', 'missing 1 C4'],
    ['weakFinger', 'C5 D5 | C3+G3 C3+G3', 'missing 1 C3'],
    ['unknown', 'C5 D5 | C3+G3 C3+G3', 'missing 1 G3'],
    ['weakFinger', 'C4 C4+E4+G4 C4', 'spread 1 G4'],
    ['unknown', 'C4 D4 E4', 'missing 1 D4'],
    ['neighbours', 'C4 E4 G4', 'extra 1 - F4'],
    ['neighbours', 'C4 E4+G4 C5', 'extra 1 - F#4'],
    ['unknown', 'C4 E4 G4', 'extra 1 - C5'],
    ['unknown', 'C4 E4 F4', 'extra 1 - F4'],
    ['handsApart', 'C5 D5 E5 | C3 D3 E3', 'spread 1 D5'],
    ['handsApart', 'C5 D5 E5 | C3 D3 E3', 'missing 1 D3'],
    ['handsApart', 'r:1/2 C5 D5 | C3 D3', 'order 1'],
    ['unknown', 'C4 D4 E4', 'order 1'],
    ['handsApart', 'C5:2/3 D5:2/3 E5:2/3 | C3 D3', 'late 2 D3'],
    ['positionChange', 'C4 D4 E4 C5 D5', 'hesitation 3 C5'],
    ['positionChange', 'C4 E4 G4 C5 E5 G5', 'hesitation 3 C5'],
    ['positionChange', 'C4 E4 G4 C5 E5 G5', 'restart 3'],
    ['positionChange', 'C4 E4 G4 C5 E5 G5', 'late 3 C5'],
    ['unknown', 'C4 D4 E4 F4 G4', 'hesitation 3 F4'],
    ['rhythm', 'C4:3/2 D4:1/2 E4 F4', 'early 1 D4'],
    ['rhythm', 'C4:3/2 D4:1/2 E4 F4', 'late 2 E4'],
    ['rhythm', 'C4:3/2 D4:1/2 E4 F4', 'uneven 3'],
    ['unknown', 'C4 D4 E4 F4', 'late 2 E4'],
    ['unknown', 'C4 D4 E4 F4', 'uneven 2'],
    ['unknown', 'C4 D4 E4 F4', 'repeated 2 E4 E4'],
    ['unknown', 'C4 D4 E4 F4', 'drift 3'],
  ])('%s: %s, %s', (kind, music, problem) => {
    expect(likely(music, problem)).toBe(kind)
  })

  test('where the flaw alone tells nothing, what else was seen at that onset does', () => {
    const forgotten = seen('wrong 1 F#4 F4', 3)
    expect(likely('E4 F#4 G4', 'hesitation 1 F#4', forgotten)).toBe('accidental')
    expect(likely('E4 F#4 G4', 'hesitation 2 G4', forgotten)).toBe('unknown')
  })

  test('what was seen there more often weighs more', () => {
    const music = 'C4 C4+E4+G4 C4'
    const left = seen('missing 1 E4', 4)
    const touched = seen('extra 1 - F4', 1, 5)
    expect(likely(music, 'hesitation 1 C4', left, touched)).toBe('neighbours')
    expect(likely(music, 'hesitation 1 C4', touched, left)).toBe('neighbours')
  })
})

describe('the diagnosis', () => {
  const music = 'C5 D5 E5 | C3 D3 E3'

  test('names the written note and its hand', () => {
    const { notes, hand } = diagnose(problemOf('missing 1 D3'), chunkOf(music), [])
    const written = chunkOf(music).onsets[1]?.notes.find((note) => note.key === 50)
    expect([notes, hand]).toEqual([written?.ids, 'left'])
  })

  test('names all notes of the onset where the flaw is of none of them, and no hand', () => {
    const { notes, hand } = diagnose(problemOf('extra 1 - F4'), chunkOf(music), [])
    expect([notes.length, hand]).toEqual([2, undefined])
  })

  test('looks at the hand that moves, where both play', () => {
    const moving = chunkOf('C5 D5 E5 | C3 C2 C2')
    expect(diagnose(problemOf('extra 1 - B4'), moving, []).hand).toBe('left')
  })
})

test('the words are those of the journal', () => {
  expect([...likelyKinds].toSorted()).toEqual([...recordedCauses].toSorted())
})

test('each likely kind is one sentence of its own', () => {
  const sentences = likelyKinds.map((kind) => coachText.likely[kind])
  expect(new Set(sentences).size).toBe(likelyKinds.length)
  expect(sentences.filter((text) => !/^[A-Z][^.]+\.$/.test(text))).toEqual([])
})

test('any flaw at any onset has a diagnosis, and it is always the same', () => {
  const chunk = chunkOf('C5 E5+G5 C6:1/2 B5:1/2 F#5 | C3 G2+E3 r C2')
  const anyKey = fc.option(fc.integer({ min: 21, max: 108 }).map(key), { nil: undefined })
  fc.assert(
    fc.property(
      fc.constantFrom<FlawKind>(...flawKinds),
      fc.integer({ min: 0, max: 6 }),
      anyKey,
      anyKey,
      (flaw, place, written, played) => {
        const keys = {
          ...(written === undefined ? {} : { written }),
          ...(played === undefined ? {} : { played }),
        }
        const problem: Problem = { flaw, place, ...keys, times: 2 }
        const found = diagnose(problem, chunk, [])
        expect(likelyKinds).toContain(found.likely)
        expect(diagnose(problem, chunk, [])).toEqual(found)
      },
    ),
  )
})
