import { describe, expect, test } from 'vitest'
import { readPiece } from '@/score/readPiece'
import type { PieceRead } from '@/score/score'
import { mark, middleC, smf } from './smf'
import { explainWarning } from '@/score/warning'

const read = (bytes: Uint8Array, fileName = 'a piece.mid'): PieceRead => {
  const piece = readPiece(bytes, fileName)
  if (!piece.ok) throw new Error(JSON.stringify(piece.reason))
  return piece.value
}
/** Each note as start+length key hand. */
const notes = (bytes: Uint8Array): string[] =>
  read(bytes).score.notes.map((n) => `${n.start}+${n.length} ${n.key} ${n.hand}`)
/** Each bar as number:start+length beats/beatType. */
const bars = (bytes: Uint8Array): string[] =>
  read(bytes).score.bars.map(
    (b) => `${b.number}:${b.start}+${b.length} ${b.time.beats}/${b.time.beatType}`,
  )
const right = mark('03', 'right hand')
const left = mark('03', 'left hand')
/** A key held for some quarters at 96 ticks a quarter, one digit. */
const held = (key: string, quarters: 1 | 2 | 3 | 4 | 6 | 9): string => {
  const ticks = quarters * 96
  const time =
    ticks < 128
      ? `${ticks.toString(16)}`
      : `8${ticks >> 7} ${(ticks & 127).toString(16).padStart(2, '0')}`
  return `00 90 ${key} 40 ${time} 80 ${key} 00`
}

describe('notes', () => {
  test('keep the ticks of the file and stand sorted by start, then key', () => {
    expect(notes(smf([`${right} 01 90 40 40 00 3C 40 5F 3C 00 00 40 00`]))).toEqual([
      '1+95 60 right',
      '1+95 64 right',
    ])
  })
  test('on one key that overlap end first in, first out', () => {
    expect(notes(smf([`${right} 00 90 3C 40 10 3C 40 10 3C 00 10 3C 00`]))).toEqual([
      '0+32 60 right',
      '16+32 60 right',
    ])
  })
  test('struck again at the tick where they end are two notes, in either order of the events', () => {
    const two = ['0+16 60 right', '16+16 60 right']
    expect(notes(smf([`${right} 00 90 3C 40 10 3C 00 00 3C 40 10 3C 00`]))).toEqual(two)
    expect(notes(smf([`${right} 00 90 3C 40 10 3C 40 00 3C 00 10 3C 00`]))).toEqual(two)
  })
  test('that never end are closed at the end of the track, with a warning', () => {
    const file = smf([`${right} 00 90 3C 40 20 40 40 20 40 00`])
    expect(notes(file)).toEqual(['0+64 60 right', '32+32 64 right'])
    expect(read(file).warnings.map(explainWarning)).toEqual([
      '1 note never ended in the file; closed at the track’s end.',
    ])
  })
  test('without length get one tick', () => {
    expect(notes(smf([`${right} 00 90 3C 40 00 3C 00`]))).toEqual(['0+1 60 right'])
  })
  test('the same in everything are one; two voices or both hands may meet on a key', () => {
    expect(notes(smf([`${right} 00 90 3C 40 00 3C 40 10 3C 00 00 3C 00`]))).toEqual([
      '0+16 60 right',
    ])
    expect(notes(smf([`${right} 00 90 3C 40 00 3C 40 10 3C 00 10 3C 00`]))).toEqual([
      '0+32 60 right',
      '0+16 60 right',
    ])
    const both = smf([`${right} ${middleC}`, `${left} ${middleC}`])
    expect(notes(both)).toEqual(['0+96 60 right', '0+96 60 left'])
    expect(read(both).score.notes.map((n) => n.id)).toEqual(['n0k60', 'n0k60b'])
  })
  test('on the drum channel are left out, with a warning', () => {
    const file = smf([`${right} ${middleC} 00 99 24 40 10 99 24 00`])
    expect(notes(file)).toEqual(['0+96 60 right'])
    expect(read(file).warnings.map(explainWarning)).toEqual([
      '1 note on the drum channel (10) left out.',
    ])
  })
  test('have the same names and the piece the same id at another resolution', () => {
    const a = read(smf([`${right} ${held('3C', 1)} ${held('3E', 1)}`])).score
    const b = read(smf([`${right} 00 90 3C 40 30 3C 00 00 3E 40 30 3E 00`], { division: 48 })).score
    expect(b.notes.map((n) => n.id)).toEqual(a.notes.map((n) => n.id))
    expect(b.id).toBe(a.id)
  })
})

describe('hands', () => {
  test('come from the channels where one track holds all notes', () => {
    const track = `00 90 30 40 00 91 48 40 60 90 30 00 00 91 48 00`
    expect(notes(smf([track]))).toEqual(['0+96 48 left', '0+96 72 right'])
    expect(read(smf([track])).score.notes.every((n) => n.handFrom === 'file')).toBe(true)
  })
  test('come from the tracks where two hold notes, whatever their channels', () => {
    const file = smf([`00 90 30 40 60 30 00`, `00 90 48 40 60 48 00`])
    expect(notes(file)).toEqual(['0+96 48 left', '0+96 72 right'])
  })
  test('are marked as inferred where the file has one part', () => {
    expect(read(smf([middleC])).score.notes[0]?.handFrom).toBe('inferred')
  })
})

describe('bars', () => {
  const time = (beats: number, power: number): string => `00 FF 58 04 0${beats} 0${power} 18 08`
  test('are 4/4 where the file says nothing, and cover the last note', () => {
    expect(bars(smf([`${right} ${held('3C', 6)}`]))).toEqual(['1:0+384 4/4', '2:384+384 4/4'])
  })
  test('follow a change of the time signature in any track', () => {
    const marks = `${time(4, 2)} 83 00 FF 58 04 03 02 18 08`
    expect(bars(smf([`${right} ${held('3C', 9)}`, marks]))).toEqual([
      '1:0+384 4/4',
      '2:384+288 3/4',
      '3:672+288 3/4',
    ])
  })
  test('begin with a pickup, number 0, where the first signature lasts for one short bar', () => {
    const file = smf([`${time(1, 2)} 60 FF 58 04 03 02 18 08`, `${right} ${held('3C', 6)}`])
    expect(bars(file)).toEqual(['0:0+96 3/4', '1:96+288 3/4', '2:384+288 3/4'])
  })
  test('begin with a pickup where the same signature is said again inside the first bar', () => {
    const file = smf([`${time(3, 2)} 60 FF 58 04 03 02 18 08`, `${right} ${held('3C', 3)}`])
    expect(bars(file)).toEqual(['0:0+96 3/4', '1:96+288 3/4'])
  })
  test('begin with 1 where the first signature stands for two bars', () => {
    const file = smf([`${time(1, 2)} 81 40 FF 58 04 03 02 18 08`, `${right} ${held('3C', 3)}`])
    expect(bars(file).map((b) => b.slice(0, 2))).toEqual(['1:', '2:', '3:'])
  })
  test('of a fraction of a tick make the score count in finer ticks', () => {
    const file = smf([`${time(3, 4)} ${right} 00 90 3C 40 01 3C 00`], { division: 2 })
    const { score } = read(file)
    expect([score.ticksPerQuarter, score.notes[0]?.length, score.bars[0]?.length]).toEqual([
      4, 2, 3,
    ])
  })
  test('know which notes they hold', () => {
    const file = smf([`${right} ${held('3C', 4)} ${held('3E', 4)}`])
    expect(read(file).score.notes.map((n) => n.barIndex)).toEqual([0, 1])
  })
})

describe('marks', () => {
  test('of tempo are taken from every track; 120 until the first one (SMF 1.0)', () => {
    const file = smf([`${right} ${held('3C', 4)}`, '60 FF 51 03 0F 42 40 60 FF 51 03 07 A1 20'])
    expect(read(file).score.tempos).toEqual([
      { start: 0, tempo: 120 },
      { start: 96, tempo: 60 },
      { start: 192, tempo: 120 },
    ])
  })
  test('of key said by several tracks stand once', () => {
    const flats = '00 FF 59 02 FD 01'
    const file = smf([`${right} ${flats} ${middleC}`, `${left} ${flats} ${middleC}`])
    expect(read(file).score.keys).toEqual([{ start: 0, fifths: -3, mode: 'minor' }])
  })
  test('that are impossible are left out', () => {
    const file = smf([`00 FF 58 04 00 02 18 08 00 FF 59 02 20 00 00 FF 51 03 00 00 00 ${middleC}`])
    const { score, warnings } = read(file)
    expect([score.bars[0]?.time.beats, score.keys, score.tempos.length]).toEqual([4, [], 1])
    expect(warnings.map(explainWarning)).toEqual(['An impossible time signature was left out.'])
  })
})

describe('the title', () => {
  const title = (name: string, fileName: string): string =>
    read(smf([`${mark('03', name)} ${middleC}`]), fileName).score.title
  test.each([
    ['The Mill Race', 'x.mid', 'The Mill Race'],
    ['Right Hand', 'mill race.mid', 'mill race'],
    ['Piano', 'music/mill race.midi', 'mill race'],
    ['', 'C:\\music\\mill.race.mid', 'mill.race'],
    ['', '.mid', '.mid'],
    ['\u00c9tude', 'x.mid', '\u00c9tude'], // C9 is Latin-1
    ['\u00c3\u0089tude', 'x.mid', '\u00c9tude'], // C3 89: UTF-8
  ])('named %j in file %j is %j', (name, fileName, expected) => {
    expect(title(name, fileName)).toBe(expected)
  })
})
