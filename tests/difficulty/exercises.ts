import type { Score } from '@/music/music'
import { tempo, tick } from '@/music/units'
import { formatKey } from '@/music/pitch'
import { key } from '@/music/units'
import { writeScore } from '../music/writeScore'

/** The exercises of method books, from easy to hard, each in sixteenths for the right hand over two octaves or so. */
export const exerciseKinds = ['fiveFinger', 'scale', 'brokenChord', 'thirds', 'octaves'] as const
export type ExerciseKind = (typeof exerciseKinds)[number]

const white = [0, 2, 4, 5, 7, 9, 11]
/** The white key so many steps above middle C. */
export const whiteKey = (step: number): number =>
  60 + 12 * Math.floor(step / 7) + (white[((step % 7) + 7) % 7] ?? 0)

const upAndDown = (top: number): number[] =>
  Array.from({ length: 2 * top }, (_, i) => (i <= top ? i : 2 * top - i))

const steps: Readonly<Record<ExerciseKind, (i: number) => readonly number[]>> = {
  fiveFinger: (i) => [whiteKey(upAndDown(4)[i % 8] ?? 0)],
  scale: (i) => [whiteKey(upAndDown(14)[i % 28] ?? 0)],
  brokenChord: (i) => {
    const place = upAndDown(6)[i % 12] ?? 0
    return [60 + 12 * Math.floor(place / 3) + ([0, 4, 7][place % 3] ?? 0)]
  },
  thirds: (i) => [0, 2].map((above) => whiteKey((upAndDown(14)[i % 28] ?? 0) + above)),
  octaves: (i) => [0, 7].map((above) => whiteKey((upAndDown(14)[i % 28] ?? 0) + above)),
}

/** Four bars of sixteenths at so many quarters a minute. */
export const writeExercise = (kind: ExerciseKind, quarters: number): Score =>
  writeScore({
    right: line(Array.from({ length: 64 }, (_, i) => steps[kind](i))),
    tempos: [{ start: tick(0), tempo: tempo(quarters) }],
  })

/** Chords one after the other, a sixteenth each or as long as is said, in the notation of `writeScore`. */
export const line = (chords: readonly (readonly number[])[], length = '1/4'): string =>
  chords.map((keys) => `${keys.map((k) => formatKey(key(k))).join('+')}:${length}`).join(' ')
