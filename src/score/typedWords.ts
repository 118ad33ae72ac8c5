import { parseKey } from '@/music/pitch'
import { failed, ok, type Result } from '@/music/result'
import {
  keyNames,
  quarterParts,
  type TypedFlaw,
  type TypedMusic,
  type TypedPitch,
} from './typedMusic'

/** The words of typed music, one by one: each gives its meaning or what is wrong with it. */
type Read<T> = Result<T, TypedFlaw>

/** A0 and C8 are the ends of the keyboard. */
const lowest = 21
const highest = 108

export const readPitch = (word: string): Read<TypedPitch> => {
  const [, letter, sign, octave] = /^([A-Ga-g])(##|x|#|♯|bb|b|♭|)(-?\d{1,2})$/.exec(word) ?? []
  if (letter === undefined) return failed({ kind: 'noPitch', word: short(word) })
  const name = `${letter.toUpperCase()}${signs[sign ?? ''] ?? sign}${octave}`
  const key = parseKey(name)
  return key === undefined || key < lowest || key > highest
    ? failed({ kind: 'beyondPiano', word })
    : ok({ name, key })
}

const signs: Readonly<Record<string, string>> = { x: '##', '♯': '#', '♭': 'b' }

/** Longer than any fragment needs, and short enough to be a slip of the finger, in quarters. */
const longest = 256

/** '1/2', '1.5', '3' -> parts of a quarter. */
export const readLength = (word: string): Read<number> => {
  const [, above, below] = /^(\d{1,4}(?:\.\d{1,4})?|\.\d{1,4})(?:\/(\d{1,4}))?$/.exec(word) ?? []
  const quarters = Number(above) / Number(below ?? 1)
  if (above === undefined || !(quarters > 0) || quarters > longest)
    return failed({ kind: 'noLength', word: short(word) })
  const parts = quarters * quarterParts
  const whole = Math.round(parts)
  return Math.abs(parts - whole) > 1e-6 || whole === 0
    ? failed({ kind: 'oddLength', word })
    : ok(whole)
}

export const readTime = (word: string): Read<TypedMusic['time']> => {
  const [, beats, beatType] = /^(\d{1,2})\/(1|2|4|8|16|32)$/.exec(word) ?? []
  return beats === undefined || Number(beats) === 0 || Number(beats) > 32
    ? failed({ kind: 'noTime', word: short(word) })
    : ok({ beats: Number(beats), beatType: Number(beatType) })
}

/** 'G', 'Em'; the mode may stand as a word of its own after it. */
export const readKey = (
  word: string,
  mode: string | undefined,
): Read<Pick<TypedMusic, 'fifths' | 'mode'>> => {
  const [, letter, sign = '', minor] = /^([A-Ga-g])(#|♯|b|♭|)(m?)$/.exec(word) ?? []
  const name = `${letter?.toUpperCase()}${signs[sign] ?? sign}`
  const of = minor === 'm' || mode === 'minor' ? 'minor' : 'major'
  const place = keyNames[of].indexOf(name)
  return place < 0
    ? failed({ kind: 'noKey', word: short(word) })
    : ok({ fifths: place - 7, mode: of })
}

/** As slow and fast as a goal tempo can be chosen (music/beat.ts). */
export const readTempo = (word: string): Read<number> => {
  const beats = /^\d{1,3}(\.\d{1,2})?$/.test(word) ? Number(word) : NaN
  return beats >= 10 && beats <= 400 ? ok(beats) : failed({ kind: 'noTempo', word: short(word) })
}

/** What is quoted in a sentence must not fill the page. */
export const short = (word: string): string => (word.length > 24 ? `${word.slice(0, 24)}…` : word)
