import { createRequire } from 'node:module'
import { describe, expect, test } from 'vitest'
import { readPiece } from '@/score/readPiece'

// The npm package test-midi-files carries the framework that makes its files, not the files: those
// of its list that try a reader of music are made here with it, under the names of the list.
const require = createRequire(createRequire(import.meta.url).resolve('test-midi-files'))
require('test-midi-files')
const { MIDI } = require('jzz') as { MIDI: Jzz }

interface JzzTrack {
  add: (tick: number, message: unknown) => JzzTrack
}
type JzzFile = { push: (chunk: unknown) => void; dump: (rmi?: boolean) => string }
interface Jzz {
  SMF: {
    new (format: number, ticks: number): JzzFile
    new (format: number, frames: number, ticks: number): JzzFile
    MTrk: new () => JzzTrack
    Chunk: new (letters: string, data: string) => unknown
  }
  noteOn: (channel: number, key: string, velocity: number) => unknown
  noteOff: (channel: number, key: string) => unknown
  program: (channel: number, program: number) => unknown
  damper: (channel: number, down: boolean) => unknown
  sxIdRequest: () => unknown
  smfSeqName: (name: string) => unknown
  smfText: (text: string) => unknown
  smfLyric: (text: string) => unknown
  smfBPM: (tempo: number) => unknown
  smfSMPTE: (...offset: number[]) => unknown
  smfEndOfTrack: () => unknown
}

const scale = ['C5', 'D5', 'E5', 'F5', 'G5', 'A5', 'B5', 'C6']
const playScale = (track: JzzTrack, channel: number, from = 0, step = 96): JzzTrack => {
  for (const [i, name] of scale.entries()) {
    track.add(from + i * step, MIDI.noteOn(channel, name, 100))
    track.add(from + (i + 1) * step, MIDI.noteOff(channel, name))
  }
  return track
}
const file = (format: number, build: (make: () => JzzTrack, smf: JzzFile) => void): string => {
  const smf = new MIDI.SMF(format, 96)
  build(() => {
    const track = new MIDI.SMF.MTrk()
    smf.push(track)
    return track
  }, smf)
  return smf.dump()
}
const bytesOf = (dump: string): Uint8Array => Uint8Array.from(dump, (c) => c.charCodeAt(0))

const plain = file(0, (track) =>
  playScale(track().add(0, MIDI.smfSeqName('C major scale')).add(0, MIDI.smfBPM(90)), 0),
)
const cutOut = (dump: string, at: number): string => dump.slice(0, at) + dump.slice(at + 1)
const putIn = (dump: string, at: number, byte: string): string =>
  dump.slice(0, at) + byte + dump.slice(at)
/** Inside the notes of the track. */
const inside = plain.length - 20

/** By the names of the list: how many notes are read, or the kind of problem. */
const table: readonly (readonly [string, string, number | string])[] = [
  ['test-c-major-scale', plain, 8],
  ['test-empty', file(0, (track) => track().add(0, MIDI.smfEndOfTrack())), 'noNotes'],
  [
    'test-silence-end-of-track',
    file(0, (track) => track().add(960, MIDI.smfEndOfTrack())),
    'noNotes',
  ],
  [
    'test-silence-text-metaevent',
    file(0, (track) => track().add(960, MIDI.smfText(' '))),
    'noNotes',
  ],
  ['test-all-gm-percussion', file(0, (track) => playScale(track(), 9)), 'onlyDrums'],
  ['test-all-gm-sounds', file(0, (track) => playScale(track().add(0, MIDI.program(0, 40)), 0)), 8],
  ['test-2-tracks-type-0', file(0, (track) => [0, 1].forEach((c) => playScale(track(), c))), 16],
  ['test-2-tracks-type-1', file(1, (track) => [0, 1].forEach((c) => playScale(track(), c))), 16],
  [
    'test-2-tracks-type-2',
    file(2, (track) => [0, 1].forEach((c) => playScale(track(), c))),
    'separateSequences',
  ],
  [
    'test-control-40-damper',
    file(0, (track) => playScale(track().add(0, MIDI.damper(0, true)), 0)),
    8,
  ],
  [
    'test-multichannel-chords-0',
    file(0, (track) => [0, 1, 2].reduce((t, c) => playScale(t, c, c * 9), track())),
    24,
  ],
  [
    'test-multichannel-chords-1',
    file(1, (track) => [0, 1, 2].forEach((c) => playScale(track(), c, c * 9))),
    24,
  ],
  [
    'test-smpte-offset',
    file(0, (track) => playScale(track().add(0, MIDI.smfSMPTE(1, 2, 3, 4, 5)), 0)),
    8,
  ],
  [
    'test-sysex-7e-06-01-id-request',
    file(0, (track) => playScale(track().add(0, MIDI.sxIdRequest()), 0)),
    8,
  ],
  ['test-karaoke-kar', file(1, (track) => playScale(track().add(0, MIDI.smfLyric('la')), 0)), 8],
  [
    'test-non-midi-track',
    file(1, (track, smf) => {
      playScale(track(), 0)
      smf.push(new MIDI.SMF.Chunk('ABCD', 'no track'))
    }),
    8,
  ],
  ['test-vlq-2-byte', file(0, (track) => playScale(track(), 0, 0, 0x100)), 8],
  ['test-vlq-3-byte', file(0, (track) => playScale(track(), 0, 0, 0x4000)), 8],
  ['test-vlq-4-byte', file(0, (track) => playScale(track(), 0, 0x200000, 96)), 8],
  ['test-corrupt-file-extra-byte', putIn(plain, inside, '\x00'), 'corrupt'],
  ['test-corrupt-file-missing-byte', cutOut(plain, inside), 'truncated'],
  ['test-empty-file', '', 'empty'],
  ['test-not-a-midi-file', 'This is not a MIDI file', 'unknownFormat'],
  ['test-syx-7e-06-01-id-request', '\xf0\x7e\x7f\x06\x01\xf7', 'unknownFormat'],
  ['test-minimal (a clip of MIDI 2.0)', 'SMF2CLIP\x00\x20\x00\x00', 'unknownFormat'],
]

describe('files made by the framework test-midi-files', () => {
  test.each(table.map(([name, dump, expected]) => [name, expected, dump] as const))(
    '%s: %s',
    (_, expected, dump) => {
      const piece = readPiece(bytesOf(dump), 'test.mid')
      expect(piece.ok ? piece.value.score.notes.length : piece.reason.kind).toBe(expected)
    },
  )
  test('are read the same when wrapped in RIFF by it', () => {
    const smf = new MIDI.SMF(0, 25, 40)
    const track = new MIDI.SMF.MTrk()
    smf.push(track)
    playScale(track, 0)
    const [bare, wrapped] = [false, true].map((rmi) =>
      readPiece(bytesOf(smf.dump(rmi)), 'test.mid'),
    )
    expect(wrapped).toEqual(bare)
    expect(wrapped?.ok && wrapped.value.score.notes.length).toBe(8)
  })
})
