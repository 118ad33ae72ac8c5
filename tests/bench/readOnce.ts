/**
 * `readOnce.ts FILE [bare]`: how long one file takes in a process of its own, since the app reads a
 * file once, in a fresh worker, so that compiling counts.
 */
import { parseMidi } from 'midi-file'
import { readFileSync } from 'node:fs'
import { readWithHands } from '@/readWithHands'

const countNoteOns = (file: Uint8Array): number =>
  parseMidi(file)
    .tracks.flat()
    .filter((e) => e.type === 'noteOn').length

const countNotes = (file: Uint8Array): number => {
  const read = readWithHands(file, 'long.mid')
  return read.ok ? read.value.score.notes.length : 0
}

const bytes = new Uint8Array(readFileSync(process.argv[2] ?? ''))
const before = performance.now()
const notes = process.argv[3] === 'bare' ? countNoteOns(bytes) : countNotes(bytes)
console.log(JSON.stringify({ notes, ms: performance.now() - before }))
