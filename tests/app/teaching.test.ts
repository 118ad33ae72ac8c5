import { expect, test } from 'vitest'
import { createApp } from '@/app/app'
import { recordPlace } from '@/journal/record'
import type { JournalEvent } from '@/journal/journal'
import type { Day } from '@/journal/day'
import { chunkAt } from '@/music/place'
import { pieceId } from '@/music/units'
import { melody, sampleOf } from '../support/atTheDesk'
import { createDesk } from '../support/fakePorts'
import { drillBegun, overruled, repetition } from '../review/session'

/** So many days after Thursday, 1 January 2026, at half past three UTC: the same day nearly everywhere. */
const noon = (day: number): number => day * 86_400 + 55_800

/** A desk whose record holds practice of its one piece on two days in two weeks, and of another that is not at hand. */
const open = async () => {
  const desk = createDesk([sampleOf('First', melody)])
  const app = createApp(desk.ports)
  await app.open()
  const [listed] = app.library.store.getState().listed
  const piece = listed && (await app.library.open(listed.id))
  const chunk = piece && chunkAt(piece.score, { from: '0', to: '3', hand: 'right' })
  if (!piece || !chunk) throw new Error('the sample has no chunk')
  const own = <E extends JournalEvent>(event: E): E => ({
    ...event,
    piece: chunk.piece,
    chunk: chunk.id,
    ...(event.kind === 'drillBegun' ? { place: recordPlace(chunk, 1, 1) } : {}),
  })
  const wrong = (day: number, i: number, onset: number): JournalEvent => {
    const [note] = chunk.onsets[onset]?.notes ?? []
    const flaw = { kind: 'wrong', onset, ...(note ? { notes: note.ids, written: note.key } : {}) }
    return own({ ...repetition('f', noon(day) + i * 10), flaws: [flaw] } as JournalEvent)
  }
  const events: JournalEvent[] = [
    ...[0, 5].map((day) => own(drillBegun(noon(day)))),
    wrong(0, 1, 2),
    wrong(5, 1, 2),
    wrong(5, 2, 2),
    own(repetition('c', noon(5) + 30)),
    own(overruled(noon(5) + 35, 'raise')),
    { ...repetition('c', noon(5) + 900, { chunk: 'x' }), piece: pieceId('p-else') },
  ]
  for (const event of events) await desk.storage.append(event)
  return { reviews: app.records, piece: piece.score.id }
}

test('without a day the page is of the latest week with practice, and every week and piece can be chosen', async () => {
  const { reviews, piece } = await open()
  const read = await reviews.teacherPage({ week: undefined })
  if (!read.ok) throw new Error(read.reason)
  expect(read.value).toMatchObject({
    span: { from: '2026-01-05', to: '2026-01-11' },
    figures: { tally: { clean: 2, flawed: 2, brokenOff: 0 } },
    days: 1,
    overruled: [{ what: 'raise', times: 1 }],
  })
  expect(read.value.choices.weeks).toEqual(['2026-01-05', '2025-12-29'])
  expect(read.value.choices.pieces).toContainEqual({ piece, title: 'First' })
})

test('where the score is at hand the hard places are its bars, elsewhere chunks in words', async () => {
  const { reviews, piece } = await open()
  const read = await reviews.teacherPage({ week: '2026-01-07' as Day })
  if (!read.ok) throw new Error(read.reason)
  const [own, other] = [
    read.value.pieces.find((each) => each.piece === piece),
    read.value.pieces.find((each) => each.piece !== piece),
  ]
  expect(own?.hard.bars.map(({ barIndex, times, state }) => [barIndex, times, state])).toEqual([
    [0, 2, 'practised'],
  ])
  expect(own?.hard.chunks).toEqual([])
  expect([other?.score, other?.hard.bars]).toEqual([undefined, []])
})

test('a piece is told of over all its days, and where it is hard over its last four weeks', async () => {
  const { reviews, piece } = await open()
  const read = await reviews.teacherPage({ piece })
  if (!read.ok) throw new Error(read.reason)
  expect(read.value).toMatchObject({
    span: { from: '2026-01-01', to: '2026-01-06' },
    figures: { tally: { clean: 1, flawed: 3, brokenOff: 0 } },
    days: 2,
    pieces: [{ hard: { bars: [{ times: 3 }] } }],
  })
})

test('of a piece that was never played there is nothing to tell', async () => {
  const { reviews } = await open()
  const read = await reviews.teacherPage({ piece: pieceId('p-never') })
  expect(read.ok && [read.value.span, read.value.pieces]).toEqual([undefined, []])
})
