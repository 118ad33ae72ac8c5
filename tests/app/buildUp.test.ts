import { expect, test } from 'vitest'
import { createApp, type App } from '@/app/app'
import { routeOf } from '@/app/buildUps'
import type { BuildUpPlan } from '@/app/route'
import type { Settings } from '@/app/settings'
import type { JournalEvent } from '@/journal/journal'
import { tempo } from '@/music/units'
import { sampleOf, sitDown, state } from '../support/atTheDesk'
import { createDesk, settled, type Desk } from '../support/fakePorts'

const scale = 'C4 D4 E4 F4 G4 A4 B4 C5'
const plan: BuildUpPlan = {
  passage: { from: '0', to: '7', hand: 'right' },
  thoroughness: 'brisk',
  direction: 'forward',
}

/** A desk at the build-up of the scale. */
const layOut = async (
  desk: Desk,
  settings: Partial<Settings> = { trial: false, streakGoal: 3 },
  wanted = plan,
): Promise<App> => {
  const app = createApp(desk.ports)
  await app.open()
  app.changeSettings(settings)
  const [piece] = app.library.store.getState().listed
  const open = piece && (await app.library.open(piece.id))
  if (!open) throw new Error('no sample is listed')
  app.buildUp(open, wanted, tempo(60))
  await settled()
  return app
}
const standing = (app: App) => {
  const screen = app.screen.getState()
  if (screen.kind !== 'buildUp') throw new Error(`${screen.kind} is on the page`)
  return screen.standing
}
const start = async (app: App): Promise<void> => {
  const { progress, passage } = standing(app)
  if (progress.next) app.begin(routeOf(passage.piece, plan, progress.next))
  await settled()
}
/** Plays what is on the desk once, at its tempo. */
const playOnce = async (app: App, desk: Desk, slipAt?: number): Promise<void> => {
  const { desk: practising, coach } = state(app)
  const { onsets, ticksPerQuarter } = practising.chunk
  for (const [i, onset] of onsets.entries()) {
    const next = onsets[i + 1]
    for (const { key } of onset.notes) desk.strike(i === slipAt ? key + 1 : key)
    const quarters = next ? (next.start - onset.start) / ticksPerQuarter : 0
    desk.pass(Math.max(0, (60_000 / coach.rung) * quarters - 90 * onset.notes.length))
  }
  desk.pass(1_500)
  await settled()
}
/** Plays clean until the next exercise is on the desk, or the build-up. */
const playToTheEnd = async (app: App, desk: Desk): Promise<void> => {
  const address = desk.address()
  for (let i = 0; i < 60 && desk.address() === address; i++) {
    if (state(app).breath) desk.pass(4_500)
    else await playOnce(app, desk)
    await settled()
  }
  expect(desk.address()).not.toBe(address)
}
const recorded = async (desk: Desk): Promise<readonly JournalEvent[]> => {
  const stored = await desk.storage.events({ kind: 'all' })
  return stored.ok ? stored.value.events : []
}

test('a build-up is played from its first group to the whole passage, each exercise done in turn', async () => {
  const desk = createDesk([sampleOf('Scale', scale)])
  const app = await layOut(desk)
  const { exercises } = standing(app)
  expect(exercises.length).toBeGreaterThan(2)
  await start(app)
  const drilled: string[] = []
  for (let i = 0; i < exercises.length && app.screen.getState().kind === 'practice'; i++) {
    drilled.push(state(app).desk.chunk.id)
    await playToTheEnd(app, desk)
  }
  expect(drilled).toEqual(exercises.map(({ chunk }) => chunk.id))
  expect(standing(app).progress.next).toBeUndefined()
  const events = await recorded(desk)
  const done = events.flatMap((event) => (event.kind === 'exerciseDone' ? [event.chunk] : []))
  expect(done).toEqual(drilled)
  // The last exercise is the whole passage as written at the goal tempo: secure, too.
  const secure = events.flatMap((event) => (event.kind === 'secure' ? [event.chunk] : []))
  expect(secure).toEqual([exercises.at(-1)?.chunk.id])
})

test('each drill of a build-up is recorded with its form, its passage and what it reaches', async () => {
  const desk = createDesk([sampleOf('Scale', scale)])
  const app = await layOut(desk)
  await start(app)
  const { place, reach, goalTempo } = state(app).desk
  expect(place?.number).toBe(1)
  expect(reach).toBeLessThan(goalTempo)
  const begun = (await recorded(desk)).findLast((event) => event.kind === 'drillBegun')
  expect(begun).toMatchObject({
    form: 'asWritten',
    passage: { from: '0', to: '7', hand: 'right', fromBar: 1, toBar: 2 },
    reach,
    goalTempo: 60,
  })
})

test('on another day the build-up goes on where it was left, and the goal is that of the passage', async () => {
  const desk = createDesk([sampleOf('Scale', scale)])
  const app = await layOut(desk)
  await start(app)
  await playToTheEnd(app, desk)
  const address = desk.address()
  const tomorrow = createDesk([sampleOf('Scale', scale)], desk.storage, 86_400_000)
  tomorrow.goTo(address)
  const again = createApp(tomorrow.ports)
  await again.open()
  await settled()
  expect(state(again).desk.place?.number).toBe(2)
  expect(state(again).desk.goalTempo).toBe(60)
  tomorrow.goTo(address.replace('practice', 'buildup').replace(/\/[^/]+\/[^/]+\/of/, ''))
  await settled()
  expect(standing(again).progress.settled).toHaveLength(1)
})

test('a reload in mid-exercise comes back to the same exercise with its streak', async () => {
  const desk = createDesk([sampleOf('Scale', scale)])
  const app = await layOut(desk)
  await start(app)
  await playOnce(app, desk)
  const later = createDesk([sampleOf('Scale', scale)], desk.storage, 60_000)
  later.goTo(desk.address())
  const again = await sitDownAt(later)
  expect(state(again).desk.chunk.id).toBe(state(app).desk.chunk.id)
  expect(state(again).coach.streak).toBe(1)
})
const sitDownAt = async (desk: Desk): Promise<App> => {
  const app = createApp(desk.ports)
  await app.open()
  await settled()
  return app
}

test.each(['longShort', 'stopAfter3', 'accentEvery4'] as const)(
  'the variant %s is drilled under its own address, from a sheet of its own',
  async (form) => {
    const desk = createDesk([sampleOf('Scale', scale, 240)])
    const app = await sitDown(desk)
    desk.goTo(`${desk.address().replace('0-3', '0-7_2')}/${form}`)
    await settled()
    const { score, piece, chunk, written, ...now } = state(app).desk
    expect(now.form).toBe(form)
    expect(score).not.toBe(piece)
    expect(chunk.id).toBe(`${written.id}~${form}`)
    expect(chunk.onsets).toHaveLength(8)
    for (let i = 0; i < 2; i++) await playOnce(app, desk)
    expect(state(app).coach.recent).toEqual(['clean', 'clean'])
  },
)

test('who turns to another exercise before one is done overrules, and the record says so', async () => {
  const desk = createDesk([sampleOf('Scale', scale)])
  const app = await layOut(desk)
  await start(app)
  await playOnce(app, desk)
  app.neighbour(1)
  await settled()
  expect(state(app).desk.place?.number).toBe(2)
  const overruled = (await recorded(desk)).flatMap((e) => (e.kind === 'overruled' ? [e.what] : []))
  expect(overruled).toEqual(['skip'])
})

test('a sample as a new piece says how long its build-up takes at a usual pace, and less when some is done', async () => {
  const desk = createDesk([sampleOf('Scale', scale)])
  const app = await layOut(desk)
  const { minutes } = standing(app)
  expect(minutes).toBeGreaterThan(1)
  await start(app)
  await playToTheEnd(app, desk)
  desk.goTo(
    desk
      .address()
      .replace('practice', 'buildup')
      .replace(/\/[^/]+\/[^/]+\/of/, ''),
  )
  await settled()
  expect(standing(app).minutes).toBeLessThan(minutes)
})

test.each([
  ['medium', 12],
  [12, 12],
  [11, 9],
] as const)('of a hand that reaches %s no blocked chord is wider', async (span, widest) => {
  // Broken chords of an octave, then of a sixth.
  const octaves = createDesk([sampleOf('Octaves', 'C4 E4 G4 C5 C4 E4 G4 C5')])
  const sixths = createDesk([sampleOf('Sixths', 'C4 E4 G4 A4 C4 E4 G4 A4')])
  const widths = await Promise.all(
    [octaves, sixths].map(async (desk) => {
      const app = await layOut(desk, { span }, { ...plan, thoroughness: 'thorough' })
      return standing(app)
        .exercises.filter(({ form }) => form === 'blocked')
        .flatMap(({ chunk }) =>
          chunk.onsets.map(({ notes }) => {
            const keys = notes.map(({ key }) => key)
            return Math.max(...keys) - Math.min(...keys)
          }),
        )
    }),
  )
  expect(Math.max(...widths.flat())).toBe(widest)
})
