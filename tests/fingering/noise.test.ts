import fc from 'fast-check'
import { expect, test } from 'vitest'
import { handSpans } from '@/fingering/spans'
import { hands, type Note } from '@/music/music'
import { key, noteId, tick } from '@/music/units'
import { fingerNotes, toFinger } from './fingers'

/** Whatever a file can hold: overlaps, the same key twice, graces anywhere, digits that cannot be. */
const anyNote = fc.record({
  k: fc.integer({ min: 0, max: 127 }),
  place: fc.nat(20),
  length: fc.integer({ min: 1, max: 12 }),
  grace: fc.boolean(),
  rank: fc.nat(2),
  finger: fc.option(fc.integer({ min: 1, max: 5 })),
  hand: fc.constantFrom(...hands),
})
const anyNotes = fc.array(anyNote, { maxLength: 30 }).map((all) =>
  all.map((each, i): Note => ({
    id: noteId(`n${i}`),
    key: key(each.k),
    start: tick(each.place * 240),
    length: tick(each.length * 120),
    hand: each.hand,
    handFrom: 'file',
    barIndex: 0,
    ...(each.grace && each.place % 3 === 0 ? { grace: true as const, graceRank: each.rank } : {}),
    ...(each.finger === null ? {} : { fingers: [toFinger(each.finger)] }),
  })),
)

test('every note of the hand gets one finger, the given one where one is given', () => {
  fc.assert(
    fc.property(
      anyNotes,
      fc.constantFrom(...handSpans),
      fc.constantFrom(...hands),
      (notes, span, hand) => {
        const mine = notes.filter((note) => note.hand === hand)
        const found = fingerNotes(notes, { hand, span }).best?.notes ?? []
        expect(found.map(({ id }) => id).toSorted()).toEqual(mine.map(({ id }) => id).toSorted())
        const fingers = new Map(found.map(({ id, finger }) => [id, finger]))
        for (const note of mine) {
          const isShared = mine.some(
            (other) => other !== note && other.start === note.start && other.key === note.key,
          )
          if (note.fingers && !isShared) expect(fingers.get(note.id)).toBe(note.fingers[0])
        }
      },
    ),
  )
})
