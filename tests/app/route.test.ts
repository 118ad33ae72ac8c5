import fc from 'fast-check'
import { expect, test } from 'vitest'
import { formatRoute, parseRoute, type BuildUpPlan, type Route } from '@/app/route'
import { daysAfter, type Day } from '@/journal/day'
import { studentId } from '@/journal/ids'
import { forms } from '@/music/form'
import { handChoices } from '@/music/music'
import { pieceId } from '@/music/units'

const fraction = fc
  .tuple(fc.nat(5000), fc.integer({ min: 2, max: 960 }))
  .map(([n, d]) => (n % d === 0 ? `${n}` : `${n}_${d}`))
const piece = fc.stringMatching(/^p[0-9a-f]{16}$/).map(pieceId)
const student = fc.uuid().map(studentId)
const week = fc.integer({ min: 0, max: 30_000 }).map((days) => daysAfter('1990-01-01' as Day, days))
const place = fc.record({
  from: fraction,
  to: fraction,
  hand: fc.constantFrom(...handChoices),
})
const plan: fc.Arbitrary<BuildUpPlan> = fc.record({
  passage: place,
  thoroughness: fc.constantFrom('thorough' as const, 'brisk' as const),
  direction: fc.constantFrom('forward' as const, 'fromTheEnd' as const),
})
const variant = fc.constantFrom(...forms.filter((form) => form !== 'asWritten'))
const route: fc.Arbitrary<Route> = fc.oneof(
  fc.constant({ kind: 'pieces' } as const),
  fc.constant({ kind: 'summary' } as const),
  fc.constant({ kind: 'tapTest' } as const),
  fc.constant({ kind: 'review' } as const),
  fc.record({ kind: fc.constant('review' as const), piece, student }, { requiredKeys: ['kind'] }),
  fc.record({ kind: fc.constant('teacher' as const), piece, student }, { requiredKeys: ['kind'] }),
  fc.record({ kind: fc.constant('teacher' as const), week, student }, { requiredKeys: ['kind'] }),
  fc.constant({ kind: 'students' } as const),
  fc.record(
    {
      kind: fc.constant('repetitions' as const),
      asked: fc.record(
        { piece, from: week, cold: fc.constant(true as const) },
        { requiredKeys: [] },
      ),
      student,
    },
    { requiredKeys: ['kind', 'asked'] },
  ),
  fc.constant({ kind: 'journal' } as const),
  fc.constant({ kind: 'write' } as const),
  fc.constant({ kind: 'record' } as const),
  fc.record({ kind: fc.constant('piece' as const), piece }),
  fc.record({ kind: fc.constant('buildUp' as const), piece, plan }),
  fc.record(
    { kind: fc.constant('practice' as const), piece, place, form: variant, plan },
    { requiredKeys: ['kind', 'piece', 'place'] },
  ),
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
  ['#/practice/p1/3-4/left/sideways', 'a form that there is not'],
  ['#/practice/p1/3-4/left/of/3-9/left/brisk', 'half a build-up'],
  ['#/buildup/p1/3-9/left/quickly/forward', 'a build-up that is neither thorough nor brisk'],
  ['#/elsewhere', 'an unknown word'],
])('the address "%s" (%s) leads to the pieces', (hash) => {
  expect(parseRoute(hash)).toEqual({ kind: 'pieces' })
})
