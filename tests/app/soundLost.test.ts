import { expect, test } from 'vitest'
import type { SoundState } from '@/app/soundPorts'
import { melody, play, sampleOf, sitDown, state } from '../support/atTheDesk'
import { createDesk, settled } from '../support/fakePorts'

/** A drill with the metronome on, amid a repetition. */
const amidARepetition = async () => {
  const desk = createDesk([sampleOf('Scale', melody)])
  const app = await sitDown(desk)
  await app.practice.toggleMetronome()
  expect(state(app).metronome).toBe('on')
  desk.strike(60)
  desk.pass(900)
  desk.strike(62)
  return { desk, app }
}

test.each<SoundState>([
  { kind: 'blocked' },
  { kind: 'failed', what: 'none', detail: 'the device is gone' },
])(
  'where the sound stops ($kind), the metronome is off, the page says so, and what was begun counts for nothing',
  async (lost) => {
    const { desk, app } = await amidARepetition()
    desk.setSound(lost)
    expect(state(app).metronome).toBe('off')
    expect(state(app).said).toEqual({ kind: 'soundLost' })
    desk.pass(10_000)
    await settled()
    expect(state(app).last).toBeUndefined()
    await play(desk, melody)
    expect(state(app).last?.verdict).toBe('clean')
    expect(state(app).said).toBeUndefined()
  },
)

test('who switches the sound off has no metronome either, and the repetition goes on', async () => {
  const { desk, app } = await amidARepetition()
  desk.setSound({ kind: 'off' })
  expect(state(app).metronome).toBe('off')
  expect(state(app).said).toBeUndefined()
  desk.pass(910)
  await play(desk, 'E4 F4')
  expect(state(app).last?.verdict).toBe('clean')
})

test('a drill without the metronome hears nothing of it', async () => {
  const desk = createDesk([sampleOf('Scale', melody)])
  const app = await sitDown(desk)
  desk.strike(60)
  desk.setSound({ kind: 'blocked' })
  expect(state(app).said).toBeUndefined()
  desk.pass(910)
  await play(desk, 'D4 E4 F4')
  expect(state(app).last?.verdict).toBe('clean')
})
