import { describe, expect, test } from 'vitest'
import { costOf, digitsOf, fingerNotes, fix, lineOf } from './fingers'

/**
 * The seven fragments of Czerny's opus 821 in Parncutt, Sloboda, Clarke, Raekallio & Desain 1997
 * (Music Perception 14:341-382), right hand, with the ten best fingerings of each and their totals as
 * published; the last finger is given where `last` says it. B is a figure that goes on for ever.
 */
const fragments = [
  {
    name: 'A',
    keys: [76, 79, 77, 79, 76, 77, 74, 76],
    last: 3,
    best: '24342313=6 13231213=7 14342313=8 35453423=8 13231323=9 13231423=9 13242313=9 12142313=10 13232313=10 24342323=10',
  },
  {
    name: 'C',
    keys: [64, 61, 64, 69, 64],
    last: 1,
    best: '21241=9 21251=9 31241=10 31251=10 32351=10 42351=10 31351=11 42151=11 21351=12 32151=12',
  },
  {
    name: 'D',
    keys: [61, 65, 63, 66, 65, 68, 66],
    last: 2,
    best: '1323132=12 1324132=12 2412132=13 1212132=14 1213242=14 1323142=14 1323242=15 2413242=15 2435132=15 1213232=16',
  },
  {
    name: 'E',
    keys: [81, 92, 93, 88, 89, 85, 86, 80],
    last: 2,
    best: '14523152=24 14523142=28 14512152=31 14513152=32 14515342=32 14515352=32 14524152=32 13412152=33 13523152=33 14515452=33',
  },
  {
    name: 'F',
    keys: [55, 58, 62, 58, 67, 62],
    last: 1,
    best: '124251=17 124151=19 123151=20 124141=20 123141=22 124131=22 135141=23 135251=23 125251=24 135131=24',
  },
  {
    name: 'G',
    keys: [90, 91, 90, 88, 90, 88, 86],
    last: 1,
    best: '3432321=2 2321321=3 3431321=5 2432321=6 4542321=6 2132321=7 2321421=8 2321431=8 3132321=8 3432421=8',
  },
] as const
const figureB = {
  keys: [76, 73, 74, 78],
  best: '3124=7 3214=7 4235=7 4215=11 1235=14 2124=14 3125=14 3215=14 3235=15 4125=15',
}

const parse = (best: string): { digits: string; total: number }[] =>
  best.split(' ').map((each) => {
    const [digits = '', total] = each.split('=')
    return { digits, total: Number(total) }
  })

/** What one more turn of the figure costs. */
const turnCost = (digits: string): number =>
  costOf(
    [0, 1, 2, 3].flatMap(() => figureB.keys),
    digits.repeat(4),
  ) -
  costOf(
    [0, 1, 2].flatMap(() => figureB.keys),
    digits.repeat(3),
  )

const isPractical = (digits: string): boolean => {
  const notes = lineOf([...figureB.keys, ...figureB.keys])
  return fingerNotes(notes, { fixed: fix(notes, digits.repeat(2)) }).best?.impractical === 0
}

describe('the model of Parncutt et al. 1997', () => {
  test.each(fragments)('gives the ten published totals of fragment $name', ({ keys, best }) => {
    const published = parse(best)
    expect(published).toHaveLength(10)
    for (const { digits, total } of published)
      expect([digits, costOf(keys, digits)]).toEqual([digits, total])
  })

  test.each(fragments)(
    'finds the ten best of fragment $name in their order',
    ({ keys, last, best }) => {
      const notes = lineOf(keys)
      const fixed = fix(notes, '.'.repeat(keys.length - 1) + last)
      const found = fingerNotes(notes, { fixed, count: 10 })
      const all = [found.best, ...found.alternatives]
      expect(all.map((each) => each?.cost)).toEqual(parse(best).map(({ total }) => total))
      expect(digitsOf(found.best?.notes ?? [])).toBe(parse(best)[0]?.digits)
    },
  )

  test('gives the ten published totals of fragment B, a figure without end', () => {
    for (const { digits, total } of parse(figureB.best))
      expect([digits, turnCost(digits)]).toEqual([digits, total])
  })

  test('puts the ten best of all fingerings of fragment B in the published order', () => {
    const fingers = ['1', '2', '3', '4', '5']
    const two = fingers.flatMap((a) => fingers.map((b) => a + b))
    const totals = two
      .flatMap((ab) => two.map((cd) => ab + cd))
      .filter(isPractical)
      .map(turnCost)
    const best = totals.toSorted((a, b) => a - b).slice(0, 10)
    expect(best).toEqual(parse(figureB.best).map(({ total }) => total))
  })

  test('divides the total of fragment A among the rules', () => {
    const notes = lineOf(fragments[0].keys)
    const { best } = fingerNotes(notes, { fixed: fix(notes, '24342313') })
    expect(best?.costs).toEqual({
      smallSpan: 1,
      positionCount: 1,
      positionSize: 1,
      weakFinger: 2,
      threeToFour: 1,
    })
  })

  // Worked through with the rules of the paper by hand; 15 and 14 are also what other codings of it give.
  test.each([
    ['60 62 64 65 67 69 71 72', '12312345', 15],
    ['72 71 69 67 65 64 62 60', '54321321', 14],
    ['60 62 64 65 67', '12345', 4],
    ['60 64 67 72', '1235', 5],
  ])('%s with %s costs %d', (keys, digits, total) => {
    expect(costOf(keys.split(' ').map(Number), digits)).toBe(total)
  })
})
