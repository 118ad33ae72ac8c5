import { describe, expect, test } from 'vitest'
import { createApp, type App } from '@/app/app'
import { fingered, none, type FingeredPiece } from '@/app/fingerings'
import { typedFile } from '@/app/typing'
import { parseJournal } from '@/journal/lines'
import { formatFingers, type Fingers } from '@/music/fingers'
import type { Finger } from '@/music/music'
import { createMemoryStorage } from '@/storage/memory'
import { fingeringText } from '@/text/fingering'
import { sampleOf } from '../support/atTheDesk'
import { createDesk, settled, type Desk } from '../support/fakePorts'

const desk = (storage = createMemoryStorage(), startAt = 0) =>
  createDesk([sampleOf('Sample', 'C4 D4')], storage, startAt)
const open = async (at: Desk): Promise<App> => {
  const app = createApp(at.ports)
  await app.open()
  await settled()
  return app
}
const stair = typedFile('tempo 120\nC4 D4 E4 F4 | G4 A4 B4 C5', 'Stair')
/** Another note in the second bar. */
const better = typedFile('tempo 120\nC4 D4 E4 F4 | G4 A4 Bb4 C5', 'Stair')

const pieceOf = (app: App): FingeredPiece => {
  const now = app.screen.getState()
  if (now.kind !== 'piece') throw new Error(`the screen is ${now.kind}`)
  return now.piece
}
/** The digits on the notes of the page, a dot where none stands. */
const digits = (app: App): string =>
  pieceOf(app)
    .score.notes.map(({ fingers = [] }) => formatFingers(fingers) || '.')
    .join('')
const onNotes = (app: App, text: string): Fingers =>
  new Map(
    pieceOf(app).score.notes.flatMap(({ id }, i) =>
      (text[i] ?? '.') === '.' ? [] : [[id, [Number(text[i]) as Finger]] as const],
    ),
  )
const versionsOf = (app: App) =>
  app.fingerings.store.getState().pieces.get(pieceOf(app).score.id) ?? none
const names = (app: App): string =>
  versionsOf(app)
    .versions.map(({ id, name }) => `${name}${id === versionsOf(app).chosen ? '!' : ''}`)
    .join(', ')
const atStair = async (at: Desk): Promise<App> => {
  const app = await open(at)
  await app.addFile(stair)
  await settled()
  return app
}

describe('the person’s fingering', () => {
  test('a first digit begins a version, two typed at once only one', async () => {
    const app = await atStair(desk())
    const piece = pieceOf(app)
    await Promise.all([
      app.fingerings.write(piece, onNotes(app, '1')),
      app.fingerings.write(piece, onNotes(app, '.2')),
    ])
    expect(names(app)).toBe('My fingering!')
    expect(digits(app)).toBe('12......')
  })

  test('a digit is changed and taken away', async () => {
    const at = desk()
    const app = await atStair(at)
    await app.fingerings.write(pieceOf(app), onNotes(app, '123'))
    at.pass(1000)
    await app.fingerings.write(pieceOf(app), onNotes(app, '.3'))
    at.pass(1000)
    const first = pieceOf(app).score.notes[0]
    if (first) await app.fingerings.write(pieceOf(app), new Map([[first.id, []]]))
    expect(digits(app)).toBe('.33.....')
  })

  test('versions stand side by side: chosen, named, copied and removed, for the next visit too', async () => {
    const storage = createMemoryStorage()
    const at = desk(storage)
    const app = await atStair(at)
    const { id } = pieceOf(app).score
    await app.fingerings.write(pieceOf(app), onNotes(app, '12312345'))
    at.pass(1000)
    const own = versionsOf(app).versions[0]
    if (!own) throw new Error('no version')
    await app.fingerings.begin(id, { ...own, name: 'A copy' })
    at.pass(1000)
    await app.fingerings.write(pieceOf(app), onNotes(app, '....1'))
    expect(names(app)).toBe('My fingering, A copy!')
    expect(digits(app)).toBe('12311345')
    at.pass(1000)
    const words = { name: 'Lesson', origin: 'teacher', remark: 'lighter' } as const
    await app.fingerings.describe(id, own.id, words)
    await app.fingerings.choose(id, own.id)
    expect(names(app)).toBe('Lesson!, A copy')
    expect(digits(app)).toBe('12312345')

    const later = await open(desk(storage, 60_000))
    later.go({ kind: 'piece', piece: id })
    await settled()
    expect(names(later)).toBe('Lesson!, A copy')
    expect(versionsOf(later).versions[0]).toMatchObject(words)
    expect(digits(later)).toBe('12312345')
    await later.fingerings.erase(id, own.id)
    expect(names(later)).toBe('A copy')
    expect(digits(later)).toBe('........')
  })

  test('it is on the notes of a drill', async () => {
    const app = await atStair(desk())
    await app.fingerings.write(pieceOf(app), onNotes(app, '1231'))
    const place = { from: '0', to: '3', hand: 'right' } as const
    app.go({ kind: 'practice', piece: pieceOf(app).score.id, place })
    await settled()
    const { score } = app.practice.store.getState()?.desk ?? {}
    expect(score?.notes.slice(0, 5).map(({ fingers = [] }) => formatFingers(fingers))).toEqual([
      '1',
      '2',
      '3',
      '1',
      '',
    ])
  })

  test('a better edition gets the digits of the notes that agree, once', async () => {
    const at = desk()
    const app = await atStair(at)
    await app.fingerings.write(pieceOf(app), onNotes(app, '12312345'))
    const edition = await app.library.compareEdition(pieceOf(app).score.id, better)
    if (!edition) throw new Error(app.library.store.getState().problem?.kind)
    await app.replaceEdition(edition)
    await settled()
    expect(digits(app)).toBe('123123.5')
    expect(names(app)).toBe('My fingering!')
    expect(pieceOf(app).carriedFingers).toEqual({ carried: 7, dropped: 1 })
    app.go({ kind: 'pieces' })
    await settled()
    app.go({ kind: 'piece', piece: edition.piece.id })
    await settled()
    expect(pieceOf(app).carriedFingers, 'told once').toBeUndefined()
    const back = await app.library.compareEdition(pieceOf(app).score.id, stair)
    if (back) await app.replaceEdition(back)
    await settled()
    const again = await app.library.compareEdition(pieceOf(app).score.id, better)
    if (again) await app.replaceEdition(again)
    await settled()
    expect(names(app)).toBe('My fingering!')
  })

  test.each([
    [
      7,
      1,
      'Of your 8 digits, 7 stand here; 1 is dropped, since the notes are not in this edition.',
    ],
    [
      1,
      2,
      'Of your 3 digits, 1 stands here; 2 are dropped, since the notes are not in this edition.',
    ],
    [1, 0, 'Of your 1 digit, 1 stands here.'],
  ])('it is told what became of them: %i stand, %i do not', (carried, dropped, words) => {
    expect(fingeringText.carried(carried, dropped)).toBe(words)
  })

  test('the same piece brought again has it, and it goes out and in with the record', async () => {
    const [here, there] = [desk(), desk(createMemoryStorage(), 5_000)]
    const [one, other] = [await atStair(here), await atStair(there)]
    await one.fingerings.write(pieceOf(one), onNotes(one, '12312345'))
    await one.library.remove(pieceOf(one).score.id)
    await one.addFile(stair)
    await settled()
    expect(digits(one)).toBe('12312345')
    await one.records.save()
    const [file] = here.saved.values()
    await there.ports.storage.importAll(parseJournal(file ?? '').events, () => {})
    other.go({ kind: 'pieces' })
    await settled()
    other.go({ kind: 'piece', piece: pieceOf(one).score.id })
    await settled()
    expect(digits(other)).toBe('12312345')
  })

  test('the digits of the file stand until others are chosen, and come back', async () => {
    const app = await atStair(desk())
    const read = pieceOf(app)
    const { score } = read
    const fromFile = {
      ...read,
      fileFingers: onNotes(app, '11'),
      score: { ...score, notes: score.notes },
    }
    const shown = fingered(fromFile, none).score.notes.map(({ fingers = [] }) => fingers.join(''))
    expect(shown.slice(0, 3)).toEqual(['1', '1', ''])
    await app.fingerings.write(fromFile, onNotes(app, '.2'))
    expect(digits(app)).toBe('12......')
  })
})
