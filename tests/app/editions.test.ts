import { expect, test } from 'vitest'
import { createApp, type App } from '@/app/app'
import type { ChosenFile } from '@/app/library'
import { explainLibraryProblem } from '@/app/libraryProblem'
import { typedFile } from '@/app/typing'
import type { PieceId } from '@/music/units'
import { createDesk, settled, type Desk } from '../support/fakePorts'
import { play, sampleOf, state } from '../support/atTheDesk'

const typed = (text: string): ChosenFile => typedFile(`tempo 120\n${text}`, 'Stair')
const oldEdition = typed('C4 D4 E4 F4 | G4 A4 B4 C5')
/** Another note in the second bar. */
const better = typed('C4 D4 E4 F4 | G4 A4 Bb4 C5')
/** Another one in the first bar too. */
const best = typed('C4 D4 Eb4 F4 | G4 A4 Bb4 C5')

const firstBar = { from: '0', to: '3', hand: 'right' } as const
const secondBar = { from: '4', to: '7', hand: 'right' } as const

const open = async (desk: Desk): Promise<App> => {
  const app = createApp(desk.ports)
  await app.open()
  await settled()
  return app
}
const ownPiece = (app: App): PieceId => {
  const own = app.library.store.getState().listed.filter(({ from }) => from === 'file')
  const [piece] = own
  if (!piece || own.length > 1) throw new Error(`${own.length} pieces of one's own`)
  return piece.id
}
const problemOf = (app: App): string => {
  const { problem } = app.library.store.getState()
  return problem ? explainLibraryProblem(problem) : ''
}
const drill = async (app: App, place: typeof firstBar | typeof secondBar): Promise<void> => {
  app.go({ kind: 'practice', piece: ownPiece(app), place })
  await settled()
}
/** A sitting in which both bars were played clean twice. */
const practised = async (): Promise<{ readonly app: App; readonly desk: Desk }> => {
  const desk = createDesk([sampleOf('Sample', 'C4 D4')])
  const app = await open(desk)
  app.changeSettings({ trial: false })
  await app.addFile(oldEdition)
  for (const [place, notes] of [
    [firstBar, 'C4 D4 E4 F4'],
    [secondBar, 'G4 A4 B4 C5'],
  ] as const) {
    await drill(app, place)
    await play(desk, notes)
    await play(desk, notes)
    expect(state(app).coach.streak).toBe(2)
  }
  return { app, desk }
}
const replaceBy = async (app: App, file: ChosenFile): Promise<string> => {
  const edition = await app.library.compareEdition(ownPiece(app), file)
  if (!edition) throw new Error(app.library.store.getState().problem?.kind)
  await app.replaceEdition(edition)
  await settled()
  return `${edition.agreeing} of ${edition.practised}`
}

test('a better edition takes the place of the piece, and the record where the notes agree', async () => {
  const { app } = await practised()
  const before = ownPiece(app)
  await app.library.rename(before, 'Garden Stair')
  expect(await replaceBy(app, better)).toBe('1 of 2')
  expect(ownPiece(app)).not.toBe(before)
  const screen = app.screen.getState()
  expect(screen.kind === 'piece' && screen.piece.score.title).toBe('Garden Stair')
  await drill(app, firstBar)
  expect(state(app).coach.streak).toBe(2)
  await drill(app, secondBar)
  expect(state(app).coach.streak).toBe(0)
})

test('what carried over goes on, is there after a reload, and carries over again', async () => {
  const { app, desk } = await practised()
  await replaceBy(app, better)
  await drill(app, firstBar)
  await play(desk, 'C4 D4 E4 F4')
  expect(state(app).coach.streak).toBe(3)
  const again = await open(createDesk([sampleOf('Sample', 'C4 D4')], desk.storage, 600_000))
  await drill(again, firstBar)
  expect(state(again).coach.streak).toBe(3)
  expect(await replaceBy(again, typed('C4 D4 E4 F4 | G4 A4 Bb4 D5'))).toBe('1 of 1')
  await drill(again, firstBar)
  expect(state(again).coach.streak).toBe(3)
})

test('where the notes differ the record stays in the journal, and does not count', async () => {
  const { app, desk } = await practised()
  const before = ownPiece(app)
  expect(await replaceBy(app, best)).toBe('0 of 2')
  await drill(app, firstBar)
  expect(state(app).coach.streak).toBe(0)
  const events = await desk.storage.events({ kind: 'piece', piece: before })
  expect(events.ok && events.value.events.filter(({ kind }) => kind === 'repetition')).toHaveLength(
    4,
  )
})

test('the marks of what was practised stand on the better edition too', async () => {
  const { app } = await practised()
  await replaceBy(app, better)
  const screen = app.screen.getState()
  const states = screen.kind === 'piece' ? await app.chunkStates(screen.piece) : new Map()
  expect(states.get(`${ownPiece(app)}:0-3:right` as never)).toBe('practised')
  expect([...states.keys()].filter((id) => id.startsWith(ownPiece(app)))).toHaveLength(1)
})

test('the same music in another file keeps the whole record', async () => {
  const { app } = await practised()
  const before = ownPiece(app)
  expect(await replaceBy(app, typed('C4 D4 E4 F4 G4 A4 B4 C5'))).toBe('2 of 2')
  expect(ownPiece(app)).toBe(before)
  await drill(app, secondBar)
  expect(state(app).coach.streak).toBe(2)
})

test('a file that cannot be read, or a piece of the program, replaces nothing', async () => {
  const { app } = await practised()
  const before = ownPiece(app)
  expect(await app.library.compareEdition(before, typed('H4'))).toBeUndefined()
  expect(problemOf(app)).toMatch(/^Stair\.txt: .*“H4” is no pitch/)
  const sample = sampleOf('Sample', 'C4 D4').bytes
  const file = { name: 'x.mid', size: sample.length, read: () => Promise.resolve(sample) }
  expect(await app.library.compareEdition(before, file)).toBeUndefined()
  expect(problemOf(app)).toBe('x.mid: This is a piece that comes with the program.')
  expect(ownPiece(app)).toBe(before)
})
