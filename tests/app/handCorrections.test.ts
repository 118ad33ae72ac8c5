import { expect, test } from 'vitest'
import { createHandCorrections, type CorrectedPiece } from '@/app/handCorrections'
import type { OpenPiece } from '@/app/library'
import type { StoragePort } from '@/app/ports'
import { key, tick } from '@/music/units'
import { createMemoryStorage } from '@/storage/memory'
import { storagePort } from '../../src/storagePort'
import { writeScore } from '../music/writeScore'

const written = writeScore({ right: 'C5 D5 E5 F5', left: 'C3:2 D3:2' })
/** As from a file of one track. */
const piece: OpenPiece = {
  score: {
    ...written,
    notes: written.notes.map((note) => ({ ...note, hand: 'right', handFrom: 'inferred' })),
  },
  warnings: [],
}

const desk = (storage: Pick<StoragePort, 'hands' | 'saveHands'>, opened = piece) => {
  const shown: string[] = []
  const hands = createHandCorrections(storage, { open: () => Promise.resolve(opened) }, (now) =>
    shown.push(handsOf(now)),
  )
  return { hands, shown }
}

/** 'RRL…' in the order of the notes. */
const handsOf = ({ score }: Pick<CorrectedPiece, 'score'>): string =>
  score.notes.map(({ hand }) => (hand === 'left' ? 'L' : 'R')).join('')

const { id } = written
const all = { from: tick(0), to: tick(1440) }

test('corrections are shown at once, kept for the next visit, and taken back one by one', async () => {
  const storage = storagePort(createMemoryStorage())
  const { hands, shown } = desk(storage)
  await hands.add(id, { from: tick(0), to: tick(0), keys: [key(48)] }, 'left')
  const added = await hands.add(id, { from: tick(960), to: tick(1440) }, 'left')
  expect(shown).toEqual(['LRRRRR', 'LRRLLL'])
  expect(added?.notes).toBe(3)
  const later = desk(storage)
  expect(handsOf(await later.hands.apply(piece))).toBe('LRRLLL')
  await later.hands.undo(id)
  await later.hands.undo(id)
  expect(later.shown).toEqual(['LRRRRR', 'RRRRRR'])
  expect(await later.hands.undo(id)).toBeUndefined()
})

test('where the file tells the hands there is nothing to say', async () => {
  const { hands, shown } = desk(storagePort(createMemoryStorage()), {
    score: written,
    warnings: [],
  })
  expect(await hands.add(id, all, 'left')).toBeUndefined()
  expect(shown).toEqual([])
})

test('what cannot be stored holds for now, and the person is told', async () => {
  const { hands } = desk({
    hands: () => Promise.resolve(undefined),
    saveHands: () => Promise.resolve({ ok: false, reason: 'The disk is full.' }),
  })
  const change = await hands.add(id, all, 'left')
  expect(change?.problem).toBe('The disk is full.')
  expect(handsOf(await hands.apply(piece))).toBe('LLLLLL')
})

test('what was stored in a shape that is none is left out', async () => {
  const { hands } = desk({
    hands: () => Promise.resolve([{ from: 'here', to: 'there', hand: 'left' }, 7]),
    saveHands: () => Promise.resolve({ ok: true, value: undefined }),
  })
  expect((await hands.apply(piece)).corrections).toEqual([])
})
