import { expect, test } from 'vitest'
import { melody, play, sampleOf, sitDown, state } from '../support/atTheDesk'
import { createDesk, settled } from '../support/fakePorts'

/** A drill that is at its goal tempo already, one clean repetition short of done; a chunk follows it. */
const nearlyDone = async () => {
  const desk = createDesk([sampleOf('First', `${melody} G4 A4 B4 C5 D5 E5 F5 G5`)])
  const app = await sitDown(desk)
  app.changeSettings({ streakGoal: 3 })
  await settled()
  while (state(app).coach.rung < (state(app).coach.rungs.at(-1) ?? 0)) {
    app.practice.raise()
    await settled()
  }
  await play(desk, melody)
  await play(desk, melody)
  return { desk, app, address: desk.address() }
}

test('when an exercise is done there is a breath, and then the next one is on the desk', async () => {
  const { desk, app, address } = await nearlyDone()
  await play(desk, melody)
  expect(state(app).coach.secure).toBe(true)
  expect(state(app).breath).toBeDefined()
  desk.pass(3_000)
  await settled()
  expect(desk.address()).toBe(address)
  desk.pass(1_500)
  await settled()
  expect(desk.address()).not.toBe(address)
  expect(state(app).breath).toBeUndefined()
  expect(state(app).coach.recent).toEqual([])
})

test('a key ends the breath, and counts for nothing in the next exercise', async () => {
  const { desk, app, address } = await nearlyDone()
  await play(desk, melody)
  desk.strike(60)
  await settled()
  expect(desk.address()).not.toBe(address)
  desk.pass(10_000)
  await settled()
  expect(state(app).coach.recent).toEqual([])
  expect(state(app).said).toBeUndefined()
})

test('“again” in the breath stays with the exercise', async () => {
  const { desk, app, address } = await nearlyDone()
  await play(desk, melody)
  app.practice.again()
  desk.pass(10_000)
  await settled()
  expect(desk.address()).toBe(address)
  expect(state(app).breath).toBeUndefined()
  await play(desk, melody)
  expect(state(app).coach.recent.at(-1)).toBe('clean')
})

test('what is done is heard once, before the next exercise', async () => {
  const { desk } = await nearlyDone()
  await play(desk, melody)
  desk.pass(600)
  expect(desk.sounded.filter((each) => each === 'signal done')).toHaveLength(1)
})

test('what is struck while the next exercise is on its way is judged by neither', async () => {
  const { desk, app } = await nearlyDone()
  await play(desk, melody)
  const { recent } = state(app).coach
  desk.pass(4_500)
  // The address has changed, and what stands there is still being fetched.
  for (const key of [60, 61]) {
    desk.strike(key)
    desk.pass(600)
  }
  expect(state(app).coach.recent).toEqual(recent)
  await settled()
  desk.pass(10_000)
  await settled()
  expect(state(app).coach.recent).toEqual([])
})
