import { assessDifficulty } from '@/difficulty/difficulty'
import { identifyPiece, nameNotes } from '@/music/identity'
import type { Bar, Hand, Note, Score } from '@/music/music'
import { key, tempo, tick } from '@/music/units'
import type { Measure } from './measure'

/** A very long piece assessed, and how the work grows with its length. */
export const benchDifficulty = (): readonly Measure[] => {
  const long = writePiece(20_000)
  const quarter = writePiece(5000)
  const whole = least(long)
  const copying = leastOf(() => copyOften(long))
  return [
    { name: 'difficulty: 20,000 notes', value: whole, unit: 'ms', budget: 500 },
    {
      name: 'difficulty against copying the score ten times',
      value: whole / copying,
      unit: 'times',
      // With new rows for each step of the fingers it was 2 to 3; 1.1 to 1.5 is usual.
      budget: 2,
    },
    {
      name: 'difficulty: four times the notes',
      value: whole / least(quarter),
      unit: 'times the work',
      budget: 8,
    },
  ]
}

const least = (score: Score): number => leastOf(() => assessDifficulty(score).difficulty)

/** As long as an assessment or so, so that a busy machine slows down the one as the other. */
const copyOften = (score: Score): number => {
  let notes = 0
  for (let i = 0; i < 10; i++) notes += structuredClone(score).notes.length
  return notes
}

const leastOf = (work: () => number): number => {
  let best = Infinity
  for (let run = 0; run < 12; run++) {
    const before = performance.now()
    if (!(work() > 0)) throw new Error('every piece is difficult and has notes')
    best = Math.min(best, performance.now() - before)
  }
  return best
}

/** Sixteenths in both hands at 100 quarters a minute: runs, broken chords, thirds and leaps by rule. */
const writePiece = (count: number): Score => {
  const ticksPerQuarter = 480
  const parts = [...writePart(count / 2, 'right', 67), ...writePart(count / 2, 'left', 43)]
  const sorted = parts.toSorted((a, b) => a.start - b.start || a.key - b.key)
  const end = (sorted.at(-1)?.barIndex ?? 0) + 1
  const bars = Array.from({ length: end }, (_, i): Bar => ({
    number: i + 1,
    start: tick(i * 1920),
    length: tick(1920),
    time: { beats: 4, beatType: 4 },
  }))
  const notes = nameNotes(sorted, ticksPerQuarter)
  return {
    id: identifyPiece(notes, bars, ticksPerQuarter),
    title: 'Long',
    ticksPerQuarter,
    notes,
    bars,
    tempos: [{ start: tick(0), tempo: tempo(100) }],
    keys: [],
    end: tick(end * 1920),
  }
}

const writePart = (count: number, hand: Hand, middle: number): Omit<Note, 'id'>[] => {
  const notes: Omit<Note, 'id'>[] = []
  for (let i = 0; notes.length < count; i++) {
    const place = middle + (((i * 7) % 17) - 8) * (Math.floor(i / 64) % 2) + ((i * (i % 5)) % 11)
    for (const k of i % 6 === 0 ? [place, place + 4] : [place])
      notes.push({
        key: key(k),
        start: tick(i * 120),
        length: tick(120),
        hand,
        handFrom: 'file',
        barIndex: Math.floor(i / 16),
      })
  }
  return notes.slice(0, count)
}
