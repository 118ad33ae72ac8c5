import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fitLine, median, standardDeviation } from '@/judge/line'
import { replayTake } from '@/judge/replay'
import type { Repetition } from '@/judge/repetition'
import type { KeyEvent } from '@/music/keyEvent'
import { ms, quarterMs, tempo } from '@/music/units'
import { createDice } from './player'
import { listen, writeChunk, writeTake } from './notation'

const sixteenths = 'C4:1/4 D4:1/4 E4:1/4 F4:1/4 G4:1/4 A4:1/4 B4:1/4 C5:1/4'
/** Sixteenths at 80 quarters a minute last 187.5 ms. */
const sixteenth = quarterMs(tempo(80)) / 4

const play = (late: readonly number[]): Repetition => {
  const events = sixteenths.split(' ').flatMap((word, i): KeyEvent[] => {
    const at = ms(1000 + i * sixteenth + (late[i] ?? 0))
    return writeTake(word.split(':')[0] ?? '').events.flatMap((e): KeyEvent[] =>
      e.kind === 'down' ? [{ ...e, at }] : [],
    )
  })
  const { repetitions } = replayTake(
    writeChunk(sixteenths),
    { standard: 'time', forgiveBrushed: false },
    { events },
  )
  const [only] = repetitions
  if (!only) throw new Error('no repetition')
  return only
}

describe('evenness: the standard deviation of the gaps (Jabusch, Vauth & Altenmüller 2004)', () => {
  test('a perfect run of sixteenths at 80 has none, and its tempo is 80', () => {
    const { figures } = play([])
    expect(figures.gapSd).toBeCloseTo(0, 6)
    expect(figures.gapCv).toBeCloseTo(0, 6)
    expect(figures.tempo).toBeCloseTo(80, 6)
  })

  /** 6 ms is the smallest displacement heard at gaps under 240 ms (Friberg & Sundberg 1995, JASA 98:2524). */
  test('one onset late by the smallest audible 6 ms: gaps of 193.5 and 181.5 ms among five of 187.5', () => {
    const { figures, verdict } = play([0, 0, 0, 6, 0, 0, 0, 0])
    const gaps = [187.5, 187.5, 193.5, 181.5, 187.5, 187.5, 187.5]
    expect(figures.gapSd).toBeCloseTo(standardDeviation(gaps) ?? NaN, 6)
    expect(figures.gapCv).toBeCloseTo((standardDeviation(gaps) ?? NaN) / 187.5, 6)
    expect(verdict).toBe('clean')
  })

  /** JND 2.5 % of the gap above 240 ms (same source): a displacement at the threshold is far from a flaw. */
  test.each([300, 500, 1000])('a displacement just audible at gaps of %i ms is clean', (gap) => {
    const shift = 0.025 * gap
    const wait = gap - 400
    const played = `C4 ${wait} D4 ${wait + shift} E4 ${wait - shift} F4 ${wait} G4`
    expect(listen('C4 D4 E4 F4 G4', played, { standard: 'time' })[0]?.flaws).toEqual([])
  })

  test('standard deviation by a worked example: 2 4 4 4 5 5 7 9 has 32/7 as variance', () => {
    expect(standardDeviation([2, 4, 4, 4, 5, 5, 7, 9])).toBeCloseTo(Math.sqrt(32 / 7), 12)
  })
})

describe('the robust line (Sen 1968)', () => {
  const leastSquares = (points: readonly { x: number; y: number }[]): number => {
    const n = points.length
    const mx = points.reduce((s, p) => s + p.x, 0) / n
    const my = points.reduce((s, p) => s + p.y, 0) / n
    const top = points.reduce((s, p) => s + (p.x - mx) * (p.y - my), 0)
    return top / points.reduce((s, p) => s + (p.x - mx) ** 2, 0)
  }

  test('agrees with least squares on clean data', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 40 }), fc.integer(), (n, seed) => {
        const dice = createDice(seed)
        const points = Array.from({ length: n }, (_, x) => ({
          x,
          y: 400 * x + 20 * (dice() - 0.5),
        }))
        const slope = fitLine(points)?.slope ?? NaN
        expect(Math.abs(slope / leastSquares(points) - 1)).toBeLessThan(0.02)
      }),
    )
  })

  test('is not moved by one hesitation, as least squares is', () => {
    const points = [0, 1, 2, 3, 4, 5, 6, 7].map((x) => ({ x, y: 400 * x + (x === 7 ? 2000 : 0) }))
    expect(fitLine(points)?.slope).toBe(400)
    expect(leastSquares(points)).toBeGreaterThan(520)
  })

  /** Sen 1968, J. Am. Stat. Assoc. 63:1379: his worked example of seven points has the slope 4. */
  test('has the slope of the published example (from memory)', () => {
    const x = [1, 2, 3, 4, 10, 12, 18]
    const y = [9, 15, 19, 20, 45, 55, 78]
    expect(fitLine(x.map((v, i) => ({ x: v, y: y[i] ?? NaN })))?.slope).toBe(4)
  })

  test('one point or none has no line, and nothing has no median', () => {
    expect(fitLine([{ x: 1, y: 1 }])).toBeUndefined()
    expect(median([])).toBeUndefined()
  })
})

describe('the other figures', () => {
  test('the left hand behind the right, and the largest spread of a chord', () => {
    const [first] = listen('[,C3 E4] [,D3 F4]', 'E4 -370 C3 -30 F4 -350 D3')
    expect(first?.figures.handLag).toBeCloseTo(40, 6)
    expect(first?.figures.chordSpread).toBe(50)
  })

  test('a key let go before the next is struck is a gap, after it an overlap', () => {
    const detached = listen('C4 D4 E4', 'C4 D4 E4')[0]
    expect(detached?.figures.overlap).toBe(-100)
    const legato = listen('C4 D4 E4', 'C4 -150 D4 -150 E4')[0]
    expect(legato?.figures.overlap).toBe(50)
  })

  test('a single note has no tempo and no evenness', () => {
    const figures = listen('C4', 'C4')[0]?.figures
    expect(figures).toEqual({ velocityMean: 64 })
  })
})
