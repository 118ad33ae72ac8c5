import { parseKey } from '@/music/pitch'
import { keyNames, quarterParts, type TypedMusic, type TypedPitch } from './typedMusic'

/** The words of typed music, one by one: each gives its meaning or, as a text, what is wrong with it. */

/** A0 and C8 are the ends of the keyboard. */
const lowest = 21
const highest = 108

export const readPitch = (word: string): TypedPitch | string => {
  const [, letter, sign, octave] = /^([A-Ga-g])(##|x|#|♯|bb|b|♭|)(-?\d{1,2})$/.exec(word) ?? []
  if (letter === undefined)
    return `“${short(word)}” is no pitch: write a letter from A to G, # or b where needed, and the octave, as C4 or F#5.`
  const name = `${letter.toUpperCase()}${signs[sign ?? ''] ?? sign}${octave}`
  const key = parseKey(name)
  return key === undefined || key < lowest || key > highest
    ? `“${word}” is beyond the piano, which goes from A0 to C8.`
    : { name, key }
}

const signs: Readonly<Record<string, string>> = { x: '##', '♯': '#', '♭': 'b' }

/** Longer than any fragment needs, and short enough to be a slip of the finger, in quarters. */
const longest = 256

/** '1/2', '1.5', '3' -> parts of a quarter. */
export const readLength = (word: string): number | string => {
  const [, above, below] = /^(\d{1,4}(?:\.\d{1,4})?|\.\d{1,4})(?:\/(\d{1,4}))?$/.exec(word) ?? []
  const quarters = Number(above) / Number(below ?? 1)
  if (above === undefined || !(quarters > 0) || quarters > longest)
    return `“${short(word)}” is no length: write quarters as a fraction or a decimal, as 1, 1/2 or 1.5.`
  const parts = quarters * quarterParts
  const whole = Math.round(parts)
  return Math.abs(parts - whole) > 1e-6 || whole === 0
    ? `${word} of a quarter cannot be counted here: a triplet is 1/3, and a quarter divides into 2, 3, 4, 5, 6, 7, 8 and on to 32 where these divide it.`
    : whole
}

export const readTime = (word: string): TypedMusic['time'] | string => {
  const [, beats, beatType] = /^(\d{1,2})\/(1|2|4|8|16|32)$/.exec(word) ?? []
  return beats === undefined || Number(beats) === 0 || Number(beats) > 32
    ? `“${short(word)}” is no time signature: write it as 3/4 or 6/8.`
    : { beats: Number(beats), beatType: Number(beatType) }
}

/** 'G', 'Em'; the mode may stand as a word of its own after it. */
export const readKey = (
  word: string,
  mode: string | undefined,
): Pick<TypedMusic, 'fifths' | 'mode'> | string => {
  const [, letter, sign = '', minor] = /^([A-Ga-g])(#|♯|b|♭|)(m?)$/.exec(word) ?? []
  const name = `${letter?.toUpperCase()}${signs[sign] ?? sign}`
  const of = minor === 'm' || mode === 'minor' ? 'minor' : 'major'
  const place = keyNames[of].indexOf(name)
  return place < 0
    ? `“${short(word)}” is no key of at most seven sharps or flats: write it as G, Bb or E minor.`
    : { fifths: place - 7, mode: of }
}

/** As slow and fast as a goal tempo can be chosen (music/beat.ts). */
export const readTempo = (word: string): number | string => {
  const beats = /^\d{1,3}(\.\d{1,2})?$/.test(word) ? Number(word) : NaN
  return beats >= 10 && beats <= 400
    ? beats
    : `“${short(word)}” is no tempo: write the beats a minute, from 10 to 400.`
}

/** What is quoted in a sentence must not fill the page. */
export const short = (word: string): string => (word.length > 24 ? `${word.slice(0, 24)}…` : word)
