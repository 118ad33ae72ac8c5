import { afterEach, expect, test } from 'vitest'
import fc from 'fast-check'
import { german } from '@/german/german'
import { parseKey } from '@/music/pitch'
import { nameKey, semitonesOf } from '@/music/spelling'
import { key } from '@/music/units'
import { nameNote, nameNotes, noteNamings, type NoteNaming } from '@/text/noteNames'
import { speak } from '@/text/text'

afterEach(() => {
  speak('en')
  nameNotes('auto')
})

/** The seven notes of octave 4 with one accidental. */
const octave = (naming: NoteNaming, alter: number): string => {
  nameNotes(naming)
  return [28, 29, 30, 31, 32, 33, 34]
    .map((step) => nameNote({ step, alter }).replace(/4$/, ''))
    .join(' ')
}

// German: from memory.
test.each([
  [-2, 'Ceses Deses Eses Feses Geses Asas Heses'],
  [-1, 'Ces Des Es Fes Ges As B'],
  [0, 'C D E F G A H'],
  [1, 'Cis Dis Eis Fis Gis Ais His'],
  [2, 'Cisis Disis Eisis Fisis Gisis Aisis Hisis'],
])('German names, %i semitones from the natural', (alter, names) => {
  expect(octave('german', alter)).toBe(names)
})

test('syllables and letters carry the signs', () => {
  expect(octave('syllables', 0)).toBe('do re mi fa sol la si')
  expect(octave('syllables', -1)).toBe('do♭ re♭ mi♭ fa♭ sol♭ la♭ si♭')
  expect(octave('letters', 2)).toBe('C♯♯ D♯♯ E♯♯ F♯♯ G♯♯ A♯♯ B♯♯')
})

const note = fc.record({
  step: fc.integer({ min: -7, max: 80 }),
  alter: fc.integer({ min: -2, max: 2 }),
})

test.each(noteNamings)('two notes never have one name: %s', (naming) => {
  nameNotes(naming)
  fc.assert(
    fc.property(note, note, (one, other) => {
      const isSame = one.step === other.step && one.alter === other.alter
      expect(nameNote(one) === nameNote(other)).toBe(isSame)
    }),
  )
  const all = Array.from({ length: 7 * 5 }, (_, i) =>
    nameNote({ step: 28 + (i % 7), alter: Math.floor(i / 7) - 2 }),
  )
  expect(new Set(all).size).toBe(all.length)
})

// The music library's parser of scientific pitch names.
test('letters are scientific pitch names', () => {
  nameNotes('letters')
  fc.assert(
    fc.property(note, ({ step, alter }) => {
      const sounding = semitonesOf(step) + alter
      fc.pre(sounding >= 0 && sounding <= 127)
      const typed = nameNote({ step, alter }).replaceAll('♯', '#').replaceAll('♭', 'b')
      expect(parseKey(typed)).toBe(sounding)
    }),
  )
})

test('where nothing is chosen, notes are named as the language does', () => {
  const named = (): string => [60, 63, 70, 71].map((k) => nameKey(key(k))).join(' ')
  expect(named()).toBe('C4 E♭4 B♭4 B4')
  speak('de', german)
  expect(named()).toBe('C4 Es4 B4 H4')
  nameNotes('syllables')
  expect(named()).toBe('do4 mi♭4 si♭4 si4')
  nameNotes('letters')
  expect(named()).toBe('C4 E♭4 B♭4 B4')
})
