import { expect, test } from 'vitest'
import { layOut } from '@/app/layOut'
import { spotPlace } from '@/app/spotList'
import { tempo } from '@/music/units'
import { analyse } from '@/plan/analyse'
import { sampleScore } from '../support/monthOfPractice'

const score = sampleScore('ferry-at-dusk.mid')

test('the spot that the person put first leads the plan', () => {
  const { spots } = analyse(score, tempo(72))
  const wished = spots.at(-1)
  if (!wished || spots.length < 2) throw new Error('too few spots to rank')
  const order = [wished, ...spots.slice(0, -1)].map((spot) => spotPlace(score, spot))
  const leader = (ranked: typeof order) =>
    layOut(score, tempo(72), { said: [], order: ranked }, 'medium').places[0]?.place
  const first = leader(order)
  expect(first).toMatchObject({ hand: wished.hand })
  expect(first?.from).toBe(`${order[0]?.from}`)
  expect(leader([])).not.toEqual(first)
})
