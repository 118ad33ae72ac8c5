import { expect, test } from 'vitest'
import { createApp, type App } from '@/app/app'
import type { Recorder, RecorderChoice } from '@/app/recorder'
import { formatKey } from '@/music/pitch'
import { tempo } from '@/music/units'
import { createDesk, settled, type Desk } from '../support/fakePorts'
import { keysOf, sampleOf } from '../support/atTheDesk'

/** A bar of 4/4 lasts two seconds, as long as the count-in of the fake metronome. */
const choice: RecorderChoice = {
  time: { beats: 4, beatType: 4 },
  tempo: tempo(120),
  grid: 'eighths',
  hand: 'right',
}
/** A key of the fake keyboard is held for 90 ms: at 120 the shortest note on the grid, an eighth. */
const heldMs = 90

const open = async (): Promise<{
  readonly app: App
  readonly desk: Desk
  readonly recorder: Recorder
}> => {
  const desk = createDesk([sampleOf('Sample', 'C4 D4')])
  const app = createApp(desk.ports)
  await app.open()
  return { app, desk, recorder: await app.openRecorder() }
}

/** Strikes a key every half second, as quarters at 120. */
const quarters = (desk: Desk, names: string): void => {
  for (const k of keysOf(names)) {
    desk.strike(k)
    desk.pass(500 - heldMs)
  }
}

const notes = ({ store }: Recorder): string => {
  const state = store.getState()
  return state.kind === 'done'
    ? state.score.notes
        .map(({ key, start }) => `${formatKey(key)} ${start / state.score.ticksPerQuarter}`)
        .join(', ')
    : state.kind
}

test('what is played after the count-in is there when stopped, and can be kept as a piece', async () => {
  const { app, desk, recorder } = await open()
  await recorder.toggle(choice)
  expect(recorder.store.getState().kind).toBe('countIn')
  desk.pass(2000)
  expect(recorder.store.getState()).toEqual({ kind: 'recording', strikes: 0 })
  quarters(desk, 'C4 D4 E4')
  expect(recorder.store.getState()).toEqual({ kind: 'recording', strikes: 3 })
  await recorder.toggle(choice)
  expect(notes(recorder)).toBe('C4 0, D4 1, E4 2')
  expect(desk.sounded).toContain('metronome 120')
  expect(desk.sounded.at(-1)).toBe('stop')
  const file = recorder.file('Three up')
  if (!file) throw new Error('there is no file')
  expect(file.name).toBe('Three up.mid')
  await app.addFile(file)
  await settled()
  const screen = app.screen.getState()
  expect(screen.kind === 'piece' && screen.piece.score.title).toBe('Three up')
})

test('two silent bars end it, not the silence before them', async () => {
  const { desk, recorder } = await open()
  await recorder.toggle(choice)
  desk.pass(2000)
  quarters(desk, 'C4')
  desk.pass(3000)
  quarters(desk, 'D4')
  expect(recorder.store.getState().kind).toBe('recording')
  desk.pass(4100)
  await settled()
  expect(notes(recorder)).toBe('C4 0, D4 7')
})

test('a note in the count-in is a pickup', async () => {
  const { desk, recorder } = await open()
  await recorder.toggle(choice)
  desk.pass(1500)
  quarters(desk, 'G3 C4')
  await recorder.toggle(choice)
  const state = recorder.store.getState()
  expect(notes(recorder)).toBe('G3 0, C4 1')
  expect(state.kind === 'done' && state.score.bars.map(({ number }) => number)).toEqual([0, 1])
})

test('who strikes late by the measured lag is on time', async () => {
  const { app, desk } = await open()
  app.changeSettings({ lagMs: 140 })
  const recorder = await app.openRecorder()
  await recorder.toggle(choice)
  desk.pass(2000 + 140)
  quarters(desk, 'C4 D4')
  await recorder.toggle(choice)
  expect(notes(recorder)).toBe('C4 0, D4 1')
})

test('nothing played is said, and it can be recorded again', async () => {
  const { desk, recorder } = await open()
  await recorder.toggle(choice)
  desk.pass(2000 + 4100)
  await settled()
  expect(recorder.store.getState().kind).toBe('nothing')
  expect(recorder.file('x')).toBeUndefined()
  await recorder.toggle(choice)
  desk.pass(2000)
  quarters(desk, 'C4')
  await recorder.toggle(choice)
  expect(notes(recorder)).toBe('C4 0')
})

test('when no click can sound it says so and records nothing', async () => {
  const { desk } = await open()
  const { sound } = desk.ports
  const app = createApp({
    ...desk.ports,
    sound: { ...sound, startMetronome: () => Promise.resolve(undefined) },
  })
  const recorder = await app.openRecorder()
  await recorder.toggle(choice)
  quarters(desk, 'C4')
  expect(recorder.store.getState().kind).toBe('silent')
  expect(recorder.file('x')).toBeUndefined()
})

test('left in the middle it is silent and hears nothing more', async () => {
  const { desk, recorder } = await open()
  await recorder.toggle(choice)
  desk.pass(2000)
  quarters(desk, 'C4')
  recorder.reset()
  quarters(desk, 'D4')
  desk.pass(9000)
  expect(recorder.store.getState().kind).toBe('ready')
  expect(desk.sounded.at(-1)).toBe('stop')
})
