import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

type Rgb = readonly [number, number, number]

const css = readFileSync(new URL('../../src/views/tokens.css', import.meta.url), 'utf8')

/** The two values of a colour token: by day, in the evening. */
const token = (name: string): readonly [string, string] => {
  const found = new RegExp(`--${name}: light-dark\\((#[0-9a-f]{6}), (#[0-9a-f]{6})\\)`).exec(css)
  if (!found?.[1] || !found[2]) throw new Error(`no colour ${name}`)
  return [found[1], found[2]]
}

/** Relative luminance and contrast: WCAG 2.2, definitions. sRGB to linear: IEC 61966-2-1. */
const linear = (hex: string): Rgb => {
  const part = (at: number): number => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
  }
  return [part(1), part(3), part(5)]
}
const luminance = ([r, g, b]: Rgb): number => 0.2126 * r + 0.7152 * g + 0.0722 * b
const contrast = (one: Rgb, other: Rgb): number => {
  const [a, b] = [luminance(one), luminance(other)]
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
}

/**
 * How who lacks one kind of cone sees a colour: Machado, Oliveira & Fernandes, A Physiologically-based
 * Model for Simulation of Color Vision Deficiency, IEEE TVCG 15 (2009), severity 1; from memory.
 */
const seenWithout: Readonly<Record<string, readonly [Rgb, Rgb, Rgb]>> = {
  'long waves': [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  'middle waves': [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  'short waves': [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
}
const seen = (matrix: readonly [Rgb, Rgb, Rgb] | undefined, colour: Rgb): Rgb => {
  if (!matrix) return colour
  const row = ([r, g, b]: Rgb): number =>
    Math.min(1, Math.max(0, r * colour[0] + g * colour[1] + b * colour[2]))
  return [row(matrix[0]), row(matrix[1]), row(matrix[2])]
}

const eyes = ['all', ...Object.keys(seenWithout)]
const themes = ['day', 'evening'] as const

test('the contrast is that of the standard: black on white 21, mid grey on white 4.5', () => {
  expect(contrast(linear('#000000'), linear('#ffffff'))).toBeCloseTo(21, 5)
  // #767676 is known as the lightest grey that passes (WCAG 2.2, 1.4.3; from memory).
  expect(contrast(linear('#767676'), linear('#ffffff'))).toBeGreaterThan(4.5)
  expect(contrast(linear('#777777'), linear('#ffffff'))).toBeLessThan(4.5)
})

test('a matrix leaves grey as it is', () => {
  for (const matrix of Object.values(seenWithout))
    for (const part of seen(matrix, [0.4, 0.4, 0.4])) expect(part).toBeCloseTo(0.4, 3)
})

/** Text 4.5 (WCAG 2.2, 1.4.3); marks and signs 3 (1.4.11). */
const pairs = [
  ['ink', 'paper', 4.5],
  ['ink', 'paper-raised', 4.5],
  ['ink-soft', 'paper', 4.5],
  ['ink-soft', 'paper-raised', 4.5],
  ['pencil-right', 'paper-raised', 4.5],
  ['pencil-flaw', 'paper-raised', 4.5],
  ['pencil-right', 'paper', 4.5],
  ['pencil-flaw', 'paper', 4.5],
  ['pencil-forgiven', 'paper-raised', 3],
  ['rule-strong', 'paper', 3],
  ['focus', 'paper', 3],
  ['wood-edge', 'tray', 3],
] as const

test.each(pairs)(
  '%s on %s stands out %d to 1, whatever cones the eye has',
  (mark, ground, least) => {
    for (const eye of eyes)
      for (const [at, theme] of themes.entries()) {
        const matrix = seenWithout[eye]
        const [one, other] = [mark, ground].map((name) =>
          seen(matrix, linear(token(name)[at] ?? '')),
        ) as [Rgb, Rgb]
        expect(contrast(one, other), `${eye} cones, ${theme}`).toBeGreaterThanOrEqual(least)
      }
  },
)
