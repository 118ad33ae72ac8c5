import { describe, expect, test } from 'vitest'
import { parseMidiFile } from '@/score/midiFile'
import type { SmfEvent, SmfFile } from '@/score/score'
import { formatLength } from '@/score/writeMidiFile'
import { chunk, hex, middleC, smf, specificationExample } from './smf'
import { explainWarning } from '@/score/warning'

const read = (bytes: Uint8Array): SmfFile => {
  const file = parseMidiFile(bytes)
  if (!file.ok) throw new Error(JSON.stringify(file.reason))
  return file.value
}
const events = (bytes: Uint8Array): readonly SmfEvent[] => read(bytes).tracks.flat()
const keys = (bytes: Uint8Array): string =>
  events(bytes)
    .flatMap((e) =>
      e.kind === 'noteOn' ? [`${e.at}+${e.key}`] : e.kind === 'noteOff' ? [`${e.at}-${e.key}`] : [],
    )
    .join(' ')

describe('Standard MIDI Files 1.0 (RP-001)', () => {
  // The table of variable-length quantities in SMF 1.0.
  test.each([
    [0x00, '00'],
    [0x40, '40'],
    [0x7f, '7F'],
    [0x80, '81 00'],
    [0x2000, 'C0 00'],
    [0x3fff, 'FF 7F'],
    [0x4000, '81 80 00'],
    [0x100000, 'C0 80 00'],
    [0x1fffff, 'FF FF 7F'],
    [0x200000, '81 80 80 00'],
    [0x8000000, 'C0 80 80 00'],
    [0xfffffff, 'FF FF FF 7F'],
  ])('a time of %i ticks is %s, read and written', (ticks, bytes) => {
    expect(events(smf([`${bytes} 90 3C 40`]))[0]?.at).toBe(ticks)
    expect(formatLength(ticks)).toEqual([...hex(bytes)])
  })

  // SMF 1.0: FF 51 03 07 A1 20 is 500000 microseconds; 04 7C E5 = 294117 from a printed dump.
  test.each([
    ['07 A1 20', 500_000],
    ['04 7C E5', 294_117],
  ])('the tempo %s is %i microseconds a quarter', (bytes, microsecondsPerQuarter) => {
    expect(events(smf([`00 FF 51 03 ${bytes}`]))[0]).toEqual({
      kind: 'tempo',
      at: 0,
      microsecondsPerQuarter,
    })
  })

  // SMF 1.0: 06 03 24 08 is 6/8, 04 02 18 08 is 4/4 (from memory).
  test.each([
    ['06 03 24 08', 6, 8],
    ['04 02 18 08', 4, 4],
  ])('the time signature %s is %i/%i', (bytes, beats, beatType) => {
    expect(events(smf([`00 FF 58 04 ${bytes}`]))[0]).toEqual({
      kind: 'time',
      at: 0,
      beats,
      beatType,
    })
  })

  // SMF 1.0: FD 01 is C minor, 00 00 is C major.
  test('the key signature FD 01 is three flats, minor', () => {
    expect(events(smf(['00 FF 59 02 FD 01']))[0]).toMatchObject({ fifths: -3, minor: true })
    expect(events(smf(['00 FF 59 02 00 00']))[0]).toMatchObject({ fifths: 0, minor: false })
  })

  test('both forms of its own example hold the same notes', () => {
    const written = '0+48 0+60 96+67 192+76 384-48 384-60 384-67 384-76'
    const sorted = (text: string): string =>
      text
        .split(' ')
        .toSorted((a, b) => parseInt(a) - parseInt(b) || a.localeCompare(b))
        .join(' ')
    expect(keys(specificationExample.format0)).toBe(written)
    expect(sorted(keys(specificationExample.format1))).toBe(sorted(written))
    expect(read(specificationExample.format1).ticksPerQuarter).toBe(96)
  })
})

describe('MIDI 1.0', () => {
  test('status is kept until another one, and velocity 0 ends a note', () => {
    expect(keys(smf(['00 90 3C 40 10 3E 40 10 3C 00 10 3E 00']))).toBe('0+60 16+62 32-60 48-62')
  })
  test('status is still kept after a mark, as many files count on (common practice, no source)', () => {
    expect(keys(smf(['00 90 3C 40 00 FF 01 01 41 10 3C 00']))).toBe('0+60 16-60')
  })
  test('a system exclusive message is skipped by its length', () => {
    expect(keys(smf([`00 F0 05 7E 7F 09 01 F7 ${middleC}`]))).toBe('0+60 96-60')
  })
})

describe('time in film frames (SMPTE)', () => {
  // SMF 1.0: E7 28 is 25 frames of 40 ticks, so a tick is a millisecond.
  test('E7 28 counts milliseconds: a quarter of half a second is 500 ticks', () => {
    const file = read(smf([middleC], { division: 0xe728 }))
    expect(file.ticksPerQuarter).toBe(500)
    expect(file.tracks.flat()[0]).toMatchObject({ kind: 'tempo', microsecondsPerQuarter: 500_000 })
    expect(file.warnings).toHaveLength(1)
  })
  test('E3 28, 30 drop-frame, runs slower by 1.001 (SMPTE 12M)', () => {
    const file = read(smf([middleC], { division: 0xe328 }))
    expect(file.ticksPerQuarter).toBe(600)
    expect(file.tracks.flat()[0]).toMatchObject({ microsecondsPerQuarter: 500_500 })
  })
  test('ticks are doubled where half a second is an odd number of them', () => {
    const bytes = smf([middleC], { division: 0xe701 })
    expect(read(bytes).ticksPerQuarter).toBe(25)
    expect(keys(bytes)).toBe('0+60 192-60')
  })
})

describe('what surrounds the tracks', () => {
  const whole = smf([middleC, middleC])
  const notes = '0+60 96-60 0+60 96-60'
  const chunks = [...whole]
  const littleWord = (n: number): number[] => [n & 0xff, (n >> 8) & 0xff, 0, 0]
  const ascii = (text: string): number[] => [...text].map((c) => c.charCodeAt(0))

  test('chunks with other letters are skipped, wherever they stand', () => {
    const alien = chunk('XFIH', [1, 2, 3])
    const file = [...chunks.slice(0, 14), ...alien, ...chunks.slice(14), ...alien]
    expect(keys(Uint8Array.from(file))).toBe(notes)
  })
  test('a header longer than six bytes is read past', () => {
    const file = [...chunks.slice(0, 7), 8, ...chunks.slice(8, 14), 0, 0, ...chunks.slice(14)]
    expect(keys(Uint8Array.from(file))).toBe(notes)
  })
  test('a file wrapped in RIFF is unwrapped', () => {
    const info = [...ascii('DISP'), ...littleWord(3), 1, 2, 3, 0]
    const data = [...ascii('data'), ...littleWord(whole.length), ...chunks]
    const body = [...ascii('RMID'), ...info, ...data]
    const file = [...ascii('RIFF'), ...littleWord(body.length), ...body]
    expect(keys(Uint8Array.from(file))).toBe(notes)
  })
  test('a track without an end mark is read whole, with a warning', () => {
    const file = [...chunks.slice(0, 14), ...chunk('MTrk', hex(middleC)), ...chunks.slice(14 + 20)]
    expect(keys(Uint8Array.from(file))).toBe(notes)
    expect(read(Uint8Array.from(file)).warnings.map(explainWarning)).toEqual([
      'Track 1 has no end mark; all of it was read.',
    ])
  })
  test('bytes after the end mark or after the last track are left out, with a warning', () => {
    const inside = smf([`${middleC} 00 FF 2F 00 12 34`])
    expect(keys(inside)).toBe('0+60 96-60')
    expect(read(inside).warnings.map(explainWarning)).toEqual([
      'Track 1 has 6 bytes after its end; they were left out.',
    ])
    expect(read(Uint8Array.from([...chunks, 0, 0, 0])).warnings.map(explainWarning)).toEqual([
      'After the last track 3 more bytes were left out.',
    ])
  })
  test('more tracks than announced are all read, with a warning', () => {
    const file = smf([middleC, middleC], { announced: 1 })
    expect(keys(file)).toBe(notes)
    expect(read(file).warnings).toHaveLength(1)
  })
  test('a mark of a wrong length is left out, with a warning where it matters', () => {
    const file = smf([`00 FF 51 02 07 A1 00 FF 20 02 00 00 ${middleC}`])
    expect(events(file).map((e) => e.kind)).toEqual(['noteOn', 'noteOff', 'end'])
    expect(read(file).warnings.map(explainWarning)).toEqual([
      'Track 1 has a damaged tempo; it was left out.',
    ])
  })
  test('a text of 100,000 characters does no harm', () => {
    const text = Array.from({ length: 100_000 }, () => 0x41)
    const track = [
      0,
      0xff,
      1,
      ...formatLength(text.length),
      ...text,
      ...hex(middleC),
      0,
      0xff,
      0x2f,
      0,
    ]
    expect(keys(Uint8Array.from([...smf([]).slice(0, 14), ...chunk('MTrk', track)]))).toBe(
      '0+60 96-60',
    )
  })
})
