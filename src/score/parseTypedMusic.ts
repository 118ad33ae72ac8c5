import type { Hand } from '@/music/music'
import { failed, ok, type Result } from '@/music/result'
import { barParts, formatLength, quarterParts } from './typedMusic'
import type { TypedEvent, TypedFlaw, TypedMusic, TypedPitch, TypedProblem } from './typedMusic'
import { cutLine, type Placed, type TypedWord } from './typedLine'
import { readKey, readLength, readPitch, readTempo, readTime, short } from './typedWords'

/** A fragment and not a symphony: more than this is a slip, and would make the page wait. */
const longestText = 60_000

/** What has been read so far. */
interface Reading {
  settings: Partial<Pick<TypedMusic, 'time' | 'fifths' | 'mode' | 'tempo' | 'pickup'>>
  /** The settings that stand, and where the pickup does. */
  readonly set: Set<string>
  pickupAt: TypedWord | undefined
  hand: Hand
  readonly right: HandReading
  readonly left: HandReading
}

interface HandReading {
  readonly events: TypedEvent[]
  /** How far the hand has come, in parts of a quarter. */
  at: number
  /** Where its last bar line stands. */
  barAt: number
  /** The length that holds until the next. */
  length: number
}

/** The music of a text, or what is wrong with the first place that cannot be read. The notation: typedMusic.ts. */
export const parseTypedMusic = (text: string): Result<TypedMusic, TypedProblem> => {
  if (text.length > longestText) return failed(atStart({ kind: 'tooLong', most: longestText }))
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/)
  const header = /^passagework (\d+)(?: (.*))?$/.exec(lines[0] ?? '')
  if (header && header[1] !== '1') return failed(atStart({ kind: 'newer' }, header[0].length))
  const reading = begin()
  for (const [i, line] of lines.entries()) {
    if (i === 0 && header) continue
    const problem = readLine(reading, line, i + 1)
    if (problem) return failed(problem)
  }
  return finish(reading, (header?.[2] ?? '').trim())
}

const begin = (): Reading => ({
  settings: {},
  set: new Set(),
  pickupAt: undefined,
  hand: 'right',
  right: { events: [], at: 0, barAt: 0, length: quarterParts },
  left: { events: [], at: 0, barAt: 0, length: quarterParts },
})

const finish = (reading: Reading, title: string): Result<TypedMusic, TypedProblem> => {
  const { right, left } = reading
  if (![...right.events, ...left.events].some(({ pitches }) => pitches.length > 0))
    return failed(atStart({ kind: 'noNote' }))
  const { time, pickup, tempo } = settingsOf(reading)
  const { fifths = 0, mode = 'major' } = reading.settings
  return ok({
    title,
    time,
    fifths,
    mode,
    tempo,
    pickup,
    right: right.events,
    left: left.events,
  })
}

/** 4/4 and 120 are what a MIDI file without marks means (Standard MIDI Files 1.0). */
const settingsOf = ({ settings }: Reading): Pick<TypedMusic, 'time' | 'tempo' | 'pickup'> => ({
  time: settings.time ?? { beats: 4, beatType: 4 },
  tempo: settings.tempo ?? 120,
  pickup: settings.pickup ?? 0,
})

const atStart = (flaw: TypedFlaw, width = 1): TypedProblem => ({ line: 1, column: 1, width, flaw })

const at = (word: Placed, flaw: TypedFlaw): TypedProblem => ({
  line: word.line,
  column: word.column,
  width: Math.max(1, word.text.length),
  flaw,
})

const readLine = (reading: Reading, line: string, number: number): TypedProblem | undefined => {
  const { hand, words, open } = cutLine(line, number)
  if (open) return at(open, { kind: 'openChord' })
  const [first] = words
  if (!hand && first && settingWords.has(first.text)) return readSettings(reading, words)
  if (hand) reading.hand = hand
  if (first) {
    const late = checkPickup(reading)
    if (late) return late
  }
  for (const word of words) {
    const problem = readWord(reading, word)
    if (problem) return problem
  }
  return undefined
}

type Settings = Reading['settings']
type Read<T> = Result<T, TypedFlaw>

/** What can be set: how it is read, and an example. */
const settingWords = new Map<
  string,
  {
    readonly read: (value: string, mode: string | undefined) => Read<Settings>
    readonly example: string
  }
>([
  ['time', { read: (value) => as(readTime(value), (time) => ({ time })), example: 'time 3/4' }],
  ['key', { read: readKey, example: 'key G' }],
  ['tempo', { read: (value) => as(readTempo(value), (tempo) => ({ tempo })), example: 'tempo 80' }],
  [
    'pickup',
    { read: (value) => as(readLength(value), (pickup) => ({ pickup })), example: 'pickup 1' },
  ],
])

const as = <V>(read: Read<V>, make: (value: V) => Settings): Read<Settings> =>
  read.ok ? ok(make(read.value)) : read

const readSettings = (reading: Reading, words: readonly TypedWord[]): TypedProblem | undefined => {
  for (let i = 0; i < words.length; i += 2) {
    const [name, value, mode] = words.slice(i, i + 3)
    const setting = settingWords.get(name?.text ?? '')
    if (!name) return undefined
    if (!setting) return at(name, { kind: 'noSetting', word: short(name.text) })
    if (reading.right.at + reading.left.at > 0)
      return at(name, { kind: 'lateSetting', word: name.text })
    if (reading.set.has(name.text)) return at(name, { kind: 'doubleSetting', word: name.text })
    if (!value || settingWords.has(value.text))
      return at(name, { kind: 'openSetting', word: name.text, example: setting.example })
    const read = setting.read(value.text, mode?.text)
    if (!read.ok) return at(value, read.reason)
    reading.settings = { ...reading.settings, ...read.value }
    reading.set.add(name.text)
    if (name.text === 'pickup') reading.pickupAt = value
    if (name.text === 'key' && (mode?.text === 'major' || mode?.text === 'minor')) i++
  }
  return undefined
}

/** Once the time is sure: a pickup is shorter than a bar, and made of note values. */
const checkPickup = (reading: Reading): TypedProblem | undefined => {
  const { time, pickup } = settingsOf(reading)
  if (!reading.pickupAt) return undefined
  if (pickup >= barParts(time))
    return at(reading.pickupAt, { kind: 'longPickup', time: formatTime(time) })
  return (pickup * 8) % quarterParts === 0 ? undefined : at(reading.pickupAt, { kind: 'oddPickup' })
}

const readWord = (reading: Reading, word: TypedWord): TypedProblem | undefined => {
  const now = reading[reading.hand]
  if (word.kind === 'bar') return closeBar(reading, now, word)
  if (word.length) {
    const length = readLength(word.length.text)
    if (!length.ok) return at(word.length, length.reason)
    now.length = length.value
  }
  if (word.kind === 'word' && word.text === '-') return holdOn(now, word)
  const pitches: TypedPitch[] = []
  for (const inner of word.kind === 'chord' ? word.inner : [word]) {
    if (word.kind === 'word' && /^[rR]$/.test(word.text)) break
    const pitch = readPitch(inner.text)
    if (inner.text === '') return at(inner, { kind: 'loneLength' })
    if (!pitch.ok) return at(inner, pitch.reason)
    const { key, name } = pitch.value
    const twin = pitches.find((each) => each.key === key)
    if (twin) return at(inner, { kind: 'sameKey', one: name, other: twin.name })
    pitches.push(pitch.value)
  }
  if (word.kind === 'chord' && pitches.length === 0) return at(word, { kind: 'emptyChord' })
  now.events.push({ pitches: pitches.toSorted((a, b) => a.key - b.key), length: now.length })
  now.at += now.length
  return undefined
}

const holdOn = (now: HandReading, word: TypedWord): TypedProblem | undefined => {
  const before = now.events.pop()
  if (!before) return at(word, { kind: 'nothingHeld' })
  now.events.push({ ...before, length: before.length + now.length })
  now.at += now.length
  return undefined
}

/** A bar line stands where a bar ends, or at the very beginning. */
const closeBar = (
  reading: Reading,
  now: HandReading,
  word: TypedWord,
): TypedProblem | undefined => {
  const { time, pickup } = settingsOf(reading)
  const full = barParts(time)
  const isFirst = now.barAt === 0 && pickup > 0
  if (now.at === 0 || now.at === pickup || (now.at > pickup && (now.at - pickup) % full === 0)) {
    now.barAt = now.at
    return undefined
  }
  const { hand } = reading
  const has = formatQuarters(now.at - now.barAt)
  return at(
    word,
    isFirst
      ? { kind: 'pickupBar', hand, has, wanted: formatQuarters(pickup) }
      : { kind: 'bar', hand, has, time: formatTime(time), wanted: formatQuarters(full) },
  )
}

const formatTime = ({ beats, beatType }: TypedMusic['time']): string => `${beats}/${beatType}`

/** 8400 parts -> '2 1/2' quarters. */
const formatQuarters = (parts: number): string => {
  const whole = Math.floor(parts / quarterParts)
  const rest = parts % quarterParts
  if (whole === 0) return formatLength(rest)
  return rest === 0 ? `${whole}` : `${whole} ${formatLength(rest)}`
}
