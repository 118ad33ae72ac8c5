/**
 * The compact text in which the sample pieces are written, and what it means.
 *
 * First words and their values, then an empty line, then the bars: number | right hand | left hand.
 * In a bar a number is the note value of what follows (4 a quarter, 4. a dotted one, 8t an eighth of
 * a triplet), r a rest, + joins the keys of a chord, and pp to ff set how loud. Bar 0 is a pickup.
 *
 * Example: `3 | mf 8 C5 D5 4 E5+G5 r | 2. C3` is bar 3 of 3/4.
 */
import { hands, type Hand, type KeySignature, type TimeSignature } from '@/music/music'
import { parseKey } from '@/music/pitch'
import { tempo, tick, type Key } from '@/music/units'
import type { MidiContent, NoteToWrite } from '@/score/writeMidiFile'

/** What is drilled first when the sample is opened. */
export interface FirstPassage {
  readonly fromBar: number
  readonly toBar: number
  readonly hand: Hand | 'both'
  /** Quarter notes a minute. */
  readonly goalTempo: number
}

export interface SamplePiece {
  readonly title: string
  /** 1 is the easiest. */
  readonly level: number
  readonly passage: FirstPassage
  readonly content: MidiContent
}

/** Divides by all note values down to the 32nd, by dots and by triplets. */
export const ticksPerQuarter = 480

/** Throws where the text is wrong: it is ours. */
export const parseSample = (text: string): SamplePiece => {
  const [head = '', body = ''] = text.split('\n\n')
  const words = new Map(
    head.split('\n').map((line) => [line.split(/\s+/)[0] ?? '', line.replace(/^\S+\s+/, '')]),
  )
  const value = (word: string): string => words.get(word) ?? fail(`no ${word}`)
  const time = parseTime(value('time'))
  const bars = parseBars(body, time)
  return {
    title: value('title'),
    level: Number(value('level')),
    passage: parsePassage(value('passage')),
    content: {
      title: value('title'),
      ticksPerQuarter,
      times: bars.times,
      keys: [parseSignature(value('key'))],
      tempos: value('tempo')
        .split(', ')
        .map((change) => change.split(': ').map(Number))
        .map(([bar = 1, n = 120]) => ({
          start: tick(bar === 1 ? 0 : (bars.starts.get(bar) ?? fail(`no bar ${bar}`))),
          tempo: tempo(n),
        })),
      tracks: hands.toReversed().map((hand) => ({ name: `${hand} hand`, notes: bars[hand] })),
    },
  }
}

/** Velocities of the dynamic marks (common practice, no source). */
const loudness: Readonly<Record<string, number>> = { pp: 36, p: 48, mp: 60, mf: 72, f: 86, ff: 100 }
/** The first note of a bar is played a little louder (common practice, no source). */
const barAccent = 6

interface Bars {
  readonly left: readonly NoteToWrite[]
  readonly right: readonly NoteToWrite[]
  readonly times: MidiContent['times']
  readonly starts: ReadonlyMap<number, number>
}

const parseBars = (body: string, time: TimeSignature): Bars => {
  const notes = { right: [] as NoteToWrite[], left: [] as NoteToWrite[] }
  const velocity = { right: loudness['mf'] ?? 0, left: loudness['mf'] ?? 0 }
  const starts = new Map<number, number>()
  const full = (time.beats * 4 * ticksPerQuarter) / time.beatType
  const times = [{ start: tick(0), time }]
  let start = 0
  for (const line of body.trim().split('\n')) {
    const [number = '', ...halves] = line.split('|').map((part) => part.trim())
    starts.set(Number(number), start)
    const lengths = (['right', 'left'] as const).map((hand, i) => {
      const half = parseHalf(halves[i] ?? fail(line), start, velocity[hand])
      velocity[hand] = half.velocity
      notes[hand].push(...half.notes)
      return half.length
    })
    const [length = 0, other] = lengths
    if (length !== other) fail(`hands of unequal length in bar ${number}`)
    if (number === '0')
      times.splice(
        0,
        1,
        { start: tick(0), time: shortBar(length, time) },
        { start: tick(length), time },
      )
    else if (length !== full) fail(`bar ${number} is ${length} ticks long, not ${full}`)
    start += length
  }
  return { ...notes, times, starts }
}

const parseHalf = (
  half: string,
  barStart: number,
  loud: number,
): {
  readonly notes: readonly NoteToWrite[]
  readonly length: number
  readonly velocity: number
} => {
  const notes: NoteToWrite[] = []
  let velocity = loud
  let length = 0
  let at = 0
  for (const word of half.split(/\s+/)) {
    const mark = loudness[word]
    if (mark !== undefined) velocity = mark
    else if (/^\d/.test(word)) length = parseLength(word)
    else {
      for (const key of word === 'r' ? [] : word.split('+').map(readKey))
        notes.push({
          start: tick(barStart + at),
          length: tick(length),
          key,
          velocity: velocity + (at === 0 ? barAccent : 0),
        })
      at += length
    }
  }
  return { notes, length: at, velocity }
}

const parseLength = (word: string): number => {
  const [, value = '', kind] = /^(1|2|4|8|16)([.t]?)$/.exec(word) ?? fail(`no note value: ${word}`)
  const plain = (4 * ticksPerQuarter) / Number(value)
  return kind === '.' ? plain * 1.5 : kind === 't' ? (plain * 2) / 3 : plain
}

const readKey = (name: string): Key => parseKey(name) ?? fail(`no key: ${name}`)

/** The pickup as a bar of its own: a quarter before 3/4 is 1/4. */
const shortBar = (length: number, { beatType }: TimeSignature): TimeSignature => ({
  beats: (length * beatType) / (4 * ticksPerQuarter),
  beatType,
})

const parseTime = (text: string): TimeSignature => {
  const [beats = 4, beatType = 4] = text.split('/').map(Number)
  return { beats, beatType }
}

const parsePassage = (text: string): FirstPassage => {
  const [, fromBar, toBar, hand, goalTempo] =
    /^bars (\d+) to (\d+), (right|left|both) hands?, goal (\d+)$/.exec(text) ??
    fail(`no passage: ${text}`)
  const which = hand === 'right' || hand === 'left' ? hand : 'both'
  return {
    fromBar: Number(fromBar),
    toBar: Number(toBar),
    hand: which,
    goalTempo: Number(goalTempo),
  }
}

/** Sharps of the major keys by the circle of fifths; a minor key has three fewer than its major. */
const circle = ['Cb', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#']

const parseSignature = (text: string): KeySignature => {
  const [tonic = '', mode = ''] = text.split(' ')
  const fifths = circle.indexOf(tonic) - 7 - (mode === 'minor' ? 3 : 0)
  return { start: tick(0), fifths, mode: mode === 'minor' ? 'minor' : 'major' }
}

const fail = (why: string): never => {
  throw new Error(why)
}
