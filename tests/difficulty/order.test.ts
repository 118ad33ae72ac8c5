import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { assessDifficulty } from '@/difficulty/difficulty'
import { tempo } from '@/music/units'
import { readPiece } from '@/score/readPiece'
import listed from '@samples/samples.json'
import { exerciseKinds, writeExercise } from './exercises'

const tempos = [40, 60, 72, 84, 100, 120, 144]

describe('the whole', () => {
  // The order of method books: common practice, no source.
  test.each(tempos)('at %d the exercises come in the order of the books', (quarters) => {
    const all = exerciseKinds.map(
      (kind) => assessDifficulty(writeExercise(kind, quarters)).difficulty,
    )
    expect(all).toEqual(all.toSorted((a, b) => a - b))
    expect(new Set(all).size).toBe(all.length)
  })
  test.each(exerciseKinds)('%s is harder at each faster tempo', (kind) => {
    const all = tempos.map((quarters) => assessDifficulty(writeExercise(kind, quarters)).difficulty)
    expect(all).toEqual(all.toSorted((a, b) => a - b))
  })
  test('the exercises at rising tempo are in perfect rank order', () => {
    const graded = exerciseKinds.map(
      (kind, i) => assessDifficulty(writeExercise(kind, 60 + 12 * i)).difficulty,
    )
    expect(graded).toEqual(graded.toSorted((a, b) => a - b))
  })

  const samples = listed.map(({ file, title }) => {
    const piece = readPiece(new Uint8Array(readFileSync(`sample-midi/${file}`)), file)
    if (!piece.ok) throw new Error(`${file} cannot be read`)
    return { title, score: piece.value.score }
  })
  test('the sample pieces come in the order in which they are listed, from easy to hard', () => {
    const all = samples.map(({ score }) => assessDifficulty(score).difficulty)
    expect(all).toHaveLength(5)
    expect(all).toEqual(all.toSorted((a, b) => a - b))
  })
  test('their length does not: the longest is not the hardest but by chance', () => {
    const notes = samples.map(({ score }) => score.notes.length)
    expect(notes).not.toEqual(notes.toSorted((a, b) => a - b))
  })
  test.each(samples)('$title tells how far it may be off', ({ score }) => {
    const { difficulty, uncertainty } = assessDifficulty(score)
    expect(uncertainty).toBeGreaterThan(0.15 * difficulty - 1e-9)
    expect(uncertainty).toBeLessThan(difficulty)
  })
  test('another goal tempo is in proportion to the changes of the piece', () => {
    const ferry = samples[3]?.score
    if (!ferry) throw new Error('there are five samples')
    const own = assessDifficulty(ferry)
    const same = assessDifficulty(ferry, { tempo: tempo(ferry.tempos[0]?.tempo ?? NaN) })
    expect(same.difficulty).toBeCloseTo(own.difficulty, 9)
  })
})
