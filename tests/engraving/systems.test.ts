/** The whole piece line by line: what stands in a line, and how its borders look. */
import fc from 'fast-check'
import { readdirSync, readFileSync } from 'node:fs'
import { beforeAll, describe, expect, test } from 'vitest'
import type { VerovioToolkit } from 'verovio/esm'
import type { Drawing } from '@/engraving/draw'
import { drawSystem } from '@/engraving/drawSystem'
import { cutSystem } from '@/engraving/stretch'
import { readSystemPlaces } from '@/engraving/systemPlaces'
import { planSystems } from '@/engraving/systems'
import { openEngraverHere } from '../support/toolkit'
import type { Score } from '@/music/music'
import { noteId } from '@/music/units'
import { readPiece } from '@/score/readPiece'
import { writeScore } from '../music/writeScore'

let toolkit: VerovioToolkit
beforeAll(async () => {
  toolkit = await openEngraverHere()
})

const line = (score: Score, fromBar: number, toBar: number, width = 900): Drawing => {
  const stretch = cutSystem(score, fromBar, toBar)
  if (!stretch) throw new Error('no such bars')
  return drawSystem(toolkit, stretch, { width, height: Infinity, space: 9 })
}

const count = (svg: string, what: string): number => svg.split(what).length - 1

/** F sharp and the C below are held over the first bar line. */
const held = writeScore({ right: 'C5 D5 E5 F#5:2 G5 A5 B5 r:4', left: 'C3:6 D3:2 E3:4' })

const samples = readdirSync('sample-midi').filter((name) => name.endsWith('.mid'))
const sample = (name: string): Score => {
  const read = readPiece(readFileSync(`sample-midi/${name}`), name)
  if (!read.ok) throw new Error(name)
  return read.value.score
}

describe('the lines of a piece', () => {
  test('hold each bar once, in order, on a page of any width', () => {
    const score = sample('ferry-at-dusk.mid')
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), (width) => {
        const bars = planSystems(score, width).flatMap(({ fromBar, toBar }) =>
          Array.from({ length: toBar - fromBar + 1 }, (_, i) => fromBar + i),
        )
        expect(bars).toEqual(score.bars.map((_, i) => i))
      }),
    )
  })

  test.each(samples)('of %s are as wide as the page, and each is one system', (name) => {
    const score = sample(name)
    const plan = planSystems(score, 100)
    expect(plan.length).toBeLessThan(score.bars.length)
    for (const [i, { fromBar, toBar }] of plan.entries()) {
      const { svg, width } = line(score, fromBar, toBar)
      expect(count(svg, 'class="system"')).toBe(1)
      expect(count(svg, 'class="measure"')).toBe(toBar - fromBar + 1)
      expect(width).toBeLessThanOrEqual(900)
      if (i < plan.length - 1) expect(width).toBeGreaterThan(895)
    }
  })

  test('say the time signature once, and end with the final bar line', () => {
    const [first, second] = [line(held, 0, 0).svg, line(held, 1, 2).svg]
    expect(count(first, 'class="meterSig">')).toBe(2)
    expect(count(second, 'class="meterSig">')).toBe(0)
    // A thin line and a thick one on each staff and between them, against a thin one alone.
    const lines = (svg: string) => count(svg.slice(svg.lastIndexOf('class="barLine"')), '<path')
    expect(lines(second)).toBeGreaterThan(lines(first))
  })

  test('show a held note in both lines, with the tie open in each', () => {
    const [first, second] = [line(held, 0, 0).svg, line(held, 1, 2).svg]
    expect(count(first, 'class="open-tie"')).toBe(2)
    expect(count(second, 'class="open-tie"')).toBe(2)
    // G A B and D E, and what is held of F sharp and C.
    expect(count(second, 'class="note"')).toBe(7)
  })

  test('give an id to shapes alone, which are the same in every drawing', () => {
    const { svg } = line(held, 1, 2)
    const ids = [...svg.matchAll(/<g id="([^"]*)"/g)].map(([, id]) => id ?? '')
    expect(ids.filter((id) => !/^E[0-9A-F]{3}-/.test(id))).toEqual([])
    for (const [, used] of svg.matchAll(/href="#([^"]*)"/g)) expect(ids).toContain(used)
  })
})

describe('places in a line', () => {
  const placesOf = () => readSystemPlaces(line(held, 1, 2).svg)

  test('tell where its bars are, side by side', () => {
    const { bars } = placesOf()
    const [first, second] = bars
    expect(bars).toHaveLength(2)
    expect(first?.left).toBeGreaterThan(0)
    expect(second?.left).toBe(first?.right)
    expect(second?.right).toBeGreaterThan(second?.left ?? 1)
    expect(readSystemPlaces(line(held, 0, 0).svg).bars[0]?.right).toBeCloseTo(1, 1)
  })

  test('tell where its notes are: from left to right, the higher ones higher', () => {
    const { notes } = placesOf()
    const at = (id: string) => notes.get(noteId(id))
    const [g, a, b] = [at('n5k79'), at('n6k81'), at('n7k83')]
    expect([g, a, b].map((place) => (place ? place.x > 0 && place.x < 1 : false))).not.toContain(
      false,
    )
    expect((a?.x ?? 0) - (g?.x ?? 0)).toBeGreaterThan(0)
    expect((a?.y ?? 1) - (g?.y ?? 0)).toBeLessThan(0)
    expect((b?.x ?? 0) - (a?.x ?? 0)).toBeGreaterThan(0)
  })

  test('tell where the staves begin and end', () => {
    const { top, bottom } = placesOf()
    expect(top).toBeGreaterThan(0)
    expect(bottom).toBeGreaterThan(top)
    expect(bottom).toBeLessThan(1)
  })
})
