import { expect, test } from 'vitest'
import { createApp, type App } from '@/app/app'
import { usableLag } from '@/app/tapTest'
import { keysOf, melody, sampleOf, sitDown, state } from '../support/atTheDesk'
import { createDesk, settled, type Desk } from '../support/fakePorts'

/** 80 a minute. */
const gap = 750

/** The tap test open, its clicks sounding. */
const begin = async (desk: Desk): Promise<App> => {
  const app = createApp(desk.ports)
  await app.open()
  app.go({ kind: 'tapTest' })
  await settled()
  await app.tapTest.toggle()
  return app
}
/** The next `count` clicks, each told a quarter of a second before it is heard and struck `by` after it. */
const tap = (desk: Desk, by: number, count = 16): void => {
  for (let i = 0; i < count; i++) {
    const click = desk.ports.now() + 250
    desk.click(click)
    desk.pass(250 + by)
    desk.strike(60)
    desk.pass(click + gap - 250 - desk.ports.now())
  }
}
const kind = (app: App) => app.tapTest.store.getState().kind

test('sixteen strikes 40 ms after the click end the test with that lag, and the clicks with it', async () => {
  const desk = createDesk([])
  const app = await begin(desk)
  tap(desk, 40, 15)
  expect(kind(app)).toBe('listening')
  expect(desk.sounded.at(-1)).toBe('metronome 80')
  tap(desk, 40, 1)
  const now = app.tapTest.store.getState()
  expect(now).toMatchObject({ kind: 'done', lag: { kind: 'trusted', lag: 40, counted: 13 } })
  expect(usableLag(now)).toBe(40)
  expect(desk.sounded.at(-1)).toBe('stop')
})

test('the lag that is used is there after a reload', async () => {
  const desk = createDesk([])
  const app = await begin(desk)
  app.changeSettings({ lagMs: 40 })
  await settled()
  const reopened = createApp(createDesk([], desk.storage).ports)
  await reopened.open()
  expect(reopened.settings.getState().lagMs).toBe(40)
})

test('nothing is measured of the simulated player, nor when nobody strikes', async () => {
  const desk = createDesk([])
  const app = await begin(desk)
  for (let i = 0; i < 60; i++) {
    desk.click(desk.ports.now() + gap)
    desk.pass(gap - 90)
    desk.simulate(60)
  }
  expect(app.tapTest.store.getState()).toMatchObject({ kind: 'done', lag: { kind: 'few' } })
  expect(usableLag(app.tapTest.store.getState())).toBeUndefined()
  expect(desk.sounded.at(-1)).toBe('stop')
})

test('where nothing can sound, the test says so and can be tried again', async () => {
  const desk = createDesk([])
  const mute = { ...desk.ports.sound, startMetronome: () => Promise.resolve(undefined) }
  const app = createApp({ ...desk.ports, sound: mute })
  await app.tapTest.toggle()
  expect(kind(app)).toBe('silent')
  desk.strike(60)
  expect(kind(app)).toBe('silent')
})

test('stopped while it starts, it stays silent', async () => {
  const desk = createDesk([])
  const app = createApp(desk.ports)
  const starting = app.tapTest.toggle()
  await app.tapTest.toggle()
  await starting
  expect(kind(app)).toBe('ready')
  expect(desk.sounded.at(-1)).toBe('stop')
})

test('leaving the page ends the clicks; going back leads to where the test was asked for', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  const drill = desk.address()
  app.go({ kind: 'tapTest' })
  await settled()
  await app.tapTest.toggle()
  app.goBack()
  await settled()
  expect(desk.address()).toBe(drill)
  expect(kind(app)).toBe('ready')
  expect(desk.sounded.at(-1)).toBe('stop')
  expect(app.practice.store.getState()).toBeDefined()
})

/** A drill at standard `time` with the metronome, each key struck `by` after its click. */
const drill = async (by: number, lagMs: number) => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  app.changeSettings({ standard: 'time', lagMs })
  await app.practice.toggleMetronome()
  const quarter = 60_000 / state(app).coach.rung
  // The fake metronome's first beat comes two seconds after its start.
  const first = desk.ports.now() + 2000
  for (const [i, key] of keysOf(melody).entries()) {
    desk.pass(first + i * quarter + by - desk.ports.now())
    desk.strike(key)
  }
  desk.pass(1000)
  await settled()
  return state(app).last?.flaws.map((flaw) => flaw.kind)
}

test.each<[number, number, string]>([
  [0, 0, ''],
  [200, 0, 'late'],
  [200, 200, ''],
  [-200, -200, ''],
  [0, 200, 'early'],
])('%s ms after the click, with a lag of %s ms in use: "%s"', async (by, lag, flaws) => {
  expect(new Set(await drill(by, lag))).toEqual(new Set(flaws ? [flaws] : []))
})

test('the clicks that move while a repetition is under way count from the next one on', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  app.changeSettings({ standard: 'time' })
  await app.practice.toggleMetronome()
  const quarter = 60_000 / state(app).coach.rung
  const first = desk.ports.now() + 2000
  const play = async (from: number): Promise<void> => {
    for (const [i, key] of keysOf(melody).entries()) {
      desk.pass(from + i * quarter - desk.ports.now())
      desk.strike(key)
      // From the second key on the clicks are heard 200 ms later, as with another loudspeaker.
      if (i === 1) desk.click(first + 2 * quarter + 200)
    }
    desk.pass(1000)
    await settled()
  }
  await play(first)
  expect(state(app).last?.flaws).toEqual([])
  await play(first + 6 * quarter)
  expect(new Set(state(app).last?.flaws.map((flaw) => flaw.kind))).toEqual(new Set(['early']))
})
