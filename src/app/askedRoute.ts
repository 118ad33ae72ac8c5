import { parseDay } from '@/journal/day'
import { recordedFlawKinds, recordedOverrules, recordedVerdicts } from '@/journal/words'
import { chunkId, key, noteId, pieceId, tempo, type Key, type Tempo } from '@/music/units'
import type { Asked } from '@/review/asked'
import { chunkStateNames } from '@/review/chunkStates'

/** { piece: 'p1', verdict: 'flawed' } -> 'piece=p1/verdict=flawed', as it stands in the address. */
export const formatAsked = (asked: Asked): string =>
  Object.entries(asked)
    .map(([name, value]) => `${name}=${encodeURIComponent(String(value))}`)
    .join('/')

/** The inverse; what says nothing known is left out. */
export const parseAsked = (words: readonly string[]): Asked => {
  const given = new Map(words.map(wordOf))
  const text = (name: keyof Asked): string | undefined => given.get(name) || undefined
  const of = <T extends string>(name: keyof Asked, known: readonly T[]): T | undefined =>
    known.find((each) => each === text(name))
  const [piece, chunk, note, until] = [text('piece'), text('chunk'), text('note'), text('until')]
  return present({
    session: flag(text('session')),
    piece: piece === undefined ? undefined : pieceId(piece),
    chunk: chunk === undefined ? undefined : chunkId(chunk),
    from: parseDay(text('from') ?? ''),
    to: parseDay(text('to') ?? ''),
    verdict: of('verdict', recordedVerdicts),
    ended: flag(text('ended')),
    rung: tempoOf(text('rung')),
    flaw: of('flaw', recordedFlawKinds),
    note: note === undefined ? undefined : noteId(note),
    until: until === undefined ? undefined : noteId(until),
    bar: barOf(text('bar')),
    written: keyOf(text('written')),
    played: keyOf(text('played')),
    cold: flag(text('cold')),
    state: of('state', chunkStateNames),
    streak: flag(text('streak')),
    overruled: of('overruled', recordedOverrules),
  })
}

/** An address may be cut or changed by hand: a word that cannot be read says nothing. */
const wordOf = (word: string): readonly [string, string] => {
  const at = word.indexOf('=')
  try {
    return [word.slice(0, at), decodeURIComponent(word.slice(at + 1))]
  } catch {
    return ['', '']
  }
}

const flag = (text: string | undefined): true | undefined => (text === 'true' ? true : undefined)

const barOf = (text: string | undefined): number | undefined =>
  text !== undefined && /^\d{1,5}$/.test(text) ? Number(text) : undefined

/** A rung of per cents is no round number. */
const tempoOf = (text: string | undefined): Tempo | undefined =>
  text !== undefined && Number(text) > 0 && Number.isFinite(Number(text))
    ? tempo(Number(text))
    : undefined

const keyOf = (text: string | undefined): Key | undefined =>
  text !== undefined && /^\d{1,3}$/.test(text) && Number(text) <= 127
    ? key(Number(text))
    : undefined

type Possible = { readonly [Name in keyof Asked]: Asked[Name] | undefined }

const present = (possible: Possible): Asked =>
  Object.fromEntries(Object.entries(possible).filter(([, value]) => value !== undefined))
