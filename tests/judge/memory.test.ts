import { expect, test } from 'vitest'
import { beginJudge, stepJudge, type Judge } from '@/judge/judge'
import { ms } from '@/music/units'
import { writeChunk, writeTake } from './notation'

/** Everything the state holds besides the chunk, as text: its length stands for its size. */
const sizeOf = (judge: Judge): number => JSON.stringify({ ...judge, ground: undefined }).length

const drill = (played: string, repetitions: number, every: number): readonly number[] => {
  let judge = beginJudge(writeChunk('C4 D4 E4 F4 G4'), { standard: 'flow', forgiveBrushed: false })
  const take = writeTake(played)
  const sizes: number[] = []
  for (let i = 0; i < repetitions; i++) {
    for (const event of take.events) {
      judge = stepJudge(judge, { ...event, at: ms(event.at + i * every) })[0]
    }
    sizes.push(sizeOf(judge))
  }
  return sizes
}

test('the state after an hour of drilling is as small as after a minute', () => {
  const hour = drill('C4 D4 E4 F4 G4', 900, 4000)
  expect(Math.max(...hour)).toBeLessThan(1.1 * Math.max(...hour.slice(0, 15)))
})

test('without a pause between repetitions too', () => {
  const hour = drill('C4 D4 E4 F4 G4', 900, 2000)
  expect(Math.max(...hour)).toBeLessThan(1.1 * Math.max(...hour.slice(0, 15)))
})

test('an hour of noodling leaves nothing behind', () => {
  const hour = drill('A5 G5 B5 A5 G3 A3 B5 G5 D4 D4', 900, 4100)
  expect(Math.max(...hour)).toBeLessThan(1.5 * Math.max(...hour.slice(0, 15)))
})
