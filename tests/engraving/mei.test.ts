import { SaxesParser } from 'saxes'
import { describe, expect, test } from 'vitest'
import { writeMei } from '@/engraving/mei'
import { cutStretch } from '@/engraving/stretch'
import { tick } from '@/music/units'
import type { HandChoice } from '@/music/music'
import { resolution, scoreOf, type Frame } from './notation'

const meiOf = (
  text: string,
  frame: Frame = {},
  from = 0,
  to?: number,
  hand: HandChoice = 'both',
): string => {
  const score = scoreOf(text, frame)
  const end = to === undefined ? score.end : tick(to * resolution)
  const stretch = cutStretch(score, tick(from * resolution), end, hand)
  if (!stretch) throw new Error('no such stretch')
  return writeMei(stretch).mei
}

/** What is printed, in reading order: 'F#' with its sharp, 'F' without, '|' at bar lines. */
const printed = (mei: string): string =>
  [...mei.matchAll(/<measure|<note [^>]*>/g)]
    .map(([tag]) => {
      if (tag.startsWith('<measure')) return '|'
      const letter = /pname="(.)"/.exec(tag)?.[1]?.toUpperCase() ?? ''
      return letter + (/ accid="([^"]+)"/.exec(tag)?.[1] ?? '')
    })
    .join(' ')
    .replace(/^\| /, '')

/** How many notes each beam holds. */
const beams = (mei: string): string =>
  [...mei.matchAll(/<beam>(.*?)<\/beam>/g)]
    .map(([, inside = '']) => (inside.match(/<note |<chord /g) ?? []).length)
    .join(' ')

/** Values in order: '4' quarter, '4.' dotted, '8r' rest, '8s' space, '~' tied on. */
const values = (mei: string): string => {
  const ties = new Set([...mei.matchAll(/<tie startid="#([^"]+)"/g)].map(([, id]) => id))
  return [
    ...mei.matchAll(
      /<(note|chord|rest|space) [^>]*dur="(\w+)"( dots="1")?[^>]*>|<mRest\/>|<measure/g,
    ),
  ]
    .map(([tag, name, dur, dots]) => {
      if (tag === '<mRest/>') return 'R'
      if (tag === '<measure') return '|'
      const sign = name === 'rest' ? 'r' : name === 'space' ? 's' : ''
      const id = /xml:id="([^"]+)"/.exec(tag)?.[1]
      return `${dur}${dots ? '.' : ''}${sign}${ties.has(id ?? '') ? '~' : ''}`
    })
    .join(' ')
    .replace(/^\| /, '')
}

describe('the notation as MEI', () => {
  test('is well-formed XML with ids that occur once', () => {
    const mei = meiOf('C4+E4 1 F#4 1/3 G4 1/3 A4 1/3 B4 5/2\nl: C3 4', { fifths: 1 })
    const ids: string[] = []
    const parser = new SaxesParser({ xmlns: true })
    parser.on('opentag', (tag) => {
      const id = tag.attributes['xml:id']
      if (id) ids.push(id.value)
    })
    parser.on('error', (error) => {
      throw error
    })
    parser.write(mei).close()
    expect(ids.length).toBeGreaterThan(7)
    expect(new Set(ids).size).toBe(ids.length)
  })

  // Common practice, no source: an accidental holds for its line until the bar line.
  test.each([
    ['F#4 1 F#4 1 F4 1 F4 1 | F4 1 F#4 1 G4 2', 0, 'Fs F Fn F | F Fs G'],
    ['F#4 1 F#4 1 F4 1 F4 1', 1, 'F F Fn F'],
    ['F#4 2 G4 2 | F4 2 G4 2', 0, 'Fs G | Fn G'],
    ['F4 2 G4 2 | F#4 2 G4 2', 1, 'Fn G | Fs G'],
    ['F#4 1 F#5 1 F#4 2', 0, 'Fs Fs F'],
    ['F#4 1 F5 1 G4 2', 0, 'Fs Fn G'],
    ['Bb4 1 B4 1 Bb4 2', -1, 'B Bn Bf'],
    ['G4 3 F#4 2 F#4 1 G4 2', 0, 'G Fs | F Fs G'],
  ])('%s in a signature of %d prints %s', (text, fifths, expected) => {
    expect(printed(meiOf(text, { fifths }))).toBe(expected)
  })

  // Common practice, no source: eighths in 2/4 and half bars of 4/4 in fours, in 3/4 six, in 6/8 threes.
  test.each([
    [2, 4, 'C4 1/2 D4 1/2 E4 1/2 F4 1/2', '4'],
    [3, 4, 'C4 1/2 D4 1/2 E4 1/2 F4 1/2 G4 1/2 A4 1/2', '6'],
    [6, 8, 'C4 1/2 D4 1/2 E4 1/2 F4 1/2 G4 1/2 A4 1/2', '3 3'],
    [4, 4, 'C4 1/2 D4 1/2 E4 1/2 F4 1/2 G4 1/2 A4 1/2 G4 1/2 F4 1/2', '4 4'],
    [5, 8, 'C4 1/2 D4 1/2 E4 1/2 F4 1/2 G4 1/2', '3 2'],
    [3, 8, 'C4 1/2 D4 1/2 E4 1/2', '3'],
    [2, 4, 'C4 1/4 D4 1/4 E4 1/4 F4 1/4 G4 1/2 A4 1/2', '4 2'],
    [3, 4, 'C4 1/2 D4 1/2 E4 1/4 F4 1/4 G4 1/2 A4 1/2 B4 1/2', '2 3 2'],
    [6, 8, 'C4 1/4 D4 1/4 E4 1/4 F4 1/4 G4 1/4 A4 1/4 G4 3/2', '6'],
    [4, 4, 'C4 1/2 r 1/2 D4 1/2 E4 1/2 F4 2', '2'],
  ])('in %d/%d %s is beamed %s', (count, beatType, text, expected) => {
    expect(beams(meiOf(text, { time: { beats: count, beatType } }))).toBe(expected)
  })

  test.each([
    ['C4 3 D4 3 E4 2', '2. 4~ | 2 2'],
    ['C4 1/2 D4 1 E4 1/2 F4 2', '8 4 8 2'],
    ['C4 3/2 D4 2 E4 1/2', '4. 8~ 4. 8'],
    ['C4 1 D4 2 E4 1', '4 2 4'],
    ['C4 1/4 D4 3/4 E4 3', '16 8. 2.'],
    ['C4 4 D4 4', '1 | 1'],
    ['C4 1 r 3', '4 4r 2r'],
    ['r 1/2 C4 1/2 r 1 D4 2', '8r 8 4r 2'],
    ['C4 4 r 4 D4 4', '1 | R | 1'],
  ])('%s is written %s', (text, expected) => {
    expect(values(meiOf(text, {}, 0, undefined, 'right'))).toBe(expected)
  })

  test('no half rest hides a beat of 3/4', () => {
    expect(values(meiOf('C4 1 r 2', { time: { beats: 3, beatType: 4 } }, 0, 3, 'right'))).toBe(
      '4 4r 4r',
    )
  })

  test('triplets are three in the place of two, of eighths, quarters and sixteenths', () => {
    const mei = meiOf(
      'C4 1/3 D4 1/3 E4 1/3 F4 1/6 G4 1/6 A4 1/6 G4 1/2 C4 2/3 D4 2/3 E4 2/3',
      {},
      0,
      4,
      'right',
    )
    expect(mei.match(/<tuplet num="3" numbase="2"/g)).toHaveLength(3)
    expect(values(mei)).toBe('8 8 8 16 16 16 8 4 4 4')
  })

  test('three against two: a triplet in one hand, plain eighths in the other', () => {
    const mei = meiOf('C5 1/3 D5 1/3 E5 1/3 F5 1\nl: C3 1/2 G3 1/2 C3 1', {
      time: { beats: 2, beatType: 4 },
    })
    const [right = '', left = ''] = mei.split('<staff n="2">')
    expect(values(right.slice(right.indexOf('<staff n="1">')))).toBe('8 8 8 4')
    expect(values(left)).toBe('8 8 4')
    expect(left).not.toContain('<tuplet')
  })

  test('two voices only where notes overlap; the higher is the first', () => {
    const mei = meiOf('E5 2 F5 2 | C5 4\nC4 1/2 D4 1/2 E4 1 D4 2', {}, 0, undefined, 'right')
    const [first = '', second = ''] = mei.split('<measure').slice(1)
    expect(first.match(/<layer/g)).toHaveLength(2)
    expect(first.indexOf('oct="5"')).toBeLessThan(first.indexOf('<layer n="2">'))
    expect(second.match(/<layer/g)).toHaveLength(1)
  })

  // Common practice, no source: in a bar of two voices chords are shared between them.
  test.each([
    ['E5 1 F5 3\nC5 1 D5 1 E5 1 D5 1', 2, 'C5 goes with the second voice'],
    ['E5 1 F5 3 | G5 4\nC5 1 D5 1 E5 1 D5 1 | E5 4', 2, 'the chord of the next bar stays one'],
    ['E5 2 F5 2\nC5 2 D5 2', 1, 'chords alone are one voice'],
  ])('%s: %d voices, %s', (text, count) => {
    const [first = '', second = ''] = meiOf(text, {}, 0, undefined, 'right')
      .split('<measure')
      .slice(1)
    expect(first.match(/<layer/g)).toHaveLength(count)
    expect(first.match(/<chord/g) ?? []).toHaveLength(count === 1 ? 2 : 0)
    expect(second.match(/<layer/g) ?? []).toHaveLength(text.includes('|') ? 1 : 0)
  })

  test('a hand of two voices that is silent has one rest', () => {
    const mei = meiOf('E5 2 r 1 F5 1\nC4 1 D4 1 r 1 E4 1/2 F4 1/2', {}, 0, 4, 'right')
    expect(mei.match(/<rest /g)).toHaveLength(1)
  })

  test('beside a sextuplet the other voice keeps its plain eighths', () => {
    const six = Array.from({ length: 6 }, (_, i) => `${'CDEFGA'[i]}5 1/6`).join(' ')
    const mei = meiOf(
      `${six} B5 1\nC4 1/2 D4 1/2 E4 1`,
      { time: { beats: 2, beatType: 4 } },
      0,
      2,
      'right',
    )
    const [, second = ''] = mei.split('<layer n="2">')
    expect(second).not.toContain('<tuplet')
    // The lower note of the last quarter goes on with it.
    expect(values(second)).toBe('8 8 4')
  })

  test('a chunk from the middle of a bar to the middle of the next is cut open at both ends', () => {
    const mei = meiOf('C4 1 D4 1 E4 1 F4 1 | G4 1 A4 1 B4 1 C5 1', {}, 2, 6, 'right')
    expect(values(mei)).toBe('4 4 | 4 4')
    expect(mei).toContain('<measure n="1" metcon="false">')
    expect(mei).toContain('<measure n="2" metcon="false" right="invis">')
  })

  test('where a note from before the chunk still sounds no rest is written', () => {
    const mei = meiOf('C5 1 D5 1 E5 1 F5 1\nl: C3 3 G3 1', {}, 1, 4)
    expect(values(mei)).toBe('4 4 4 4s 4s 4')
  })

  test('a pickup has no number, the first full bar has 1', () => {
    const mei = meiOf('G4 1 C5 1 D5 1 E5 1', { time: { beats: 3, beatType: 4 }, pickup: 1 })
    expect([...mei.matchAll(/<measure([^>]*)>/g)].map(([, a]) => a)).toEqual([
      ' metcon="false"',
      ' n="1"',
    ])
  })

  test.each([
    ['C4 4', 'right', 'G'],
    ['C2 2 E2 2', 'right', 'F'],
    ['l: C3 4', 'left', 'F'],
    ['l: C5 2 E5 2', 'left', 'G'],
  ] as const)('%s in the %s hand begins with the clef %s', (text, hand, shape) => {
    expect(meiOf(text, {}, 0, undefined, hand)).toContain(`clef.shape="${shape}"`)
  })
})
