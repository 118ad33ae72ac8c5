import fc from 'fast-check'
import { expect, test } from 'vitest'
import { formatRoute, parseRoute, type Route } from '@/app/route'
import { handChoices } from '@/music/music'
import { pieceId } from '@/music/units'

const fraction = fc
  .tuple(fc.nat(5000), fc.integer({ min: 2, max: 960 }))
  .map(([n, d]) => (n % d === 0 ? `${n}` : `${n}_${d}`))
const piece = fc.stringMatching(/^p[0-9a-f]{16}$/).map(pieceId)
const route: fc.Arbitrary<Route> = fc.oneof(
  fc.constant({ kind: 'pieces' } as const),
  fc.constant({ kind: 'summary' } as const),
  fc.constant({ kind: 'tapTest' } as const),
  fc.constant({ kind: 'write' } as const),
  fc.constant({ kind: 'record' } as const),
  fc.record({ kind: fc.constant('piece' as const), piece }),
  fc.record({
    kind: fc.constant('practice' as const),
    piece,
    place: fc.record({ from: fraction, to: fraction, hand: fc.constantFrom(...handChoices) }),
  }),
)

test('every route survives being written into the address and read back', () => {
  fc.assert(
    fc.property(route, (each) => {
      expect(parseRoute(formatRoute(each))).toEqual(each)
    }),
  )
})

test.each([
  ['', 'nothing'],
  ['#/practice/p1/3-4', 'a practice address without a hand'],
  ['#/practice/p1/3-4/foot', 'a hand that nobody has'],
  ['#/practice/p1/a-b/left', 'a place that is no fraction'],
  ['#/elsewhere', 'an unknown word'],
])('the address "%s" (%s) leads to the pieces', (hash) => {
  expect(parseRoute(hash)).toEqual({ kind: 'pieces' })
})
