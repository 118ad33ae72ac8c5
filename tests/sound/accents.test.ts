import fc from 'fast-check'
import { expect, test } from 'vitest'
import { clickBar, pulsesPerQuarter } from '@/sound/accents'

const letters = { strong: 'S', medium: 'm', weak: 'w', soft: '.' } as const

/** 'S w m w' at 1 quarter: the accents of a bar, and the length of its beat in quarters. */
const show = (text: string, perBeat = 1): string => {
  const [beats = 0, beatType = 0] = text.split('/').map(Number)
  const { pulses, length } = clickBar({ beats, beatType }, perBeat)
  const second = pulses[perBeat]?.offset ?? length
  return `${pulses.map((pulse) => letters[pulse.accent]).join(' ')} at ${second / pulsesPerQuarter}`
}

// Common practice, no source: where a conductor beats and which beats are heavier.
test.each([
  ['2/4', 'S w at 1'],
  ['3/4', 'S w w at 1'],
  ['4/4', 'S w m w at 1'],
  ['2/2', 'S w at 2'],
  ['3/2', 'S w w at 2'],
  ['3/8', 'S w w at 0.5'],
  ['4/8', 'S w m w at 0.5'],
  ['6/8', 'S w at 1.5'],
  ['9/8', 'S w w at 1.5'],
  ['12/8', 'S w m w at 1.5'],
  ['6/16', 'S w at 0.75'],
  ['6/4', 'S w at 3'],
  ['5/4', 'S w w m w at 1'],
  ['5/8', 'S w w m w at 0.5'],
  ['7/8', 'S w m w m w w at 0.5'],
  ['8/8', 'S w w m w w m w at 0.5'],
  ['1/4', 'S at 1'],
])('%s is %s', (time, accents) => {
  expect(show(time)).toBe(accents)
})

test.each([
  ['3/4', 2, 'S . w . w . at 1'],
  ['6/8', 3, 'S . . w . . at 1.5'],
  ['2/4', 4, 'S . . . w . . . at 1'],
] as const)('%s with %d clicks a beat is %s', (time, perBeat, accents) => {
  expect(show(time, perBeat)).toBe(accents)
})

test('in every time signature the clicks are evenly spaced whole pulses that fill the bar', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 32 }),
      fc.constantFrom(1, 2, 4, 8, 16, 32, 64),
      fc.integer({ min: 1, max: 4 }),
      (beats, beatType, perBeat) => {
        const { pulses, length } = clickBar({ beats, beatType }, perBeat)
        const gap = length / pulses.length
        expect(Number.isInteger(gap)).toBe(true)
        expect(pulses.map((pulse) => pulse.offset)).toEqual(pulses.map((_, i) => i * gap))
        expect(length / pulsesPerQuarter).toBe((beats * 4) / beatType)
        expect(pulses.filter((pulse) => pulse.accent === 'strong')).toHaveLength(1)
        expect(pulses[0]?.accent).toBe('strong')
      },
    ),
  )
})
