import { describe, expect, test } from 'vitest'
import { parseKey } from '@/music/pitch'
import { key } from '@/music/units'
import { alterInSignature, nameOf, semitonesOf, spell, type Signature } from '@/music/spelling'

const signs = ['ff', 'f', '', '#', 'x'] as const

const spelled = (k: number, signature: Signature, next?: number): string => {
  const { step, alter } = spell(key(k), signature, next === undefined ? {} : { next: key(next) })
  const { letter, octave } = nameOf(step)
  return `${letter.toUpperCase()}${signs[alter + 2]}${octave}`
}
const major = (fifths: number): Signature => ({ fifths, mode: 'major' })
const minor = (fifths: number): Signature => ({ fifths, mode: 'minor' })

const octave = (signature: Signature, next?: 1 | -1): string =>
  Array.from({ length: 12 }, (_, i) => spelled(60 + i, signature, next && 60 + i + next)).join(' ')

describe('spelling', () => {
  test('every key of every signature sounds as it is spelled', () => {
    for (let fifths = -7; fifths <= 7; fifths++)
      for (const mode of ['major', 'minor'] as const)
        for (let k = 0; k <= 127; k++) {
          const { step, alter } = spell(key(k), { fifths, mode })
          expect(semitonesOf(step) + alter).toBe(k)
        }
  })

  // Scales: common practice, no source.
  test.each([
    [major(0), 'C4 C#4 D4 Ef4 E4 F4 F#4 G4 Af4 A4 Bf4 B4'],
    [major(2), 'C4 C#4 D4 D#4 E4 F4 F#4 G4 G#4 A4 Bf4 B4'],
    [major(-4), 'C4 Df4 D4 Ef4 E4 F4 Gf4 G4 Af4 A4 Bf4 B4'],
    [minor(0), 'C4 C#4 D4 D#4 E4 F4 F#4 G4 G#4 A4 Bf4 B4'],
    [minor(-3), 'C4 Df4 D4 Ef4 E4 F4 F#4 G4 Af4 A4 Bf4 B4'],
    [minor(4), 'B#3 C#4 D4 D#4 E4 Fx4 F#4 Fx4 G#4 A4 A#4 B4'],
  ])('in %o the keys from middle C are %s', (signature, expected) => {
    const names = expected.split(' ')
    const found = octave(signature).split(' ')
    // F-double-sharp and E-sharp share keys with G and F; only diatonic and raised steps are compared.
    for (const [i, name] of names.entries()) if (!name.includes('x')) expect(found[i]).toBe(name)
  })

  test('a chromatic line rises in sharps and falls in flats, but F# and Bb stay in C major', () => {
    expect(spelled(61, major(0), 62)).toBe('C#4')
    expect(spelled(61, major(0), 60)).toBe('Df4')
    expect(spelled(63, major(0), 64)).toBe('D#4')
    expect(spelled(68, major(0), 69)).toBe('G#4')
    expect(spelled(66, major(0), 65)).toBe('F#4')
    expect(spelled(70, major(0), 71)).toBe('Bf4')
  })

  test('the leading tone of a minor key is the raised seventh: G# in A minor, B# in C# minor', () => {
    expect(spelled(68, minor(0))).toBe('G#4')
    expect(spelled(60, minor(4))).toBe('B#3')
    expect(spelled(66, minor(-2))).toBe('F#4')
  })

  test('outside the scale the bar decides: G# over E and B, Ab over F and C', () => {
    const near = (k: number, centre: number): string => {
      const { step, alter } = spell(key(k), major(0), { centre })
      return `${nameOf(step).letter}${signs[alter + 2]}`
    }
    expect(near(68, (4 + 5) / 2)).toBe('g#')
    expect(near(68, (-1 + 0) / 2)).toBe('af')
    expect(near(61, (3 + 4) / 2)).toBe('c#')
    expect(near(61, -1)).toBe('df')
  })

  // Order of sharps F C G D A E B, of flats B E A D G C F: common practice, no source.
  test('a signature alters its letters in the order of sharps and flats', () => {
    const altered = (fifths: number): string =>
      Array.from({ length: 7 }, (_, i) =>
        alterInSignature(28 + i, fifths) === 0 ? '' : 'cdefgab'[i],
      ).join('')
    expect([1, 2, 3, 6, 7].map(altered)).toEqual(['f', 'cf', 'cfg', 'cdefga', 'cdefgab'])
    expect([-1, -2, -3, -6, -7].map(altered)).toEqual(['b', 'eb', 'eab', 'cdegab', 'cdefgab'])
  })

  // Cross-check with the music library's parser of scientific pitch names.
  test('names of steps are scientific pitch names', () => {
    for (let step = 0; step < 60; step++) {
      const { letter, octave: o } = nameOf(step)
      expect(parseKey(`${letter.toUpperCase()}${o}`)).toBe(semitonesOf(step))
    }
  })
})
