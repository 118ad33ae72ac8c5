import { beginJudge, stepJudge, type JudgeSettings } from '@/judge/judge'
import type { Chunk, Onset } from '@/music/chunk'
import type { KeyDown } from '@/music/keyEvent'
import { chunkId, key, ms, noteId, pieceId, tick } from '@/music/units'
import type { Measure } from './measure'

/** Cost of one key, and what it would cost to align everything anew by plain dynamic programming. */
export const benchJudge = (): Promise<readonly Measure[]> => {
  const ten = leastTimes(writeChunk(10), 100, 40)
  const long = leastTimes(writeChunk(500), 3, 15)
  const ours = keyTimes(writeChunk(500), 1)
  const plain = plainTimes(writeChunk(500))
  const sum = (times: readonly number[]): number => times.reduce((a, b) => a + b, 0)
  return Promise.resolve([
    { name: 'judge: a key, 10 onsets, median', value: us(share(ten, 0.5)), unit: 'µs' },
    {
      name: 'judge: a key, 10 onsets, 99.9 of 100',
      value: us(share(ten, 0.999)),
      unit: 'µs',
      budget: 50,
    },
    { name: 'judge: a key, 500 onsets, median', value: us(share(long, 0.5)), unit: 'µs' },
    {
      name: 'judge: a key, 500 onsets, 99.9 of 100',
      value: us(share(long, 0.999)),
      unit: 'µs',
      budget: 1000,
    },
    {
      name: 'plain alignment anew at each key, mean',
      value: us(sum(plain) / plain.length),
      unit: 'µs',
    },
    {
      name: 'judge against plain alignment anew',
      value: sum(ours) / ours.length / (sum(plain) / plain.length),
      unit: 'times',
      budget: 1 / 20,
    },
  ])
}

const settings: JudgeSettings = { standard: 'flow', forgiveBrushed: false }

const us = (milliseconds: number): number => milliseconds * 1000

/**
 * The least time of each key over several runs of the same playing, sorted: what the key costs, not
 * what else the machine did at that moment.
 */
const leastTimes = (chunk: Chunk, times: number, runs: number): readonly number[] => {
  let least = keyTimes(chunk, times)
  for (let run = 1; run < runs; run++) {
    const again = keyTimes(chunk, times)
    least = least.map((t, i) => Math.min(t, again[i] ?? t))
  }
  return least.toSorted((a, b) => a - b)
}

const share = (sorted: readonly number[], part: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? NaN

/** Runs in eighths with a chord of three at every fourth onset, over two octaves. */
const writeChunk = (count: number): Chunk => {
  const onsets = Array.from({ length: count }, (_, i): Onset => {
    const start = tick(i * 240)
    const note = (k: number) => ({
      ids: [noteId(`n${start}k${k}`)] as const,
      key: key(k),
      start,
      length: tick(240),
      hand: 'right' as const,
    })
    const low = 55 + ((i * 5) % 24)
    const rest = i % 4 === 0 ? [note(low + 4), note(low + 7)] : []
    return { start, notes: [note(low), ...rest], auxiliaries: [], rolled: false }
  })
  return {
    id: chunkId('bench'),
    piece: pieceId('p'),
    hand: 'right',
    ticksPerQuarter: 480,
    start: tick(0),
    end: tick(count * 240),
    barOffset: tick(0),
    barLength: tick(1920),
    onsets,
  }
}

/** The chunk several times over; every thirteenth key is wrong and every nineteenth lacks. */
const playAll = (chunk: Chunk, times: number): KeyDown[] => {
  const downs: KeyDown[] = []
  let at = 0
  let struck = 0
  for (let time = 0; time < times; time++) {
    for (const [i, onset] of chunk.onsets.entries()) {
      at += 250 + ((i * 7) % 31) - 15
      for (const [n, note] of onset.notes.entries()) {
        struck++
        if (struck % 19 === 0) continue
        const k = struck % 13 === 0 ? key(note.key + 1) : note.key
        downs.push({ kind: 'down', key: k, velocity: 64, at: ms(at + n * 8) })
      }
    }
    at += 1500
  }
  return downs
}

/** Milliseconds of each key's step. */
const keyTimes = (chunk: Chunk, times: number): number[] => {
  let judge = beginJudge(chunk, settings)
  let last = 0
  return playAll(chunk, times).map((down) => {
    // The page's clock goes on meanwhile, so that a verdict falls due between keys, not with one.
    if (down.at - last > 1000) judge = stepJudge(judge, { kind: 'clock', at: down.at })[0]
    last = down.at
    const before = performance.now()
    judge = stepJudge(judge, down)[0]
    return performance.now() - before
  })
}

/** Textbook edit distance of all keys so far against all written notes, the whole matrix at each key. */
const plainTimes = (chunk: Chunk): number[] => {
  const written = chunk.onsets.flatMap((o) => o.notes.map((n) => n.key))
  const played = playAll(chunk, 1).map((d) => d.key)
  let check = 0
  const times = played.map((_, i) => {
    const before = performance.now()
    check += editDistance(played.slice(0, i + 1), written)
    return performance.now() - before
  })
  if (check === 0) throw new Error('nothing was aligned')
  return times
}

const editDistance = (a: readonly number[], b: readonly number[]): number => {
  const width = b.length + 1
  const cost = new Int32Array((a.length + 1) * width)
  for (let j = 0; j < width; j++) cost[j] = j
  for (let i = 1; i <= a.length; i++) {
    cost[i * width] = i
    for (let j = 1; j < width; j++) {
      const cell = i * width + j
      const here = (cost[cell - width - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1)
      cost[cell] = Math.min(here, (cost[cell - width] ?? 0) + 1, (cost[cell - 1] ?? 0) + 1)
    }
  }
  return cost.at(-1) ?? 0
}
