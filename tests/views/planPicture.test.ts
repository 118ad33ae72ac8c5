import { describe, expect, test } from 'vitest'
import { layOut } from '@/app/layOut'
import { paceFrom } from '@/plan/pace'
import { planPiece, type PiecePlan, type PlacePlan } from '@/plan/plan'
import { tempo } from '@/music/units'
import { recordFrom } from '@/plan/record'
import { countBars, linesOf, rowsOf, segmentsOf } from '@/views/planPicture'
import { standingWords, weekWords } from '@/views/planWords'
import { dayNumber, emptyRecord } from '../plan/practise'
import { sampleScore } from '../support/monthOfPractice'

const score = sampleScore('ferry-at-dusk.mid')
const layout = layOut(score, tempo(72), { said: [], order: [] }, 'medium')
const fresh = planPiece(layout, emptyRecord, paceFrom(emptyRecord, [layout]))
const withState = (state: PlacePlan['state'], is: (place: PlacePlan) => boolean): PiecePlan => ({
  ...fresh,
  places: fresh.places.map((place) => (is(place) ? { ...place, state } : place)),
})
const isFirst = ({ kind, from }: PlacePlan): boolean => kind === 'passage' && from === 0

describe('the picture of a piece', () => {
  test('shows every bar once for each hand and once together, where both hands play', () => {
    const segments = segmentsOf(fresh, score.bars)
    for (const lane of ['right', 'left', 'both'] as const) {
      const bars = segments
        .filter((each) => each.lane === lane)
        .flatMap(({ from, to }) => Array.from({ length: to - from + 1 }, (_, i) => from + i))
      expect(bars.toSorted((a, b) => a - b)).toEqual(score.bars.map((_, i) => i))
    }
  })

  test('gives each hand at least what both together have', () => {
    const segments = segmentsOf(withState('kept', isFirst), score.bars)
    const first = segments.filter(({ place, from }) => place.kind === 'passage' && from === 0)
    expect(first.map(({ lane, state }) => `${lane} ${state}`)).toEqual([
      'right kept',
      'left kept',
      'both kept',
    ])
  })

  test('counts the bars of each state, and all of them', () => {
    const counts = countBars(
      segmentsOf(withState('secure', isFirst), score.bars),
      score.bars.length,
    )
    expect(counts).toEqual(
      new Map([
        ['secure', 4],
        ['untouched', 16],
      ]),
    )
  })

  test('a passage of which a hand has played something is practised, in picture, count and list', () => {
    const first = fresh.places.find(isFirst)
    const exercise = first?.exercises.find(({ hand }) => hand === 'right')
    if (!exercise) throw new Error('nothing to play')
    const record = recordFrom([
      {
        day: dayNumber(0),
        piece: layout.piece,
        chunk: exercise.chunk.id,
        tally: { clean: 5, flawed: 0, brokenOff: 0 },
        ms: 60_000,
        longestStreak: 5,
        flaws: {},
        rungs: [],
        doneAt: tempo(72),
        places: [],
      },
    ])
    const plan = planPiece(layout, record, paceFrom(record, [layout]))
    const place = plan.places.find(isFirst)
    expect(place && standingWords(place)).toMatch(/^\d+ of \d+ exercises done/)
    const segments = segmentsOf(plan, score.bars)
    const here = segments.filter((each) => each.place === place)
    expect(here.map(({ lane, state }) => `${lane} ${state}`)).toEqual([
      'right practised',
      'left untouched',
      'both practised',
    ])
    expect(countBars(segments, score.bars.length).get('practised')).toBe(4)
    for (const { state, begun } of plan.places) expect(state !== 'untouched').toBe(begun)
  })

  test.each([
    [20, 24, '0-19'],
    [20, 16, '0-11 12-19'],
    [20, 8, '0-7 8-15 16-19'],
    [17, 16, '0-11 12-16'],
    [1, 8, '0-0'],
  ])('%i bars, %i at most in a line: %s', (bars, most, lines) => {
    expect(
      linesOf(bars, most)
        .map((line) => line.join('-'))
        .join(' '),
    ).toBe(lines)
  })

  test('puts stretches that overlap below one another', () => {
    const [one] = segmentsOf(fresh, score.bars)
    if (!one) throw new Error('nothing to show')
    const at = (from: number, to: number) => ({ ...one, from, to })
    const all = [at(0, 3), at(2, 5), at(4, 6), at(7, 7)]
    expect(all.map((each) => rowsOf(all).get(each))).toEqual([0, 1, 0, 0])
  })
})

test.each([
  [0.4, 0.9, 'about 1 week'],
  [3.6, 6.2, '4 to 7 weeks'],
  [40, 104, '40 to 104 weeks'],
  [93, 351, '2 to 7 years'],
  [20, 110, '1 to 3 years'],
])('%d to %d weeks are told as people count', (low, high, told) => {
  expect(weekWords({ weeks: { value: low, low, high } })).toBe(told)
})
