import { expect, test } from 'vitest'
import { createHands } from '@/app/hands'
import { createSignals } from '@/app/signals'
import { key, ms } from '@/music/units'
import { melody, play, sampleOf, sitDown, state } from '../support/atTheDesk'
import { createDesk, settled, type Desk } from '../support/fakePorts'

const setUp = () => {
  const sounded: string[] = []
  const hands = createHands()
  const signals = createSignals(
    {
      signal: (signal) => {
        sounded.push(signal)
        return () => sounded.push(`no ${signal}`)
      },
    },
    hands,
  )
  const move = (kind: 'down' | 'up', at: number): void => {
    const event = { kind, key: key(60), velocity: 64, at: ms(at) } as const
    hands.hear(event)
    signals.hear(event)
  }
  return { sounded, signals, move }
}

test('a signal waits until the hands have rested', () => {
  const { sounded, signals, move } = setUp()
  move('down', 0)
  signals.ask('up', ms(600))
  signals.pass(ms(1_000))
  expect(sounded).toEqual([])
  move('up', 1_100)
  signals.pass(ms(1_400))
  expect(sounded).toEqual([])
  signals.pass(ms(1_450))
  signals.pass(ms(1_500))
  expect(sounded).toEqual(['up'])
})

test('who plays on hears no signal, and one that sounds is taken back', () => {
  const { sounded, signals, move } = setUp()
  signals.ask('down', ms(0))
  move('down', 10)
  move('up', 20)
  signals.pass(ms(2_000))
  expect(sounded).toEqual([])
  signals.ask('down', ms(2_000))
  signals.pass(ms(2_010))
  move('down', 2_100)
  expect(sounded).toEqual(['down', 'no down'])
})

test('a signal that is long past is not told', () => {
  const { sounded, signals, move } = setUp()
  move('down', 0)
  signals.ask('problem', ms(100))
  signals.pass(ms(6_000))
  move('up', 6_100)
  signals.pass(ms(7_000))
  expect(sounded).toEqual([])
})

const signalsOf = (desk: Desk): readonly string[] =>
  desk.sounded.filter((each) => each.startsWith('signal')).map((each) => each.slice(7))

test('in a drill the tempo that rises and the tempo that falls are heard, each as what it is', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  for (let i = 0; i < 5; i++) await play(desk, melody)
  desk.pass(500)
  expect(signalsOf(desk)).toEqual(['up'])
  expect(state(app).said).toMatchObject({ sign: 'up' })
  for (const slip of ['C4 D#4 E4 F4', melody, 'C4 D4 D#4 F4', 'C4 C4 D4 E4 F4'])
    await play(desk, slip)
  desk.pass(500)
  await settled()
  desk.pass(100)
  expect(state(app).said).toMatchObject({ sign: 'down' })
  expect(signalsOf(desk)).toEqual(['up', 'down'])
})
