import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { longMidi, longMusicXml, nearHands } from './longFiles'
import type { Measure } from './measure'

const midiNotes = 20_000
/** For the cost of a note in a short file and in a long one. */
const [fewer, more] = [10_000, 40_000]
/** As many as make a file of 4 MB. */
const xmlNotes = 10_752

/**
 * Reading, validating and parting long files: a Standard MIDI File against the bare parse by the
 * package midi-file, a MusicXML file against verovio, which engraves it.
 */
export const benchScore = (): readonly Measure[] => {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'))
  const write = (name: string, content: Uint8Array | string): string => {
    writeFileSync(join(folder, name), content)
    return join(folder, name)
  }
  const twoHands = write('two.mid', longMidi(midiNotes, ['right hand', 'left hand']))
  const unparted = write('one.mid', longMidi(midiNotes, ['piano']))
  const writeNear = (notes: number): string =>
    write(`near${notes}.mid`, longMidi(notes, ['piano'], nearHands))
  const [near, nearShort, nearLong] = [writeNear(midiNotes), writeNear(fewer), writeNear(more)]
  const text = longMusicXml(xmlNotes)
  const xml = write('long.musicxml', text)
  const [bare, read, parted, doubted, short, long, ours, verovio] = leastOf([
    () => readOnce(twoHands, 'midi-file', midiNotes),
    () => readOnce(twoHands, 'ours', midiNotes),
    () => readOnce(unparted, 'ours', midiNotes),
    () => readOnce(near, 'ours', midiNotes),
    () => readOnce(nearShort, 'ours', fewer),
    () => readOnce(nearLong, 'ours', more),
    () => readOnce(xml, 'ours', xmlNotes),
    () => readOnce(xml, 'verovio', xmlNotes),
  ])
  rmSync(folder, { recursive: true })
  const megabytes = (text.length / 1e6).toFixed(1)
  return [
    ...against(`${midiNotes.toLocaleString('en')} notes of MIDI`, 'the bare parse', read, bare, 5),
    { name: 'the same, hands to be found', value: parted / bare, unit: 'times', budget: 5 },
    // One hand could play each of its onsets, so that all has to be weighed; no budget is set for this.
    { name: 'the same, each note in doubt', value: doubted / bare, unit: 'times' },
    {
      name: 'a note of 40,000 in doubt, of 10,000',
      value: long / more / (short / fewer),
      unit: 'times',
      budget: 1.5,
    },
    ...against(`${megabytes} MB of MusicXML`, 'verovio', ours, verovio, 1),
  ]
}

const against = (
  what: string,
  other: string,
  ours: number,
  theirs: number,
  budget: number,
): readonly Measure[] => [
  { name: `${what}, read into a score`, value: ours, unit: 'ms' },
  { name: `${what}, ${other}`, value: theirs, unit: 'ms' },
  { name: `read against ${other}`, value: ours / theirs, unit: 'times', budget },
]

const rounds = 5

/** In turn, so that a busy moment meets all; the least of several is the one least disturbed. */
const leastOf = <const T extends readonly (() => number)[]>(
  measures: T,
): { readonly [index in keyof T]: number } => {
  const times = Array.from({ length: rounds }, () => measures.map((measure) => measure()))
  return measures.map((_, i) => Math.min(...times.map((round) => round[i] ?? Infinity))) as {
    readonly [index in keyof T]: number
  }
}

/** Milliseconds for one file in a fresh process. */
const readOnce = (file: string, way: 'ours' | 'midi-file' | 'verovio', all: number): number => {
  const script = fileURLToPath(new URL('./readOnce.ts', import.meta.url))
  const words = ['--import', 'tsx', script, file, way]
  const printed = execFileSync(process.execPath, words, { encoding: 'utf8' })
  const { notes, ms } = JSON.parse(printed) as { readonly notes: number; readonly ms: number }
  if (notes !== all) throw new Error(`${notes} notes were read of ${all} (${way})`)
  return ms
}
