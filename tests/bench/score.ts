import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { key, tempo, tick } from '@/music/units'
import { writeMidiFile, type NoteToWrite } from '@/score/writeMidiFile'
import type { Measure } from './measure'

const noteCount = 20_000

/** Reading, validating and parting a long file, against the bare parse by the package that reads it. */
export const benchScore = (): readonly Measure[] => {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'))
  const twoHands = join(folder, 'two.mid')
  const unparted = join(folder, 'one.mid')
  writeFileSync(twoHands, fileOf(['right hand', 'left hand']))
  writeFileSync(unparted, fileOf(['piano']))
  const bare: number[] = []
  const read: number[] = []
  const parted: number[] = []
  for (let i = 0; i < 7; i++) {
    bare.push(readOnce(twoHands, true))
    read.push(readOnce(twoHands, false))
    parted.push(readOnce(unparted, false))
  }
  rmSync(folder, { recursive: true })
  const notes = `${noteCount.toLocaleString('en')} notes`
  return [
    { name: `bare parse of ${notes}`, value: least(bare), unit: 'ms' },
    { name: `read into a score, ${notes}`, value: least(read), unit: 'ms' },
    {
      name: 'read against bare parse',
      value: least(read) / least(bare),
      unit: 'times',
      budget: 5,
    },
    {
      name: 'the same, hands to be found',
      value: least(parted) / least(bare),
      unit: 'times',
      budget: 5,
    },
  ]
}

/** The least of several is the one least disturbed by what else the machine does. */
const least = (times: readonly number[]): number => Math.min(...times)

/** Milliseconds for one file in a fresh process. */
const readOnce = (file: string, bare: boolean): number => {
  const script = fileURLToPath(new URL('./readOnce.ts', import.meta.url))
  const words = ['--import', 'tsx', script, file, ...(bare ? ['bare'] : [])]
  const printed = execFileSync(process.execPath, words, { encoding: 'utf8' })
  const { notes, ms } = JSON.parse(printed) as { readonly notes: number; readonly ms: number }
  if (notes !== noteCount) throw new Error(`${notes} notes were read of ${noteCount}`)
  return ms
}

/** Two lines of sixteenths, keys and lengths in turn by rule, in a track for each hand or in one. */
const fileOf = (names: readonly string[]): Uint8Array => {
  const lines = [67, 43].map((lowest) => line(noteCount / 2, lowest))
  return writeMidiFile({
    title: 'Long',
    ticksPerQuarter: 480,
    tempos: Array.from({ length: 50 }, (_, i) => ({ start: tick(i * 9600), tempo: tempo(60 + i) })),
    times: [{ start: tick(0), time: { beats: 4, beatType: 4 } }],
    keys: [],
    tracks: names.map((name, i) => ({
      name,
      notes: names.length === 1 ? lines.flat() : (lines[i] ?? []),
    })),
  })
}

const line = (count: number, lowest: number): NoteToWrite[] =>
  Array.from({ length: count }, (_, i) => ({
    start: tick(i * 120),
    length: tick(i % 5 === 0 ? 60 : 110),
    key: key(lowest + ((i * 7) % 17)),
    velocity: 40 + (i % 50),
  }))
