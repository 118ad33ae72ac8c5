import { describe, expect, test } from 'vitest'
import { createApp, type App } from '@/app/app'
import type { Draft } from '@/app/notebook'
import { typedFile } from '@/app/typing'
import { formatJournal, parseJournal } from '@/journal/lines'
import type { PieceId } from '@/music/units'
import { createMemoryStorage } from '@/storage/memory'
import { melody, play, sampleOf, sitDown, state } from '../support/atTheDesk'
import { createDesk, settled, type Desk } from '../support/fakePorts'

const open = async (desk: Desk): Promise<App> => {
  const app = createApp(desk.ports)
  await app.open()
  await settled()
  return app
}
const desk = (storage = createMemoryStorage(), startAt = 0) =>
  createDesk([sampleOf('Sample', 'C4 D4')], storage, startAt)
const samplePiece = (app: App): PieceId => {
  const [piece] = app.library.store.getState().listed
  if (!piece) throw new Error('no piece')
  return piece.id
}
const idea = (text: string, part: Partial<Draft> = {}): Draft => ({
  subject: 'idea',
  text,
  ...part,
})
const texts = (app: App): string =>
  app.notebook.store
    .getState()
    .entries.map(({ text }) => text)
    .join(', ')

describe('the notebook', () => {
  test('keeps what is written, changed and erased, for the next visit too', async () => {
    const storage = createMemoryStorage()
    const app = await open(desk(storage))
    const piece = samplePiece(app)
    await app.notebook.write(piece, idea('Slower'))
    await app.notebook.write(piece, idea('  Thumb under ', { subject: 'tried', helped: true }))
    expect(texts(app)).toBe('Thumb under, Slower')
    const [, slower] = app.notebook.store.getState().entries
    await app.notebook.write(piece, idea('Much slower', { replaces: slower?.id }))
    expect(texts(app)).toBe('Much slower, Thumb under')
    const [newest] = app.notebook.store.getState().entries
    if (newest) await app.notebook.erase(newest)
    expect(texts(app)).toBe('Thumb under')

    const later = await open(desk(storage, 60_000))
    expect(texts(later)).toBe('')
    await later.notebook.load()
    expect(texts(later)).toBe('Thumb under')
    expect(later.notebook.store.getState().entries[0]).toMatchObject({ helped: true, piece })
  })

  test('goes out and comes in with the record, and two notebooks become one', async () => {
    const [here, there] = [desk(createMemoryStorage()), desk(createMemoryStorage(), 5_000)]
    const [one, other] = [await open(here), await open(there)]
    await one.notebook.write(samplePiece(one), idea('Here'))
    await other.notebook.write(samplePiece(other), idea('There'))
    await other.records.save()
    const [file] = there.saved.values()
    await here.ports.storage.importAll(parseJournal(file ?? '').events, () => {})
    await one.notebook.load()
    expect(texts(one)).toBe('There, Here')
  })

  test('tells why it cannot be read, and keeps what is on the page', async () => {
    const at = desk()
    const app = await open(at)
    await app.notebook.write(samplePiece(app), idea('Slower'))
    Object.assign(at.ports.storage, {
      written: () => Promise.resolve({ ok: false, reason: 'The disk is gone.' }),
    })
    await app.notebook.load()
    expect(app.notebook.store.getState().problem).toBe('The disk is gone.')
    expect(texts(app)).toBe('Slower')
  })

  test('has titles of pieces that are gone', async () => {
    const app = await open(desk())
    await app.addFile(typedFile('tempo 120\nC4 D4 E4 F4', 'Stair'))
    const own = app.library.store.getState().listed.find(({ title }) => title === 'Stair')
    if (own) await app.library.remove(own.id)
    expect(own && (await app.notebook.titles()).get(own.id)).toBe('Stair')
  })
})

describe('a better edition', () => {
  const firstBar = { from: '0', to: '3', fromBar: 1, toBar: 1, hand: 'right' } as const
  const secondBar = { from: '4', to: '7', fromBar: 2, toBar: 2, hand: 'right' } as const
  const edition = (text: string) => typedFile(`tempo 120\n${text}`, 'Stair')
  const own = (app: App): PieceId => {
    const piece = app.library.store.getState().listed.find(({ from }) => from === 'file')
    if (!piece) throw new Error('no piece of one’s own')
    return piece.id
  }

  test('takes over what is written of the piece, and of places whose notes agree', async () => {
    const app = await open(desk())
    await app.addFile(edition('C4 D4 E4 F4 | G4 A4 B4 C5'))
    const old = own(app)
    await app.notebook.write(old, idea('of the whole'))
    await app.notebook.write(old, idea('of bar 1', { place: firstBar, subject: 'teacher' }))
    await app.notebook.write(old, idea('of bar 2', { place: secondBar }))
    await app.notebook.decide(old, 'finished')
    const better = await app.library.compareEdition(old, edition('C4 D4 E4 F4 | G4 A4 Bb4 C5'))
    if (better) await app.replaceEdition(better)
    await settled()
    expect(own(app)).not.toBe(old)
    const { entries, decisions, stayed } = app.notebook.store.getState()
    expect(stayed.get(own(app))).toBe(1)
    expect(entries.map(({ text, piece }) => `${text}: ${piece === own(app)}`).toSorted()).toEqual([
      'of bar 1: true',
      'of bar 2: false',
      'of the whole: true',
    ])
    expect(entries.find(({ text }) => text === 'of bar 1')).toMatchObject({
      place: firstBar,
      subject: 'teacher',
    })
    expect(decisions.get(own(app))).toBe('finished')
  })

  test('takes a note only where it is in the same place: a bar more before it, and it stays', async () => {
    const app = await open(desk())
    await app.addFile(edition('C4 D4 E4 F4 | G4 A4 B4 C5'))
    const old = own(app)
    await app.notebook.write(old, idea('of bar 2', { place: secondBar }))
    const longer = edition('C4 C4 C4 C4 | C4 D4 E4 F4 | G4 A4 B4 C5')
    const better = await app.library.compareEdition(old, longer)
    if (better) await app.replaceEdition(better)
    await settled()
    expect(app.notebook.store.getState().entries[0]?.piece).toBe(old)
  })
})

describe('what was tried at a problem', () => {
  test('stands there by itself, with what came of it', async () => {
    const at = createDesk([sampleOf('Sample', melody)])
    const app = await sitDown(at)
    await play(at, 'C4 D4 F4 F4')
    await play(at, 'C4 D4 F4 F4')
    await settled()
    app.practice.remedy(0)
    await settled()
    app.practice.undo()
    await settled()
    const [first, ...others] = await app.notebook.tried(state(app).desk.piece.id)
    expect(others).toEqual([])
    expect(first).toMatchObject({
      problem: { flaw: 'wrong', times: 2 },
      place: { fromBar: 1, hand: 'right' },
      tried: [{ outcome: 'leftOff' }],
    })
  })
})

describe('while the drill is held', () => {
  test('nothing is judged and no command heard; then it goes on, with the hands off first', async () => {
    const at = createDesk([sampleOf('Sample', melody)])
    const app = await sitDown(at)
    await play(at, melody)
    const { coach } = state(app)
    expect(coach.repetitions).toBe(1)
    const letGo = app.practice.hold()
    await play(at, melody)
    at.pass(20_000)
    await settled()
    expect(state(app).coach.repetitions).toBe(1)
    letGo()
    at.pass(1_000)
    await play(at, melody)
    expect(state(app).coach.repetitions).toBe(2)
  })

  test('what was begun is judged as it stands', async () => {
    const at = createDesk([sampleOf('Sample', melody)])
    const app = await sitDown(at)
    await play(at, 'C4 D4')
    app.practice.hold()
    await settled()
    expect(state(app).last?.verdict).toBe('brokenOff')
  })
})

test('an event of the notebook is a line of the journal like any other', async () => {
  const app = await open(desk())
  await app.notebook.write(samplePiece(app), idea('Slower'))
  const events = app.session.store.getState().events
  expect(parseJournal(formatJournal(events)).events).toEqual(events)
  expect(events.map(({ kind }) => kind)).toContain('notebookWritten')
})
