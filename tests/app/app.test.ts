import { expect, test } from 'vitest'
import { createApp } from '@/app/app'
import { explainLibraryProblem } from '@/app/libraryProblem'
import { formatRoute } from '@/app/route'
import { decodeTake } from '@/journal/take'
import { ms } from '@/music/units'
import { createMemoryStorage } from '@/storage/memory'
import { createDesk, settled } from '../support/fakePorts'
import { keysOf, melody, play, sampleOf, sentence, sitDown, state } from '../support/atTheDesk'

test('on the first run the first sample opens by itself', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = createApp(desk.ports)
  await app.open()
  await settled()
  const screen = app.screen.getState()
  expect(screen.kind === 'piece' && screen.piece.score.title).toBe('First')
})

test('on the first run who asks for the pieces while the page opens gets the pieces', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = createApp(desk.ports)
  const opened = app.open()
  app.go({ kind: 'pieces' })
  await opened
  await settled()
  expect(app.screen.getState().kind).toBe('pieces')
})

test('five clean repetitions raise the tempo by one rung, and the record says so', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  const before = state(app).coach.rung
  for (let i = 1; i <= 4; i++) {
    await play(desk, melody)
    expect(state(app).coach.streak).toBe(i)
    expect(state(app).coach.rung).toBe(before)
  }
  await play(desk, melody)
  const { coach, said } = state(app)
  expect(coach.rung).toBeGreaterThan(before)
  expect(coach.streak).toBe(0)
  expect(said).toMatchObject({ kind: 'reason' })
  expect(sentence(app)).toMatch(/^Five clean in a row/)
  const kinds = app.session.store.getState().events.map((event) => event.kind)
  expect(kinds).toEqual([
    'sessionBegun',
    'drillBegun',
    ...Array<string>(5).fill('repetition'),
    'rungChanged',
  ])
})

test('a slip in the fourth sends the counters back and is named', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  for (let i = 0; i < 3; i++) await play(desk, melody)
  expect(state(app).coach.streak).toBe(3)
  await play(desk, 'C4 D#4 E4 F4')
  expect(state(app).coach.streak).toBe(0)
  expect(state(app).last?.verdict).toBe('flawed')
  expect(state(app).last?.flaws.map(({ kind, played }) => [kind, played?.key])).toEqual([
    ['wrong', 63],
  ])
})

test('after a reload the drill goes on with its streak, its rung and its strokes', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  await play(desk, melody)
  await play(desk, 'C4 D#4 E4 F4')
  await play(desk, melody)
  await play(desk, melody)
  const before = state(app).coach
  const again = createDesk([sampleOf('First', melody)], desk.storage, 60_000)
  again.goTo(desk.address())
  const reopened = createApp(again.ports)
  await reopened.open()
  await settled()
  const { rung, streak, recent } = state(reopened).coach
  expect({ rung, streak, recent }).toEqual({
    rung: before.rung,
    streak: 2,
    recent: ['clean', 'flawed', 'clean', 'clean'],
  })
})

test('each repetition is stored with its take', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  await sitDown(desk)
  await play(desk, melody)
  const stored = await desk.storage.events({ kind: 'all' })
  const takes = stored.ok
    ? stored.value.events.flatMap((e) => (e.kind === 'repetition' ? [e.take] : []))
    : []
  expect(takes).toHaveLength(1)
  const take = decodeTake(takes[0] ?? '', ms(0))
  expect(take.ok && take.value.events.map(({ kind }) => kind).join(' ')).toBe(
    'down up down up down up down up',
  )
})

test('a verdict is shown only when the disk has it; a disk that is slow holds up no key', async () => {
  const memory = createMemoryStorage()
  let slow = false
  const waiting: (() => void)[] = []
  const storage: typeof memory = {
    ...memory,
    append: async (event) => {
      if (slow) await new Promise<void>((resolve) => waiting.push(resolve))
      return memory.append(event)
    },
  }
  const desk = createDesk([sampleOf('First', melody)], storage)
  const app = await sitDown(desk)
  slow = true
  await play(desk, melody)
  await play(desk, melody)
  expect([state(app).coach.streak, state(app).last]).toEqual([0, undefined])
  expect(waiting.length).toBeGreaterThanOrEqual(2)
  slow = false
  for (const resolve of waiting) resolve()
  await settled()
  expect([state(app).coach.streak, state(app).last?.verdict]).toEqual([2, 'clean'])
})

test('what the simulated player shows is not recorded, and a key of the person gives their drill back', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  await play(desk, melody)
  void app.practice.toggleSimulated()
  for (let i = 0; i < 2; i++) {
    for (const k of keysOf('C4 D#4 E4 F4')) {
      desk.simulate(k)
      desk.pass(910)
    }
    desk.pass(900)
    await settled()
  }
  expect(state(app).coach.recent).toEqual(['flawed', 'flawed'])
  await play(desk, melody)
  expect(state(app).simulated).toBe(false)
  expect(state(app).coach.recent).toEqual(['clean', 'clean'])
  expect(app.review(app.session.store.getState().events).tally).toEqual({
    clean: 2,
    flawed: 0,
    brokenOff: 0,
  })
})

test('the metronome follows the rung, and is silent when the drill is left', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  await app.practice.toggleMetronome()
  const { rung } = state(app).coach
  app.practice.raise()
  await settled()
  const raised = state(app).coach.rung
  app.go({ kind: 'pieces' })
  await settled()
  const begun = desk.sounded.indexOf(`metronome ${rung}`)
  expect(desk.sounded.slice(begun)).toEqual([`metronome ${rung}`, `tempo ${raised}`, 'stop'])
  expect(app.practice.store.getState()).toBeUndefined()
})

test('after the simulated player has gone up the ladder the metronome is back at the rung of the person', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  await app.practice.toggleMetronome()
  const { rung } = state(app).coach
  void app.practice.toggleSimulated()
  app.practice.raise()
  await settled()
  desk.strike(60)
  await settled()
  expect(state(app).coach.rung).toBe(rung)
  expect(desk.sounded.at(-1)).toBe(`tempo ${rung}`)
})

test('a cable pulled in mid-repetition costs neither the streak nor a stroke', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  const keyboard = (standing: 'there' | 'unplugged'): void =>
    desk.setMidi({ kind: 'ready', inputs: [{ id: 'a', name: 'Stage 88', standing }] })
  keyboard('there')
  await play(desk, melody)
  await play(desk, melody)
  desk.strike(60)
  desk.pass(500)
  keyboard('unplugged')
  expect(state(app).said).toEqual({ kind: 'unplugged' })
  expect(app.practice.marks.now().size).toBe(0)
  desk.pass(30_000)
  keyboard('there')
  await play(desk, melody)
  expect(state(app).coach.recent).toEqual(['clean', 'clean', 'clean'])
  expect(state(app).coach.streak).toBe(3)
  expect(state(app).said).toBeUndefined()
})

test('another program takes the keyboard in mid-repetition: it is said, and the drill goes on with the other', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  const keyboards = (standing: 'there' | 'taken'): void =>
    desk.setMidi({
      kind: 'ready',
      inputs: [
        { id: 'a', name: 'Stage 88', standing },
        { id: 'b', name: 'Small 25', standing: 'there' },
      ],
    })
  keyboards('there')
  await play(desk, melody)
  desk.strike(60)
  desk.pass(500)
  keyboards('taken')
  expect(state(app).said).toEqual({ kind: 'taken' })
  desk.pass(30_000)
  await play(desk, melody)
  expect(state(app).coach.recent).toEqual(['clean', 'clean'])
  expect(state(app).coach.streak).toBe(2)
})

test('a key struck just before the standard changes still begins its repetition', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  const [first, ...rest] = keysOf(melody)
  if (first) desk.strike(first)
  app.changeSettings({ standard: 'notes' })
  desk.pass(500)
  for (const k of rest) {
    desk.strike(k)
    desk.pass(500)
  }
  desk.pass(900)
  await settled()
  expect(state(app).last?.verdict).toBe('clean')
})

test('a file that is no MIDI file is refused with its name and the reason, and nothing is listed', async () => {
  const desk = createDesk([])
  const app = createApp(desk.ports)
  await app.open()
  const bytes = new TextEncoder().encode('A letter to my aunt')
  await app.addFile({ name: 'aunt.mid', size: 19, read: () => Promise.resolve(bytes) })
  const { listed, problem } = app.library.store.getState()
  expect(listed).toEqual([])
  expect(problem && explainLibraryProblem(problem)).toMatch(/^aunt\.mid: .*MIDI/)
})

test('a piece of the person is there again after a reload', async () => {
  const desk = createDesk([])
  const app = createApp(desk.ports)
  await app.open()
  const { bytes } = sampleOf('Mine', 'G4 A4 B4')
  await app.addFile({ name: 'mine.mid', size: bytes.length, read: () => Promise.resolve(bytes) })
  const again = createDesk([], desk.storage)
  const reopened = createApp(again.ports)
  await reopened.open()
  const [listed] = reopened.library.store.getState().listed
  expect(listed?.title).toBe('Mine')
  if (listed) again.goTo(formatRoute({ kind: 'piece', piece: listed.id }))
  await settled()
  expect(reopened.screen.getState().kind).toBe('piece')
})

test('a piece that is brought in is in the record and not yet played; a repetition is played, after a reload too', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = await sitDown(desk)
  const { bytes } = sampleOf('Mine', 'G4 A4 B4')
  await app.addFile({ name: 'mine.mid', size: bytes.length, read: () => Promise.resolve(bytes) })
  expect([await app.hasPractised(), await app.session.hasPlayed()]).toEqual([true, false])
  const [piece] = app.library.store.getState().listed
  if (!piece) throw new Error('no sample is listed')
  app.go({ kind: 'practice', piece: piece.id, place: { from: '0', to: '3', hand: 'right' } })
  await settled()
  await play(desk, melody)
  const reopened = createApp(createDesk([], desk.storage).ports)
  await reopened.open()
  expect(await reopened.session.hasPlayed()).toBe(true)
})

test('an address of a piece that is not here says so', async () => {
  const desk = createDesk([sampleOf('First', melody)])
  desk.goTo('#/piece/p0000000000000000')
  const app = createApp(desk.ports)
  await app.open()
  expect(app.screen.getState().kind).toBe('lost')
})

test('what clicks between the beats, and silent bars, are changed while the metronome runs', async () => {
  const desk = createDesk([sampleOf('Sample', melody)])
  const app = await sitDown(desk)
  app.changeSettings({ perBeat: 2, metronomeVolume: 0.3 })
  expect(desk.volumes.get('metronome')).toBe(0.3)
  expect(desk.volumes.get('piano')).toBe(0.8)
  const { rung } = state(app).coach
  await app.practice.toggleMetronome()
  app.changeSettings({ silentBars: true })
  const begun = desk.sounded.indexOf(`metronome ${rung} 2 a beat`)
  expect(desk.sounded.slice(begun)).toEqual([
    `metronome ${rung} 2 a beat`,
    'pattern 2 a beat silent bars',
  ])
  await play(desk, melody)
  expect(state(app).last).toBeDefined()
})
