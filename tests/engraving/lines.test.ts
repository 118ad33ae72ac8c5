/** Octave lines and clefs as they are drawn: in a stretch, and from line to line of a piece. */
import { beforeAll, describe, expect, test } from 'vitest'
import type { VerovioToolkit } from 'verovio/esm'
import { draw } from '@/engraving/draw'
import { drawSystem } from '@/engraving/drawSystem'
import { writeMei } from '@/engraving/mei'
import { cutStretch, cutSystem } from '@/engraving/stretch'
import { openEngraverHere } from '../support/toolkit'
import type { HandChoice, Score } from '@/music/music'
import { tick } from '@/music/units'
import { resolution, scoreOf } from './notation'

let toolkit: VerovioToolkit
beforeAll(async () => {
  toolkit = await openEngraverHere()
})

const stretchOf = (score: Score, from = 0, to?: number, hand: HandChoice = 'right') => {
  const end = to === undefined ? score.end : tick(to * resolution)
  const stretch = cutStretch(score, tick(from * resolution), end, hand)
  if (!stretch) throw new Error('no such stretch')
  return stretch
}
const meiOf = (...stretch: Parameters<typeof stretchOf>): string =>
  writeMei(stretchOf(...stretch)).mei
const count = (text: string, what: string): number => text.split(what).length - 1
const octaves = (mei: string): string[] => mei.match(/<octave [^>]*>/g) ?? []
const clefs = (mei: string): string[] =>
  [...mei.matchAll(/<clef [^>]*shape="(.)"[^>]*\/>(<\/layer>)?/g)].map(
    ([, shape, end]) => `${shape}${end ? ' before the bar line' : ''}`,
  )

const high = scoreOf('C5 1 E5 1 G5 1 C6 1 | C7 1 E7 1 G7 1 E7 1 | C7 2 C5 2')

describe('an octave line', () => {
  test('goes from its first head to its last; the notes under it keep their ids and sound as before', () => {
    const mei = meiOf(high)
    expect(octaves(mei)).toEqual([
      '<octave staff="1" dis="8" dis.place="above" startid="#n4k96" endid="#n8k96"/>',
    ])
    expect(mei).toMatch(/xml:id="n6k103"[^>]* pname="g" oct="6" oct.ges="7"/)
    toolkit.loadData(mei)
    toolkit.renderToTimemap()
    expect(toolkit.getMIDIValuesForElement('n6k103').pitch).toBe(103)
  })

  test('is drawn with its letters, and leaves no note out', () => {
    const { svg } = draw(toolkit, stretchOf(high), { width: 900, height: 300 })
    expect(count(svg, 'class="octave"')).toBe(1)
    // SMuFL: U+E511 ottava alta, “8va”.
    expect(svg).toContain('href="#E511')
    for (const { id } of high.notes) expect(count(svg, ` id="${id}"`)).toBe(1)
  })

  test('covers what a chunk draws of it, the same in every drawing', () => {
    expect(octaves(meiOf(high, 5, 7))).toEqual([
      expect.stringContaining('startid="#n5k100" endid="#n6k103"'),
    ])
    // One note, which alone would need no line.
    expect(octaves(meiOf(high, 6, 7))).toHaveLength(1)
  })

  test('goes on over notes that are tied, and stands again in the next line of the piece', () => {
    const held = scoreOf('C7 1 E7 1 G7 1 E7 2 C7 1 D7 2')
    expect(octaves(meiOf(held))[0]).toContain('endid="#n6k98"')
    const [first, second] = [0, 1].map((bar) => cutSystem(held, bar, bar))
    expect(first && octaves(writeMei(first).mei)).toHaveLength(1)
    expect(second && octaves(writeMei(second).mei)[0]).toMatch(/startid="#n3k100-t/)
  })

  test('prints an accidental again where one line of the staff means another octave', () => {
    const mei = meiOf(scoreOf('C7 1/2 E7 1/2 F#6 1/2 C7 1/2 E7 1/2 C7 1/2 F5 1/2 E5 1/2'))
    expect(octaves(mei)[0]).toContain('endid="#n5_2k96"')
    const accidentals = [...mei.matchAll(/pname="f" oct="(\d)"(?: oct.ges="(\d)")? accid="(\w)"/g)]
    expect(
      accidentals.map(([, line, sounding = line, sign]) => `${line}${sign} ${sounding}`),
    ).toEqual(['5s 6', '5n 5'])
  })
})

describe('a new clef', () => {
  const left = scoreOf('l: C3 4 | C5 1 E5 1 G5 1 C6 1 | C3 4 | C3 4')

  test('is announced before the bar line', () => {
    expect(clefs(meiOf(left, 0, undefined, 'left'))).toEqual([
      'G before the bar line',
      'F before the bar line',
    ])
  })

  test('stands before its beat where it comes inside a bar, once for both voices', () => {
    const score = scoreOf(
      'l: C3 2 C5 1/2 E5 1/2 G5 1/2 C6 1/2 | C6 1 B5 1 A5 1 G5 1\nl: r 2 G4 1 A4 1 | C5 2 B4 2',
    )
    const mei = meiOf(score, 0, undefined, 'left')
    expect(clefs(mei)).toEqual(['G'])
    expect(count(mei, '<clef sameas=')).toBeLessThanOrEqual(1)
    expect(mei).toMatch(/<clef xml:id="[^"]+" shape="G" line="2"\/>(<beam>)?<note xml:id="n2k/)
  })

  test('at the end of a line of the piece announces the clef of the next line', () => {
    const lineOf = (bar: number): string => {
      const stretch = cutSystem(left, bar, bar)
      return stretch ? writeMei(stretch).mei : ''
    }
    expect(clefs(lineOf(0))).toEqual(['G before the bar line'])
    expect(lineOf(1)).toContain('clef.shape="G"')
    expect(clefs(lineOf(1))).toEqual(['F before the bar line'])
    expect(clefs(lineOf(2))).toEqual([])
    const stretch = cutSystem(left, 0, 0)
    const { svg } = drawSystem(toolkit, stretch ?? stretchOf(left), {
      width: 500,
      height: Infinity,
      space: 9,
    })
    expect(count(svg, 'class="clef"')).toBe(2)
  })

  test('is not announced where a chunk ends', () => {
    expect(clefs(meiOf(left, 0, 4, 'left'))).toEqual([])
    expect(meiOf(left, 4, 8, 'left')).toContain('clef.shape="G"')
  })
})

test('a line that is too dense for its width stays one line, set smaller', () => {
  const bar =
    'C5 1/4 E#5 1/4 F#5 1/4 G##5 1/4 A#5 1/4 G5 1/4 Eb5 1/4 C#5 1/4 C5 1/4 E5 1/4 F#5 1/4 Gb5 1/4 A5 1/4 G5 1/4 Eb5 1/4 C#5 1/4 | '
  const stretch = cutSystem(scoreOf(bar.repeat(4)), 0, 3)
  if (!stretch) throw new Error('no such bars')
  const { svg, width, height } = drawSystem(toolkit, stretch, {
    width: 500,
    height: Infinity,
    space: 9,
  })
  expect(count(svg, 'class="system"')).toBe(1)
  expect(count(svg, 'class="measure"')).toBe(4)
  expect(width).toBeLessThanOrEqual(500)
  expect(height).toBeGreaterThan(20)
})
