import { expect, test } from 'vitest'
import { tempo } from '@/music/units'
import { planHearing } from '@/sound/heardNotes'
import { writeChunk } from '../support/chunks'

const show = (text: string, quarters: number): string =>
  planHearing(writeChunk(text), tempo(quarters))
    .map((note) => `${note.key}@${note.at}+${Math.round(note.length * 1000) / 1000}`)
    .join(' ')

test.each([
  ['C4 D4 E4:2', 60, '60@0+1 62@1+1 64@2+2'],
  ['C4 D4 E4:2', 120, '60@0+0.5 62@0.5+0.5 64@1+1'],
  ['C4+E4+G4:1/2 C5:1/2', 60, '60@0+0.5 64@0+0.5 67@0+0.5 72@0.5+0.5'],
])('%s at %d is heard as %s', (text, quarters, notes) => {
  expect(show(text, quarters)).toBe(notes)
})

test('a key that is struck again is let go a moment before', () => {
  expect(show('C4 C4 D4', 60)).toBe('60@0+0.97 60@1+1 62@2+1')
  expect(show('C4:1/32 C4', 60)).toBe('60@0+0.016 60@0.03125+1')
})

test('the top note of a chord is louder than the others', () => {
  const [low = 0, middle = 0, top = 0] = planHearing(writeChunk('C4+E4+G4'), tempo(60)).map(
    (note) => note.velocity,
  )
  expect(low).toBe(middle)
  expect(top).toBeGreaterThan(middle)
})
