import { expect, test } from 'vitest'
import { createApp, type App } from '@/app/app'
import { carryHands, type CarriedHands } from '@/app/carryHands'
import { createHandCorrections, type CorrectedPiece } from '@/app/handCorrections'
import type { ChosenFile, OpenPiece } from '@/app/library'
import { correctHands, handCorrection, type HandCorrection } from '@/hands/correctHands'
import type { Hand, Score } from '@/music/music'
import { key, tempo, tick } from '@/music/units'
import { writeMidiFile } from '@/score/writeMidiFile'
import { createMemoryStorage } from '@/storage/memory'
import { describeCarried } from '@/views/HandWord'
import { storagePort } from '../../src/storagePort'
import { writeScore } from '../music/writeScore'
import { keysOf, sampleOf } from '../support/atTheDesk'
import { createDesk, settled } from '../support/fakePorts'

/** Quarters as from a file of one track, all of them taken for the right hand. */
const read = (right: string, ticksPerQuarter = 480): Score => {
  const score = writeScore({ right, ticksPerQuarter })
  return { ...score, notes: score.notes.map((note) => ({ ...note, handFrom: 'inferred' })) }
}
const old = read('C4 D4 E4 F4 G4 A4 B4 C5')

/** From one quarter to another. */
const say = (from: number, to: number, hand: Hand, ...keys: number[]): HandCorrection =>
  handCorrection(
    old,
    tick(from * 480),
    tick(to * 480),
    hand,
    keys.length > 0 ? keys.map(key) : undefined,
  )
const allLeft = say(0, 7, 'left')

/** A letter for each note, small where the person has said nothing of it. */
const handsOf = ({ notes }: Score): string =>
  notes
    .map(({ hand, handFrom }) => {
      const letter = hand === 'left' ? 'L' : 'R'
      return handFrom === 'person' ? letter : letter.toLowerCase()
    })
    .join('')

const countsOf = ({ carried, inPart, told, dropped }: CarriedHands): string =>
  Object.entries({ carried, inPart, told, dropped })
    .filter(([, n]) => n > 0)
    .map(([word, n]) => `${n} ${word}`)
    .join(', ')

test.each<[string, string, readonly HandCorrection[], string, string]>([
  ['the same notes', 'C4 D4 E4 F4 G4 A4 B4 C5', [allLeft], 'LLLLLLLL', '1 carried'],
  ['another note', 'C4 D4 Eb4 F4 G4 A4 B4 C5', [allLeft], 'LLrLLLLL', '1 carried, 1 inPart'],
  ['a note besides', 'C4+E4 D4 E4 F4 G4 A4 B4 C5', [allLeft], 'LrLLLLLLL', '1 carried'],
  ['a note between', 'C4 D4:1/2 F4:1/2 E4', [allLeft], 'LLrL', '1 carried, 1 inPart'],
  ['an end cut off', 'C4 D4 E4', [allLeft], 'LLL', '1 carried, 1 inPart'],
  ['other notes throughout', 'C5 D5 E5 F5', [allLeft], 'rrrr', '1 dropped'],
  ['a later word above', 'C4 D4 E4', [say(0, 2, 'left'), say(1, 1, 'right')], 'LRL', '2 carried'],
  ['a word on a key', 'C4 D4+F#4 E4', [say(1, 1, 'left', 62)], 'rLrr', '1 carried'],
  [
    'a key that is gone',
    'C4 Db4+F#4 E4',
    [say(1, 1, 'left', 62), say(0, 0, 'left')],
    'Lrrr',
    '1 carried, 1 dropped',
  ],
])('an edition with %s', (_, line, corrections, hands, counts) => {
  const better = read(line, 96)
  const carried = carryHands(corrections, old, better)
  expect(handsOf(correctHands(better, carried.corrections))).toBe(hands)
  expect(countsOf(carried)).toBe(counts)
})

test('a correction of the same notes stays one', () => {
  const carried = carryHands([allLeft], old, read('C4 D4 E4 F4 G4 A4 B4 C5'))
  expect(carried.corrections).toEqual([allLeft])
})

test('where the better file tells the hands no word is needed', () => {
  const better = writeScore({ right: 'C4 D4 E4 F4 G4 A4 B4 C5' })
  expect(carryHands([allLeft], old, better)).toMatchObject({ corrections: [], told: 1 })
})

const openOf = (score: Score): OpenPiece => ({ score, warnings: [] })
const better = read('C4 D4 Eb4 F4')
const handsAt = (storage: Parameters<typeof createHandCorrections>[0]) =>
  createHandCorrections(
    storage,
    { open: (id) => Promise.resolve(openOf(id === old.id ? old : better)) },
    () => undefined,
  )
const region = { from: tick(0), to: tick(1440) }

test('what is carried is kept, told once, and not doubled by a second time', async () => {
  const storage = storagePort(createMemoryStorage())
  const hands = handsAt(storage)
  await hands.add(old.id, region, 'left')
  await hands.carry(openOf(old), openOf(better))
  expect((await hands.open(better.id))?.carriedHands).toMatchObject({ carried: 1, inPart: 1 })
  expect((await hands.open(better.id))?.carriedHands).toBeUndefined()
  await hands.carry(openOf(old), openOf(better))
  const later = await handsAt(storage).open(better.id)
  expect(later && handsOf(later.score)).toBe('LLrL')
  expect(later?.corrections).toHaveLength(2)
})

test('what was said of the better edition itself stands above what comes from the older', async () => {
  const hands = handsAt(storagePort(createMemoryStorage()))
  await hands.add(old.id, region, 'left')
  await hands.add(better.id, { from: tick(0), to: tick(0) }, 'right')
  await hands.carry(openOf(old), openOf(better))
  const opened = await hands.open(better.id)
  expect(opened && handsOf(opened.score)).toBe('RLrL')
})

test('what cannot be stored holds for now, and the person is told', async () => {
  const hands = handsAt({
    hands: () => Promise.resolve(undefined),
    saveHands: () => Promise.resolve({ ok: false, reason: 'The disk is full.' }),
  })
  await hands.add(old.id, region, 'left')
  await hands.carry(openOf(old), openOf(better))
  const opened = await hands.open(better.id)
  expect(opened && handsOf(opened.score)).toBe('LLrL')
  expect(opened?.carriedHands?.problem).toBe('The disk is full.')
})

/** A file of one track that does not tell the hands. */
const fileOf = (name: string, names: string): ChosenFile => {
  const notes = keysOf(names).map((k, i) => ({
    key: k,
    start: tick(480 * i),
    length: tick(480),
  }))
  const bytes = writeMidiFile({
    title: name,
    ticksPerQuarter: 480,
    tempos: [{ start: tick(0), tempo: tempo(120) }],
    times: [{ start: tick(0), time: { beats: 4, beatType: 4 } }],
    keys: [],
    tracks: [{ name: 'piano', notes }],
  })
  return { name: `${name}.mid`, size: bytes.length, read: () => Promise.resolve(bytes) }
}

const shownPiece = (app: App): CorrectedPiece => {
  const screen = app.screen.getState()
  if (screen.kind !== 'piece') throw new Error(`the screen is ${screen.kind}`)
  return screen.piece
}

test('a replaced piece shows the corrected hands, and says what became of each correction', async () => {
  const app = createApp(createDesk([sampleOf('Sample', 'C4 D4')]).ports)
  await app.open()
  await app.addFile(fileOf('Stair', 'C5 D5 E5 F5'))
  await settled()
  const { id } = shownPiece(app).score
  await app.hands.add(id, { from: tick(0), to: tick(480) }, 'left')
  await app.hands.add(id, { from: tick(1440), to: tick(1440) }, 'left')
  const edition = await app.library.compareEdition(id, fileOf('Better', 'C5 D5 E5 G5'))
  if (!edition) throw new Error(app.library.store.getState().problem?.kind)
  await app.replaceEdition(edition)
  await settled()
  const { score, carriedHands } = shownPiece(app)
  expect(handsOf(score)).toBe('LLrr')
  expect(carriedHands && describeCarried(carriedHands)).toBe(
    'Of your 2 corrections of the hands, 1 holds here; 1 is dropped, since the notes are not in this edition.',
  )
})

test('a replaced piece takes along the words on hard spots where the notes agree', async () => {
  const app = createApp(createDesk([sampleOf('Sample', 'C4 D4')]).ports)
  await app.open()
  await app.addFile(fileOf('Stair', 'C5 D5 E5 F5'))
  await settled()
  const { id } = shownPiece(app).score
  const accepted = { from: '0', to: '2', hand: 'both', word: 'accepted' } as const
  const rejected = { from: '3', to: '4', hand: 'both', word: 'rejected' } as const
  await app.hardSpots.save(id, { said: [accepted, rejected], order: [] })
  const edition = await app.library.compareEdition(id, fileOf('Better', 'C5 D5 E5 G5'))
  if (!edition) throw new Error(app.library.store.getState().problem?.kind)
  await app.replaceEdition(edition)
  await settled()
  const better = shownPiece(app).score.id
  expect(await app.hardSpots.words(better)).toEqual({
    ok: true,
    value: { said: [accepted], order: [] },
  })
  expect(app.hardSpots.takeCarried(better)).toEqual({ carried: 1, dropped: 1 })
})

test.each([
  [{ carried: 1 }, 'Of your 1 correction of the hands, 1 holds here.'],
  [
    { carried: 3, inPart: 1 },
    'Of your 3 corrections of the hands, 3 hold here (1 for some of the notes only).',
  ],
  [
    { told: 2, problem: 'The disk is full.' },
    'Of your 2 corrections of the hands, 0 hold here; 2 are not needed, since this file tells those hands. The disk is full.',
  ],
])('the sentence for %j', (counts, sentence) => {
  const none = { corrections: [], carried: 0, inPart: 0, told: 0, dropped: 0 }
  expect(describeCarried({ ...none, ...counts })).toBe(sentence)
})
