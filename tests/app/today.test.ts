import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { createApp, type App } from '@/app/app'
import { currentOf, type DayRun } from '@/app/dayRun'
// Fetched when they are wanted; here at once, so that no test waits for them.
import '@/app/buildUps'
import '@/app/dayDesk'
import '@/app/diagnosing'
import '@/app/musicDesk'
import '@/app/planning'
import '@/app/takeUp'
import type { Sample, StoragePort } from '@/app/ports'
import type { JournalEvent } from '@/journal/journal'
import { tempo, type PieceId } from '@/music/units'
import { sayReason } from '@/plan/itemReason'
import { state } from '../support/atTheDesk'
import { anySuggestion, createDesk, settled, type Desk } from '../support/fakePorts'
import { daysOfPractice, monthOfPractice } from '../support/monthOfPractice'

const sample = (fileName: string): Sample => ({
  title: fileName.replace('.mid', ''),
  fileName,
  suggestion: { ...anySuggestion, goalTempo: tempo(96) },
  bytes: readFileSync(fileURLToPath(new URL(`../../sample-midi/${fileName}`, import.meta.url))),
})
const samples = ['ferry-at-dusk.mid', 'morning-at-the-mill.mid', 'clogs-on-the-stairs.mid'].map(
  sample,
)
/** The evening at which the desk's clock begins. */
const evening = Date.UTC(2026, 0, 5, 19)
const month = monthOfPractice(evening)

const arrive = async (desk: Desk): Promise<App> => {
  const app = createApp(desk.ports)
  await app.open()
  app.changeSettings({ trial: false })
  await app.today.load()
  return app
}
const afterAMonth = async (events: readonly JournalEvent[] = month) => {
  const desk = createDesk(samples)
  await desk.storage.importAll(events)
  return { desk, app: await arrive(desk) }
}
const practised = async (app: App): Promise<readonly PieceId[]> => {
  const found = await app.plans.practised()
  return found.ok ? found.value.map(({ id }) => id) : []
}
const planned = async (app: App, minutes = 30) => {
  const made = await app.plans.day({ minutes, seed: 1, pieces: await practised(app) })
  if (!made.ok) throw new Error(made.reason)
  return made.value
}
const begin = async (app: App, minutes = 30): Promise<void> => {
  app.today.begin(await planned(app, minutes))
  await waitFor(() => app.screen.getState().kind === 'practice')
}
/** What is fetched and read is there soon, however busy the machine. */
const waitFor = async (isSo: () => boolean): Promise<void> => {
  for (let i = 0; i < 400 && !isSo(); i++) await settled()
  expect(isSo()).toBe(true)
}
const run = (app: App): DayRun => {
  const { run: now } = app.today.store.getState()
  if (!now) throw new Error('no plan of today is under way')
  return now
}
const on = (app: App) => currentOf(run(app))?.item
const number = (app: App): number => state(app).desk.item?.number ?? 0
const kindsOf = (app: App): readonly string[] => run(app).items.map(({ item }) => item.kind)
const outcomes = (app: App): readonly string[] => run(app).items.map(({ outcome }) => outcome)

/** Plays what is on the desk once, in time; the second key off by so many semitones. */
const playOnce = async (app: App, desk: Desk, off = 0): Promise<void> => {
  const { desk: practising, coach } = state(app)
  const { onsets, ticksPerQuarter } = practising.chunk
  const quarter = 60_000 / coach.rung
  let now = 0
  const events = onsets
    .flatMap(({ start, notes }) =>
      notes.map(({ key }) => ({ at: (start / ticksPerQuarter) * quarter, key })),
    )
    .toSorted((a, b) => a.at - b.at)
  for (const [i, { at, key }] of events.entries()) {
    if (at > now) {
      desk.pass(at - now)
      now = at
    }
    desk.touch(i === 1 ? key + off : key)
  }
  desk.pass(1_500)
  await settled()
}
const nextItem = async (app: App, desk: Desk): Promise<void> => {
  const before = number(app)
  desk.pass(4_500)
  await waitFor(() => app.screen.getState().kind !== 'practice' || number(app) !== before)
}
const eventsOf = async (desk: Desk): Promise<readonly JournalEvent[]> => {
  const stored = await desk.storage.events({ kind: 'all' })
  return stored.ok ? stored.value.events.filter(({ atEpochMs }) => atEpochMs >= evening) : []
}

test('the weeks of a piece are those of the person’s own hand', async () => {
  const { app } = await afterAMonth([])
  const [piece] = app.library.store.getState().listed
  if (!piece) throw new Error('no piece')
  const minutes: number[] = []
  for (const span of [7, 'large', 7] as const) {
    app.changeSettings({ span })
    const made = await app.plans.piece(piece.id)
    minutes.push(made.ok ? made.value.span(20).minutes.value : 0)
  }
  const [narrow = 0, wide = 0, again] = minutes
  expect(narrow).toBeGreaterThan(wide)
  expect(again).toBe(narrow)
})

describe('today after a month', () => {
  test('is planned from kept sums alone: no repetition is read for it', async () => {
    const { desk, app } = await afterAMonth()
    const asked: string[] = []
    const storage: StoragePort = {
      ...desk.ports.storage,
      ofPiece: (id) => {
        asked.push(`piece ${id}`)
        return desk.ports.storage.ofPiece(id)
      },
      ofChunk: (id) => {
        asked.push(`chunk ${id}`)
        return desk.ports.storage.ofChunk(id)
      },
      exportText: () => {
        asked.push('all')
        return desk.ports.storage.exportText()
      },
    }
    const other = createApp({ ...desk.ports, storage })
    await other.open()
    const { plan } = await planned(other)
    expect(plan.items.length).toBeGreaterThan(4)
    expect(asked).toEqual([])
    expect(await practised(app)).toHaveLength(2)
  })

  test('is the same however often it is asked, and another with another seed or other minutes', async () => {
    const { app } = await afterAMonth()
    const pieces = await practised(app)
    const ask = async (minutes: number, seed: number) => {
      const made = await app.plans.day({ minutes, seed, pieces })
      return made.ok ? made.value.plan : undefined
    }
    expect(await ask(30, 1)).toEqual(await ask(30, 1))
    expect((await ask(60, 1))?.items.length).toBeGreaterThan((await ask(30, 1))?.items.length ?? 0)
    expect((await ask(60, 1))?.items.some(({ kind }) => kind === 'rest')).toBe(true)
  })

  test('of one piece it still asks for what the others are due for, cold', async () => {
    const { app } = await afterAMonth()
    const [ferry, mill] = await practised(app)
    if (!ferry || !mill) throw new Error('two pieces were practised')
    const made = await app.plans.day({ minutes: 30, seed: 1, pieces: [mill] })
    const items = made.ok ? made.value.plan.items : []
    const ofFerry = items.filter((item) => item.kind !== 'rest' && item.piece === ferry)
    expect(ofFerry.map(({ kind }) => kind)).toContain('coldCheck')
    for (const { kind } of ofFerry) expect(['coldCheck', 'warmUp']).toContain(kind)
  })
})

describe('today is played hands on the keys', () => {
  test('a warm-up lasts its minutes, a check one repetition, and a breath leads from one to the next', async () => {
    const { desk, app } = await afterAMonth()
    await begin(app)
    expect(kindsOf(app).slice(0, 3)).toEqual(['warmUp', 'coldCheck', 'coldCheck'])
    const minutes = run(app).items[0]?.item.minutes ?? 0
    expect(state(app).coach.trial).toBeUndefined()
    const from = desk.ports.now()
    while (!state(app).breath) await playOnce(app, desk)
    const spent = (desk.ports.now() - from) / 60_000
    expect(spent).toBeGreaterThanOrEqual(minutes)
    expect(spent).toBeLessThan(minutes + 0.75)
    await nextItem(app, desk)
    expect([number(app), on(app)?.kind]).toEqual([2, 'coldCheck'])
    const check = on(app)
    await playOnce(app, desk)
    expect(state(app).breath).toMatchObject({ ofItem: true })
    await nextItem(app, desk)
    expect(number(app)).toBe(3)
    expect(outcomes(app).slice(0, 3)).toEqual(['done', 'done', 'ahead'])
    const rung = (await eventsOf(desk)).findLast(({ kind }) => kind === 'repetition')
    expect(rung).toMatchObject({
      verdict: 'clean',
      rung: check?.kind === 'coldCheck' ? check.goalTempo : 0,
    })
  })

  test.each([
    ['clean', 0, 2],
    ['flawed', 1, 1],
  ] as const)(
    'a check that was %s is due again after its interval: the next one, or the first',
    async (verdict, off, least) => {
      const { desk, app } = await afterAMonth()
      await begin(app)
      app.neighbour(1)
      await waitFor(() => number(app) === 2)
      const checked = on(app)
      if (checked?.kind !== 'coldCheck') throw new Error('no check is on')
      await playOnce(app, desk, off)
      expect(state(app).last?.verdict).toBe(verdict)
      expect(state(app).breath).toMatchObject({ ofItem: true })
      const made = await app.plans.piece(checked.piece)
      const check = made.ok
        ? made.value.plan.places.find(({ id }) => id === checked.chunk)?.check
        : undefined
      expect(check?.since).toBe(app.plans.today())
      if (verdict === 'clean') expect(check?.interval).toBeGreaterThanOrEqual(least)
      else expect(check?.interval).toBe(least)
    },
  )

  test('a turn goes from exercise to exercise of its place until its minutes are over', async () => {
    const { desk, app } = await afterAMonth()
    await begin(app)
    while (on(app)?.kind !== 'newGroup' || !state(app).desk.place) {
      const at = run(app).at
      app.neighbour(1)
      await waitFor(() => run(app).at > at && number(app) === run(app).at + 1)
    }
    const item = number(app)
    const from = desk.ports.now()
    const drilled = new Set<string>()
    while (app.screen.getState().kind === 'practice' && number(app) === item) {
      const { breath, desk: now } = state(app)
      drilled.add(now.chunk.id)
      if (!breath) await playOnce(app, desk)
      else {
        const before = now.drill
        desk.pass(4_500)
        await waitFor(
          () => app.screen.getState().kind !== 'practice' || state(app).desk.drill !== before,
        )
      }
    }
    const minutes = run(app).items[item - 1]?.item.minutes ?? 0
    const spent = (desk.ports.now() - from) / 60_000
    expect(outcomes(app)[item - 1]).toBe('done')
    expect(spent).toBeLessThan(minutes + 1.5)
  })

  test('what is left before anything was played is left for another day, and the record tells nothing of it', async () => {
    const { desk, app } = await afterAMonth()
    await begin(app)
    app.neighbour(1)
    await waitFor(() => number(app) === 2)
    expect(outcomes(app)[0]).toBe('left')
    expect((await eventsOf(desk)).filter(({ kind }) => kind === 'overruled')).toEqual([])
  })

  test('played later, an item changes places with the next; by pedal as by key', async () => {
    const { desk, app } = await afterAMonth()
    app.changeSettings({
      commands: {
        back: { kind: 'pedal', pedal: 'soft' },
        next: { kind: 'pedal', pedal: 'sostenuto' },
      },
    })
    await begin(app)
    const [first, second] = kindsOf(app)
    const address = desk.address()
    desk.tread('soft')
    await waitFor(() => desk.address() !== address && number(app) === 1)
    expect(kindsOf(app).slice(0, 2)).toEqual([second, first])
    desk.tread('sostenuto')
    await waitFor(() => number(app) === 2)
    expect(on(app)?.kind).toBe(first)
  })

  test('a page opened anew goes on with the item and the time that was played', async () => {
    const { desk, app } = await afterAMonth()
    await begin(app)
    await playOnce(app, desk)
    await playOnce(app, desk)
    const spent = currentOf(run(app))?.spentMs ?? 0
    expect(spent).toBeGreaterThan(0)
    const again = await arrive(desk)
    await waitFor(() => again.screen.getState().kind === 'practice')
    expect(number(again)).toBe(1)
    expect(currentOf(run(again))?.spentMs).toBe(spent)
    expect(state(again).coach.recent).toHaveLength(2)
  })

  test('on another day it is over, and what was not done is planned again', async () => {
    const { desk, app } = await afterAMonth()
    await begin(app)
    desk.sleep(24 * 3_600_000)
    const again = await arrive(desk)
    expect(again.today.store.getState().run).toBeUndefined()
    expect(state(again).desk.item).toBeUndefined()
    const { plan } = await planned(again)
    expect(plan.day).toBe('2026-01-06')
    expect(plan.items.length).toBeGreaterThan(4)
  })

  test('a run-through is heard to its end, and what went wrong in it is worked on the next day', async () => {
    const { desk, app } = await afterAMonth(daysOfPractice(55, evening))
    await begin(app, 60)
    const last = run(app).items.length
    expect(kindsOf(app)[last - 1]).toBe('runThrough')
    while (run(app).at < last - 1) {
      const { at } = run(app)
      if (app.screen.getState().kind === 'practice') app.neighbour(1)
      else app.today.over(at + 1)
      await waitFor(() => run(app).at > at)
      await settled()
    }
    await waitFor(() => app.screen.getState().kind === 'practice' && number(app) === last)
    await playOnce(app, desk, 1)
    const heard = state(app).last
    expect(heard?.verdict).toBe('flawed')
    expect(heard?.flaws.map(({ kind }) => kind)).toEqual(['wrong'])
    expect(state(app).breath).toMatchObject({ ofItem: true })
    desk.pass(4_500)
    await waitFor(() => desk.address() === '#/summary')
    desk.sleep(24 * 3_600_000)
    const again = await arrive(desk)
    const { plan } = await planned(again, 60)
    const reasons = plan.items.map(({ reason }) => sayReason(reason))
    expect(reasons.filter((reason) => reason.includes('run-through'))).not.toEqual([])
    const [told] = plan.items.filter(({ reason }) => sayReason(reason).startsWith('It went wrong'))
    expect(told?.kind === 'rest' ? undefined : told?.place.fromBar).toBe(1)
  })

  test('past the last item comes the review of the session', async () => {
    const { desk, app } = await afterAMonth()
    await begin(app, 10)
    for (let i = 0; i < 60 && desk.address() !== '#/summary'; i++) {
      const at = run(app).at
      if (app.screen.getState().kind === 'practice') app.neighbour(1)
      else app.today.over(at + 1)
      await waitFor(() => run(app).at > at)
      await settled()
    }
    await waitFor(() => desk.address() === '#/summary')
    expect(currentOf(run(app))).toBeUndefined()
  })
})
