import { afterEach, expect, test } from 'vitest'
import { german } from '@/german/german'
import type { Chunk } from '@/music/chunk'
import type { Signature } from '@/music/spelling'
import { speak } from '@/text/text'
import { notesInWords } from '@/views/notesInWords'
import { writeChunk } from '../support/chunks'

afterEach(() => speak('en'))

const c: Signature = { fifths: 0, mode: 'major' }
const flats: Signature = { fifths: -3, mode: 'major' }

/** The notes below C4 in the left hand. */
const bothHands = (text: string): Chunk => {
  const chunk = writeChunk(text)
  const parted = chunk.onsets.map((onset) => {
    const [first, ...rest] = onset.notes.map((note) => ({
      ...note,
      hand: note.key < 60 ? ('left' as const) : ('right' as const),
    }))
    return first ? { ...onset, notes: [first, ...rest] as const } : onset
  })
  return { ...chunk, hand: 'both', onsets: parted }
}

test.each([
  ['C5:1/2 D5:1/2 E5:1/2 F5:1/2 G5+B5:1', c, 'Eighths: C5, D5, E5, F5. Quarter: G5 with B5.'],
  ['Eb4:3/2 D4:1/2 C4:2', flats, 'Dotted quarter: E♭4. Eighth: D4. Half: C4.'],
  ['C4:1/3 D4:1/3 E4:1/3', c, 'Triplet eighths: C4, D4, E4.'],
  ['C4:1/8 D4:1/8', c, 'Thirty-seconds: C4, D4.'],
  ['C4:5/4', c, '1.25 quarters: C4.'],
])('%s', (text, signature, words) => {
  expect(notesInWords(writeChunk(text), signature)).toBe(words)
})

test('with both hands each note is given its hand', () => {
  expect(notesInWords(bothHands('C3+E3+C5 D5 C3'), c)).toBe(
    'Quarters: right C5, left C3 with E3; right D5; left C3.',
  )
})

test.each([
  ['C5:1/2 D5:1/2 E5:1/2 F5:1/2 G5+B5:1', c, 'Achtel: C5, D5, E5, F5. Viertel: G5 mit H5.'],
  ['Eb4:3/2 D4:1/2 C4:2', flats, 'Punktierte Viertel: Es4. Achtel: D4. Halbe: C4.'],
  ['C4:1/3 D4:1/3 E4:1/3', c, 'Triolenachtel: C4, D4, E4.'],
  ['C4:5/4 D4:5/4', c, 'Je 1,25 Viertel: C4, D4.'],
])('in German: %s', (text, signature, words) => {
  speak('de', german)
  expect(notesInWords(writeChunk(text), signature)).toBe(words)
})

test('in German each note is given its hand', () => {
  speak('de', german)
  expect(notesInWords(bothHands('C3+E3+C5 D5 C3'), c)).toBe(
    'Viertel: rechts C5, links C3 mit E3; rechts D5; links C3.',
  )
})
