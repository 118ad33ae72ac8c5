import { expect, test } from 'vitest'
import { createApp, type App } from '@/app/app'
import type { ChosenFile, Listed } from '@/app/library'
import { createDesk, settled } from '../support/fakePorts'
import { sampleOf } from '../support/atTheDesk'

const fileOf = (name: string, bytes: Uint8Array): ChosenFile => ({
  name,
  size: bytes.length,
  read: () => Promise.resolve(bytes),
})
const midi = (title: string, names: string): ChosenFile =>
  fileOf(`${title}.mid`, sampleOf(title, names).bytes)

const note = (step: string, octave: number): string =>
  `<note><pitch><step>${step}</step><octave>${octave}</octave></pitch><duration>4</duration></note>`
/** A song: a voice part and the piano, whole notes in 4/4. */
const song = fileOf(
  'song.musicxml',
  new TextEncoder().encode(
    `<score-partwise version="4.0"><movement-title>Evening Song</movement-title><identification><creator type="composer">A. Nobody</creator></identification><part-list><score-part id="P1"><part-name>Voice</part-name></score-part><score-part id="P2"><part-name>Piano</part-name></score-part></part-list><part id="P1"><measure number="1"><attributes><divisions>1</divisions></attributes>${note('C', 5)}</measure></part><part id="P2"><measure number="1"><attributes><divisions>1</divisions></attributes>${note('E', 4)}</measure></part></score-partwise>`,
  ),
)

const listed = (app: App): readonly Listed[] => app.library.store.getState().listed
const titles = (app: App): string[] => listed(app).map(({ title }) => title)
const idOf = (app: App, title: string): Listed['id'] => {
  const found = listed(app).find((piece) => piece.title === title)
  if (!found) throw new Error(`${title} is not listed`)
  return found.id
}
const open = async (desk = createDesk([sampleOf('Sample', 'C4 D4')])) => {
  const app = createApp(desk.ports)
  await app.open()
  await settled()
  return { app, desk }
}

test('a renamed piece keeps its title after a reload, in the list and when opened', async () => {
  const { app, desk } = await open()
  await app.addFile(midi('Stair', 'C4 E4'))
  await app.library.rename(idOf(app, 'Stair'), 'Garden Stair')
  expect(titles(app)).toEqual(['Sample', 'Garden Stair'])
  const again = await open(createDesk([sampleOf('Sample', 'C4 D4')], desk.storage, 60_000))
  expect(titles(again.app)).toEqual(['Sample', 'Garden Stair'])
  const piece = await again.app.library.open(idOf(again.app, 'Garden Stair'))
  expect(piece?.score.title).toBe('Garden Stair')
})

test('the same music brought again keeps the title that the person gave', async () => {
  const { app } = await open()
  await app.addFile(midi('Stair', 'C4 E4'))
  await app.library.rename(idOf(app, 'Stair'), 'Garden Stair')
  await app.addFile(midi('Other name', 'C4 E4'))
  expect(listed(app).map(({ title, fileName }) => `${title}, ${fileName}`)).toEqual([
    'Sample, Sample.mid',
    'Garden Stair, Other name.mid',
  ])
})

test('a removed piece is gone, after a reload too, and its journal stays', async () => {
  const { app, desk } = await open()
  await app.addFile(midi('Stair', 'C4 E4'))
  const id = idOf(app, 'Stair')
  await app.library.remove(id)
  expect(titles(app)).toEqual(['Sample'])
  expect(await app.library.open(id)).toBeUndefined()
  const events = await desk.storage.events({ kind: 'piece', piece: id })
  expect(events.ok && events.value.events.map(({ kind }) => kind)).toEqual(['pieceAdded'])
  const again = await open(createDesk([sampleOf('Sample', 'C4 D4')], desk.storage, 60_000))
  expect(titles(again.app)).toEqual(['Sample'])
})

test('a song comes with its composer and its parts, the piano taken', async () => {
  const { app } = await open()
  await app.addFile(song)
  await settled()
  const screen = app.screen.getState()
  if (screen.kind !== 'piece') throw new Error(`the screen is ${screen.kind}`)
  expect(listed(app)[1]?.composer).toBe('A. Nobody')
  expect(screen.piece.parts?.map(({ name, taken }) => `${name} ${taken}`)).toEqual([
    'Voice false',
    'Piano true',
  ])
})

test('other parts take the place of the piece, and are taken again after a reload', async () => {
  const { app, desk } = await open()
  await app.addFile(song)
  await settled()
  const screen = app.screen.getState()
  if (screen.kind !== 'piece') throw new Error(`the screen is ${screen.kind}`)
  await app.library.rename(screen.piece.score.id, 'Song')
  await app.takeParts(screen.piece, [0, 1])
  await settled()
  expect(titles(app)).toEqual(['Sample', 'Song'])
  expect(idOf(app, 'Song')).not.toBe(screen.piece.score.id)
  const again = await open(createDesk([sampleOf('Sample', 'C4 D4')], desk.storage, 60_000))
  const piece = await again.app.library.open(idOf(again.app, 'Song'))
  expect(piece?.score.notes.map(({ key }) => key)).toEqual([64, 72])
  expect(piece?.parts?.map(({ taken }) => taken)).toEqual([true, true])
})
