/**
 * `readOnce.ts FILE [bare]`: the processor time that one file takes in a process of its own, since the
 * app reads a file once, in a fresh worker, so that compiling and clearing up count. Processor time,
 * so that what else the machine does counts less.
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
const before = process.cpuUsage()
const notes = process.argv[3] === 'bare' ? countNoteOns(bytes) : countNotes(bytes)
const { user, system } = process.cpuUsage(before)
console.log(JSON.stringify({ notes, ms: (user + system) / 1000 }))
