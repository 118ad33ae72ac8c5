import { expect, test } from 'vitest'
import type { RepetitionRecorded } from '@/journal/journal'
import { melody, play, sampleOf, sitDown, state } from '../support/atTheDesk'
import { createDesk, settled, type Desk } from '../support/fakePorts'

const hour = 3_600_000

const repetitionsOf = async (desk: Desk): Promise<readonly RepetitionRecorded[]> => {
  const text = await desk.ports.storage.exportText()
  if (!text.ok) throw new Error(text.reason)
  return text.value
    .join('')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as { readonly kind: string })
    .filter((event): event is RepetitionRecorded => event.kind === 'repetition')
}

test('a page left open overnight is in the morning as one just opened: a new session, at the last rung', async () => {
  const desk = createDesk([sampleOf('Scale', melody)])
  const app = await sitDown(desk)
  for (let i = 0; i < 5; i++) await play(desk, melody)
  await play(desk, melody)
  const { coach } = state(app)
  expect(coach.streak).toBe(1)
  const evening = app.session.current()
  desk.sleep(10 * hour)
  await settled()
  expect(state(app).coach.streak).toBe(0)
  expect(state(app).coach.rung).toBe(coach.rung)
  await play(desk, melody)
  expect(app.session.current()).not.toBe(evening)
  expect(state(app).coach.streak).toBe(1)
  const repetitions = await repetitionsOf(desk)
  expect(new Set(repetitions.map(({ session }) => session)).size).toBe(2)
  expect(repetitions.map(({ verdict }) => verdict)).toEqual(Array(7).fill('clean'))
})

test('where the machine sleeps amid a repetition, that one is broken off, and the streak stands or falls by no night', async () => {
  const desk = createDesk([sampleOf('Scale', melody)])
  const app = await sitDown(desk)
  await play(desk, melody)
  desk.strike(60)
  desk.pass(500)
  desk.strike(62)
  desk.sleep(hour / 2)
  await settled()
  expect(state(app).last?.verdict).toBe('brokenOff')
  await play(desk, melody)
  expect((await repetitionsOf(desk)).map(({ verdict }) => verdict)).toEqual([
    'clean',
    'brokenOff',
    'clean',
  ])
})

test('half an hour away asks for no rest: it was one', async () => {
  const desk = createDesk([sampleOf('Scale', melody)])
  const app = await sitDown(desk)
  await play(desk, melody)
  desk.sleep(hour / 2)
  await play(desk, melody)
  expect(state(app).coach.endurance?.practised).toBeLessThan(10_000)
})

test.each([
  ['an hour and a half back', -1.5 * hour],
  ['a day back', -24 * hour],
  ['half an hour on', 0.5 * hour],
])('a clock set %s in mid-drill changes neither verdict nor streak', async (_, by) => {
  const desk = createDesk([sampleOf('Scale', melody)])
  const app = await sitDown(desk)
  await play(desk, melody)
  desk.setClock(by)
  await play(desk, melody)
  await settled()
  expect(state(app).coach.streak).toBe(2)
  const repetitions = await repetitionsOf(desk)
  expect(repetitions.map(({ verdict }) => verdict)).toEqual(['clean', 'clean'])
  const [first, second] = repetitions.map(({ tookMs }) => tookMs)
  expect(second).toBe(first)
})
