import { expect, test } from 'vitest'
import { dayAt } from '@/journal/day'
import { formatJournal, parseJournal } from '@/journal/lines'
import { previewImport } from '@/journal/previewImport'
import { drillBegun, pieceAdded, repetition, repetitions, written } from '../review/session'

const dayOf = (epochMs: number) => dayAt(epochMs, 0)
const file = [
  pieceAdded('Morning Steps'),
  drillBegun(5),
  ...repetitions('ccf'),
  repetition('c', 90_000),
  written(90_001, 'Slower'),
]
const preview = (text: string, known: readonly string[] = []) =>
  previewImport(parseJournal(text), (id) => known.includes(id), dayOf)

test('tells what a file would bring', () => {
  expect(preview(formatJournal(file))).toEqual({
    events: 7,
    known: 0,
    fresh: {
      events: 7,
      repetitions: 4,
      entries: 1,
      sessions: 1,
      pieces: [{ piece: 'p1', title: 'Morning Steps' }],
      days: 2,
      firstDay: '2025-12-31',
      lastDay: '2026-01-01',
    },
    unread: [],
  })
})

test('counts what is here already apart, and each event once', () => {
  const ids = file.slice(0, 4).map(({ id }) => id)
  const { events, known, fresh } = preview(formatJournal([...file, ...file]), ids)
  expect([events, known, fresh.events, fresh.repetitions]).toEqual([7, 4, 3, 2])
})

test('a file of which all is here brings nothing', () => {
  const ids = file.map(({ id }) => id)
  expect(preview(formatJournal(file), ids).fresh).toEqual({
    events: 0,
    repetitions: 0,
    entries: 0,
    sessions: 0,
    pieces: [],
    days: 0,
  })
})

test('names the lines that cannot be read, and why', () => {
  const text = `${formatJournal(file.slice(0, 1))}{"v":9}\nnonsense\n${formatJournal(file.slice(1))}`
  const { events, unread } = preview(text)
  expect(events).toBe(7)
  expect(unread.map(({ line }) => line)).toEqual([2, 3])
  expect(unread[0]?.why).toMatch(/newer version.*journal version 9/)
  expect(unread[1]?.why).toMatch(/not JSON/)
})
