import type { Reason } from './reasons'

type Of<K extends Reason['kind']> = Extract<Reason, { readonly kind: K }>

/** The words that a reason may hold; a record of them, so that none can be forgotten. */
const intervals: Readonly<Record<Of<'leap'>['widest'], true>> = {
  fifth: true,
  sixth: true,
  seventh: true,
  octave: true,
  ninth: true,
  tenth: true,
  eleventh: true,
  twelfth: true,
  thirteenth: true,
  fourteenth: true,
  twoOctaves: true,
  beyond: true,
}
const doubleNotes: Readonly<Record<Extract<Of<'chords'>['struck'], string>, true>> = {
  thirds: true,
  sixths: true,
  octaves: true,
  mixed: true,
}
const bare: Readonly<
  Record<Exclude<Reason['kind'], 'speed' | 'leap' | 'stretch' | 'chords' | 'rhythm'>, true>
> = {
  repeats: true,
  trill: true,
  topography: true,
  fingering: true,
  thumb: true,
  accidentals: true,
  crossing: true,
}

/** A reason as it was stored. */
export const parseReason = (stored: unknown): Reason | undefined => {
  if (typeof stored !== 'object' || stored === null) return undefined
  const fields: Readonly<Record<string, unknown>> = { ...stored }
  const { kind, onsetsASecond, widest, struck } = fields
  if (isOneOf(bare, kind)) return { kind }
  if (kind === 'speed') return isFigure(onsetsASecond) ? { kind, onsetsASecond } : undefined
  if (kind === 'leap' || kind === 'stretch')
    return isOneOf(intervals, widest) ? { kind, widest } : undefined
  if (kind === 'chords')
    return isFigure(struck) || isOneOf(doubleNotes, struck) ? { kind, struck } : undefined
  if (kind !== 'rhythm') return undefined
  const [right, left] = Array.isArray(fields['against']) ? (fields['against'] as unknown[]) : []
  return { kind, ...(isFigure(right) && isFigure(left) ? { against: [right, left] } : {}) }
}

const isOneOf = <K extends string>(words: Readonly<Record<K, true>>, word: unknown): word is K =>
  typeof word === 'string' && Object.hasOwn(words, word)

const isFigure = (value: unknown): value is number =>
  typeof value === 'number' && Number.isFinite(value)
