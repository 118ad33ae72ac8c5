/**
 * `readOnce.ts FILE WAY`: the processor time that one file takes in a process of its own, since the
 * app reads a file once, in a fresh worker, so that compiling and clearing up count. Processor time,
 * so that what else the machine does counts less. The ways: `ours`, hands and all; `midi-file`, the
 * bare parse by that package; `verovio`, which loads a MusicXML file for engraving, without laying
 * out pages. What verovio itself takes to start is not counted.
 */
import { parseMidi } from 'midi-file'
import { readFileSync } from 'node:fs'
import { openEngraverHere } from '../support/toolkit'
import { readWithHands } from '@/readWithHands'

const [path = '', way = 'ours'] = process.argv.slice(2)
const bytes = new Uint8Array(readFileSync(path))

const countOurs = (): number => {
  const read = readWithHands(bytes, path)
  return read.ok ? read.value.score.notes.length : 0
}

const countNoteOns = (): number =>
  parseMidi(bytes)
    .tracks.flat()
    .filter((e) => e.type === 'noteOn').length

/** Loads the file when called; what it has loaded is counted afterwards. */
const prepareVerovio = async (): Promise<() => () => number> => {
  const toolkit = await openEngraverHere()
  toolkit.setOptions({ breaks: 'none' })
  return () => {
    const loaded = toolkit.loadData(readFileSync(path, 'utf8')) === 1
    return () => (loaded ? toolkit.getMEI().split('<note ').length - 1 : 0)
  }
}

const prepare = async (): Promise<() => () => number> => {
  if (way === 'verovio') return prepareVerovio()
  const count = way === 'midi-file' ? countNoteOns : countOurs
  return () => {
    const notes = count()
    return () => notes
  }
}

const work = await prepare()
const before = process.cpuUsage()
const count = work()
const { user, system } = process.cpuUsage(before)
console.log(JSON.stringify({ notes: count(), ms: (user + system) / 1000 }))
