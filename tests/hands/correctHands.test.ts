import { describe, expect, test } from 'vitest'
import {
  correctHands,
  countCorrectable,
  decodeCorrections,
  handCorrection,
  type HandCorrection,
} from '@/hands/correctHands'
import { inferHands } from '@/hands/hands'
import type { Hand, Score } from '@/music/music'
import { key, tick } from '@/music/units'
import { writeScore } from '../music/writeScore'

const written = writeScore({ right: 'C5 D5 E5:1/2 F5:1/2 G5', left: 'C4:2 G3:2' })
/** As from a file of one track, all in the right hand so far. */
const open: Score = {
  ...written,
  notes: written.notes.map((n) => ({ ...n, hand: 'right', handFrom: 'inferred' })),
}

/** 'RRLRRRR': the hands in the order of the notes; small letters are the person's. */
const shown = ({ notes }: Score): string =>
  notes.map(({ hand, handFrom }) => letter(hand, handFrom === 'person')).join('')
const letter = (hand: Hand, isPerson: boolean): string =>
  isPerson ? hand.charAt(0) : hand.charAt(0).toUpperCase()

const say = (from: string, to: string, hand: Hand, ...keys: number[]): HandCorrection => ({
  from,
  to,
  hand,
  ...(keys.length > 0 ? { keys: keys.map(key) } : {}),
})

describe('the person corrects hands', () => {
  // C4 C5 | D5 | G3 E5 | F5 | G5, at 0, 1, 2, 2.5 and 3 quarters.
  test.each([
    ['nothing', [], 'RRRRRRR'],
    ['a note', [say('0', '0', 'left', 60)], 'lRRRRRR'],
    ['an onset', [say('2', '2', 'left')], 'RRRllRR'],
    ['a region', [say('1', '5_2', 'left')], 'RRllllR'],
    ['the later one stands', [say('0', '3', 'left'), say('5_2', '3', 'right')], 'lllllrr'],
    ['a place between the notes', [say('7_3', '5_2', 'left')], 'RRRRRlR'],
    ['a place that is none', [say('x', '3', 'left')], 'RRRRRRR'],
  ] as const)('%s', (_, corrections, hands) => {
    expect(shown(correctHands(open, corrections))).toBe(hands)
  })

  test('what the file says stays', () => {
    expect(shown(correctHands(written, [say('0', '9', 'left')]))).toBe(shown(written))
    expect(countCorrectable(written, say('0', '9', 'left'))).toBe(0)
    expect(countCorrectable(open, say('0', '1', 'left'))).toBe(3)
  })

  test('without the last correction all is as before it', () => {
    const one = [say('0', '1', 'left')]
    const two = [...one, say('0', '3', 'right')]
    expect(correctHands(open, two.slice(0, -1))).toEqual(correctHands(open, one))
    expect(correctHands(open, [])).toBe(open)
  })

  test('the piece and its notes keep their names', () => {
    const corrected = correctHands(inferHands(open), [say('0', '3', 'left')])
    expect(corrected.id).toBe(open.id)
    expect(corrected.notes.map((n) => n.id)).toEqual(open.notes.map((n) => n.id))
  })

  test('a correction holds at another resolution of the file', () => {
    const fine = writeScore({
      right: 'C5 D5 E5:1/2 F5:1/2 G5',
      left: 'C4:2 G3:2',
      ticksPerQuarter: 96,
    })
    const said = handCorrection(written, tick(480), tick(1200), 'left')
    expect(said).toEqual(say('1', '5_2', 'left'))
    const notes = fine.notes.map((n) => ({
      ...n,
      hand: 'right' as const,
      handFrom: 'inferred' as const,
    }))
    expect(shown(correctHands({ ...fine, notes }, [said]))).toBe('RRllllR')
  })
})

describe('stored corrections', () => {
  test('come back as they were', () => {
    const all = [say('0', '3_2', 'left'), say('2', '2', 'right', 60, 64)]
    expect(decodeCorrections(JSON.parse(JSON.stringify(all)))).toEqual(all)
  })

  test.each([
    [undefined],
    ['left'],
    [[{ from: '0', to: '1' }]],
    [[{ from: '0', to: '1', hand: 'foot' }]],
    [[{ from: 0, to: 1, hand: 'left' }]],
    [[{ from: '-1', to: '1_0', hand: 'left' }]],
    [[{ from: '0', to: '1', hand: 'left', keys: [128] }]],
    [[null]],
  ])('%j is none', (stored) => {
    expect(decodeCorrections(stored)).toEqual([])
  })
})
