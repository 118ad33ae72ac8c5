import { expect, test } from 'vitest'
import { createApp, type App } from '@/app/app'
import type { JournalEvent } from '@/journal/journal'
import { key } from '@/music/units'
import { play, sampleOf, sentence, sitDown, state } from '../support/atTheDesk'
import { createDesk, settled, type Desk } from '../support/fakePorts'

const melody = 'C4 D4 E4 F4 G4'
const slipped = 'C4 D4 E4 F#4 G4'
const drilled = { from: '0', to: '4', hand: 'right' } as const

/** The same slip twice: the drill has stopped at its problem. */
const stopped = async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  const [piece] = app.library.store.getState().listed
  if (piece) app.go({ kind: 'practice', piece: piece.id, place: drilled })
  await settled()
  await play(desk, slipped)
  await play(desk, melody)
  await play(desk, slipped)
  await settled()
  return { desk, app }
}
const recorded = (app: App): readonly JournalEvent[] => app.session.store.getState().events
const kinds = (app: App, from: string): readonly string[] => {
  const all = recorded(app).map(({ kind }) => kind)
  return all.slice(all.findIndex((kind) => kind === from))
}
/** Plays the remedy on the desk clean until it is solved. */
const solve = async (app: App, desk: Desk): Promise<void> => {
  for (let i = 0; i < 5 && !state(app).breath; i++) {
    for (const { notes } of state(app).desk.chunk.onsets) {
      for (const each of notes) desk.strike(each.key)
      desk.pass(1_000)
    }
    desk.pass(2_000)
    await settled()
  }
}

test('the same slip twice stops the drill, and says what it most likely is and what to do', async () => {
  const { app } = await stopped()
  const { problem, said } = state(app)
  expect(said).toMatchObject({ sign: 'problem' })
  expect(sentence(app)).toContain('F♯4')
  expect(problem?.diagnosis.likely).toBe('accidental')
  expect(problem?.remedies.length).toBeGreaterThanOrEqual(2)
  expect(problem?.remedies.length).toBeLessThanOrEqual(3)
  expect(recorded(app).at(-1)).toMatchObject({
    kind: 'problemNamed',
    flaw: 'wrong',
    onset: 3,
    written: 65,
    played: 66,
    times: 2,
    likely: 'accidental',
  })
})

test('a remedy is a small slow drill, and solved it leads back to the drill one rung lower', async () => {
  const { desk, app } = await stopped()
  const { rung } = state(app).coach
  const { chunk } = state(app).desk
  app.practice.remedy(0)
  await settled()
  expect(state(app).desk.remedy).toBeDefined()
  expect(state(app).coach.rung).toBeLessThan(rung)
  await solve(app, desk)
  expect(state(app).breath).toBeDefined()
  desk.pass(4_500)
  await settled()
  expect(state(app).desk.chunk).toBe(chunk)
  expect(state(app).coach.rung).toBeLessThan(rung)
  expect(state(app).problem).toBeUndefined()
  expect(kinds(app, 'problemNamed')).toEqual([
    'problemNamed',
    'remedyBegun',
    'drillBegun',
    'repetition',
    'repetition',
    'repetition',
    'remedyEnded',
    'rungChanged',
  ])
  expect(recorded(app).findLast(({ kind }) => kind === 'remedyEnded')).toMatchObject({
    outcome: 'solved',
  })
})

test('a remedy that is left leads back to the problem, and the record says that it was left', async () => {
  const { app } = await stopped()
  app.practice.remedy(1)
  await settled()
  app.practice.undo()
  await settled()
  expect(state(app).problem).toBeDefined()
  expect(state(app).desk.remedy).toBeUndefined()
  expect(kinds(app, 'remedyEnded')).toEqual(['remedyEnded', 'overruled'])
})

test('who goes on without solving it can, and the record says so', async () => {
  const { desk, app } = await stopped()
  app.practice.goOnOrMetronome()
  await settled()
  expect(state(app).problem).toBeUndefined()
  expect(recorded(app).at(-1)).toMatchObject({ kind: 'overruled', what: 'problem' })
  await play(desk, melody)
  expect(state(app).coach.recent.at(-1)).toBe('clean')
})

test('who plays on leaves the problem, too', async () => {
  const { desk, app } = await stopped()
  await play(desk, melody)
  expect(state(app).problem).toBeUndefined()
  expect(state(app).coach.recent.at(-1)).toBe('clean')
})

test('bound keys choose a remedy and start it', async () => {
  const { desk, app } = await stopped()
  app.changeSettings({
    commands: {
      again: { kind: 'pedal', pedal: 'soft' },
      next: { kind: 'key', key: key(108) },
    },
  })
  desk.strike(108)
  expect(state(app).problem?.chosen).toBe(1)
  const second = state(app).problem?.remedies[1]
  desk.tread('soft')
  await settled()
  expect(state(app).desk.remedy).toBe(second)
})

test('after a reload the drill still stands at its problem, which is named once', async () => {
  const { desk, app } = await stopped()
  const later = createDesk([sampleOf('First', melody)], desk.storage, 60_000)
  later.goTo(desk.address())
  const again = createApp(later.ports)
  await again.open()
  await settled()
  await settled()
  expect(state(again).problem?.id).toBe(state(app).problem?.id)
  expect(recorded(again).filter(({ kind }) => kind === 'problemNamed')).toHaveLength(1)
})

test('after a reload behind a solved remedy the drill is where it was', async () => {
  const { desk, app } = await stopped()
  app.practice.remedy(0)
  await settled()
  await solve(app, desk)
  desk.pass(4_500)
  await settled()
  const later = createDesk([sampleOf('First', melody)], desk.storage, 120_000)
  later.goTo(desk.address())
  const again = createApp(later.ports)
  await again.open()
  await settled()
  const { rung, streak, paused, watches } = state(app).coach
  expect(state(again).coach).toMatchObject({ rung, streak, watches })
  expect([paused, state(again).coach.paused]).toEqual([undefined, undefined])
})
