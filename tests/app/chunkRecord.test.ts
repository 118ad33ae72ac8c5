import { expect, test } from 'vitest'
import { readChunkStates } from '@/app/chunkRecord'
import { parseJournal } from '@/journal/lines'
import { chunkId } from '@/music/units'
import { createMemoryStorage } from '@/storage/memory'
import { storagePort } from '../../src/storagePort'
import { sampleOf, melody } from '../support/atTheDesk'
import { readWithHands } from '../../src/readWithHands'
import { repetition, secure } from '../review/session'

const score = (() => {
  const read = readWithHands(sampleOf('First', melody).bytes, 'First.mid')
  if (!read.ok) throw new Error('unreadable')
  return read.value.score
})()
const noon = 43_200
const day = 86_400

test('a chunk is kept or slips by what was played on later days, in older editions too', async () => {
  const storage = createMemoryStorage()
  const [old, own] = [chunkId('p1:0-3:right'), chunkId(`${score.id}:0-3:right`)]
  const of = (chunk: string, ...days: readonly ('c' | 'f')[]) =>
    days.map((letter, i) => repetition(letter, noon + i * day, { chunk, rung: 120 }))
  const played = [...of(old, 'c', 'c'), secure(noon + 60, old), ...of('p1:9-9:left', 'c')]
  for (const event of played) await storage.append(event)
  const states = (carried: readonly { from: typeof old; to: typeof own }[]) =>
    readChunkStates(storagePort(storage), { score, carried })
  expect([...(await states([]))]).toEqual([])
  expect([...(await states([{ from: old, to: own }]))]).toEqual([[own, 'kept']])
  const [, , third] = of(own, 'c', 'c', 'f')
  if (third) await storage.append({ ...third, piece: score.id })
  expect([...(await states([{ from: old, to: own }]))]).toEqual([[own, 'slipped']])
})

test('a saved record holds every event, and what cannot be read as it stands', async () => {
  const storage = createMemoryStorage()
  const odd = { id: 'x', v: 99 }
  for (const event of [repetition('c', 1), repetition('f', 2)]) await storage.append(event)
  const withOdd: typeof storage = {
    ...storage,
    eventsInParts: async (see) => {
      const read = await storage.eventsInParts(see)
      const reason = { kind: 'newerVersion', version: 99, known: 2 } as const
      see({ events: [], unread: [{ id: 'x', reason, record: odd }] })
      return read
    },
  }
  const text = await storagePort(withOdd).exportText()
  const saved = parseJournal(text.ok ? text.value.join('') : '')
  expect(saved.events.map(({ id }) => id)).toEqual(['r1', 'r2'])
  expect(saved.unread.map(({ text }) => text)).toEqual([JSON.stringify(odd)])
})
