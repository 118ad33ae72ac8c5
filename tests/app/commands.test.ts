import { expect, test } from 'vitest'
import type { Bindings } from '@/app/commandKeys'
import { key } from '@/music/units'
import { melody, play, sampleOf, sitDown, state } from '../support/atTheDesk'
import { createDesk, settled } from '../support/fakePorts'

const commands: Bindings = {
  hear: { kind: 'key', key: key(21) },
  again: { kind: 'pedal', pedal: 'soft' },
  next: { kind: 'key', key: key(108) },
  back: { kind: 'key', key: key(107) },
  goOn: { kind: 'pedal', pedal: 'sostenuto' },
  metronome: { kind: 'key', key: key(22) },
}

/** Two bars, so that there is a next chunk; the drill is at the first. */
const sitDownWithKeys = async () => {
  const desk = createDesk([sampleOf('First', `${melody} G4 A4 B4 C5 D5 E5 F5 G5`)])
  const app = await sitDown(desk)
  app.changeSettings({ commands })
  return { desk, app }
}

test('a bound key away from the passage is heard as its command and never as playing', async () => {
  const { desk, app } = await sitDownWithKeys()
  const { rung } = state(app).coach
  desk.strike(21)
  await settled()
  desk.strike(22)
  await settled()
  expect(desk.sounded).toContain(`hear ${rung}`)
  expect(desk.sounded).toContain(`metronome ${rung}`)
  desk.pass(10_000)
  await settled()
  expect(state(app).said).toBeUndefined()
  await play(desk, melody)
  expect(state(app).coach.recent).toEqual(['clean'])
})

test('the pedal bound to “again” breaks the repetition off, and the next begins from the start', async () => {
  const { desk, app } = await sitDownWithKeys()
  desk.strike(60)
  desk.pass(900)
  desk.strike(62)
  desk.tread('soft')
  await settled()
  expect(state(app).coach.recent).toEqual(['brokenOff'])
  await play(desk, melody)
  expect(state(app).coach.recent).toEqual(['brokenOff', 'clean'])
})

test('“again” after a slip counts the repetition as flawed', async () => {
  const { desk, app } = await sitDownWithKeys()
  desk.strike(60)
  desk.pass(900)
  desk.strike(63)
  desk.pass(900)
  desk.strike(64)
  desk.pass(300)
  desk.tread('soft')
  await settled()
  expect(state(app).coach.recent).toEqual(['flawed'])
})

test('“again” with nothing begun counts for nothing', async () => {
  const { desk, app } = await sitDownWithKeys()
  desk.tread('soft')
  await settled()
  expect(state(app).coach.recent).toEqual([])
})

test('in a pause that the person asked for nothing is judged, and going on is by the same pedal', async () => {
  const { desk, app } = await sitDownWithKeys()
  desk.tread('sostenuto')
  await play(desk, 'C4 D#4 E4 F#4')
  expect(state(app).resting).toBe(true)
  expect(state(app).coach.recent).toEqual([])
  desk.tread('sostenuto')
  await settled()
  expect(state(app).resting).toBe(false)
  await play(desk, melody)
  expect(state(app).coach.recent).toEqual(['clean'])
})

test('“next” and “back” lead through the chunks of the piece', async () => {
  const { desk, app } = await sitDownWithKeys()
  const first = desk.address()
  desk.strike(108)
  await settled()
  const second = desk.address()
  expect(second).not.toBe(first)
  expect(app.screen.getState().kind).toBe('practice')
  desk.pass(500)
  desk.strike(107)
  await settled()
  expect(desk.address()).not.toBe(second)
})

test('a command is learnt by pressing its key, which nobody else hears', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  app.learning.learn('next')
  expect(app.learning.store.getState().command).toBe('next')
  desk.strike(60)
  await settled()
  expect(app.learning.store.getState().command).toBeUndefined()
  expect(app.settings.getState().commands).toEqual({ next: { kind: 'key', key: 60 } })
  desk.pass(10_000)
  expect(state(app).said).toBeUndefined()
})

test('the damper pedal is learnt only where the person allows it, and forgotten when they do no longer', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  app.learning.learn('again')
  desk.tread('sustain')
  expect(app.settings.getState().commands).toEqual({})
  app.changeSettings({ damperCommands: true })
  desk.tread('sustain')
  expect(app.settings.getState().commands).toEqual({ again: { kind: 'pedal', pedal: 'sustain' } })
  app.changeSettings({ damperCommands: false })
  expect(app.settings.getState().commands).toEqual({})
})

test('what is bound is there again after a reload', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  app.changeSettings({ commands })
  await settled()
  const again = createDesk([sampleOf('First', melody)], desk.storage, 60_000)
  again.goTo(desk.address())
  const reopened = await sitDown(again)
  expect(reopened.settings.getState().commands).toEqual(commands)
})
