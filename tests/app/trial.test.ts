import { expect, test } from 'vitest'
import { createApp } from '@/app/app'
import { melody, play, sampleOf, sitDown, state } from '../support/atTheDesk'
import { createDesk, settled } from '../support/fakePorts'

test('the first drill of a chunk begins with a trial, which three clean lead up', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk, {})
  const { rung, trial } = state(app).coach
  expect(trial).toBeDefined()
  for (let i = 0; i < 3; i++) await play(desk, melody)
  expect(state(app).coach.rung).toBeGreaterThan(rung)
  expect(state(app).coach.trial).toBeDefined()
  const events = app.session.store.getState().events
  expect(events.find(({ kind }) => kind === 'drillBegun')).toMatchObject({ trial: true })
  expect(events.at(-1)).toMatchObject({ kind: 'rungChanged', reason: 'trial' })
})

test('one key leaves the trial, and the record says so', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk, {})
  for (let i = 0; i < 3; i++) await play(desk, melody)
  app.practice.undo()
  await settled()
  expect(state(app).coach.trial).toBeUndefined()
  const what = app.session.store
    .getState()
    .events.flatMap((event) => (event.kind === 'overruled' ? [event.what] : []))
  expect(what).toEqual(['trial'])
})

test('a reload in mid-trial goes on with it', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk, {})
  for (let i = 0; i < 4; i++) await play(desk, melody)
  const later = createDesk([sampleOf('First', melody)], desk.storage, 60_000)
  later.goTo(desk.address())
  const again = createApp(later.ports)
  await again.open()
  await settled()
  expect(state(again).coach.trial).toEqual(state(app).coach.trial)
})

test('a chunk that was played before, and one whose trial is off in the options, begin without', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  expect(state(app).coach.trial).toBeUndefined()
  await play(desk, melody)
  const nextDay = createDesk([sampleOf('First', melody)], desk.storage, 86_400_000)
  const again = await sitDown(nextDay, { trial: true })
  expect(state(again).coach.trial).toBeUndefined()
})

test('the coach’s last change of the tempo is taken back by one key, and the record says so', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  const { rung } = state(app).coach
  for (let i = 0; i < 5; i++) await play(desk, melody)
  expect(state(app).coach.rung).toBeGreaterThan(rung)
  app.practice.undo()
  await settled()
  expect(state(app).coach.rung).toBe(rung)
  const events = app.session.store.getState().events
  expect(events.flatMap((e) => (e.kind === 'overruled' ? [e.what] : []))).toEqual(['tempoUp'])
  const later = createDesk([sampleOf('First', melody)], desk.storage, 60_000)
  later.goTo(desk.address())
  const again = createApp(later.ports)
  await again.open()
  await settled()
  expect(state(again).coach.rung).toBe(rung)
})
