import type { Hand, TimeSignature } from '@/music/music'
import type { Key } from '@/music/units'
import type { ReadingText } from '@/text/reading'
import type { Told } from '@/text/told'

/**
 * A short fragment as typed in: a line of settings, then a line or more for each hand.
 *
 *     time 3/4  key G  tempo 80  pickup 1
 *     right: D4 | G4:1/2 A4 B4 G4 [B3 D4]:1 | r:3
 *     left:  r  | G2:3 | -:2 D3:1
 *
 * Pitches are scientific pitch names, middle C is C4. A length stands after a colon, in quarters, as
 * a fraction or a decimal, and holds until the next. `r` is a rest, `[ ]` a chord, `-` holds the note
 * or chord before it, over a bar line for instance. Bar lines may be left out; those that stand are
 * checked. `tempo` counts the beats of the time signature a minute, `pickup` is in quarters. A line
 * goes on where the one before of its hand ended; one without a hand is of the hand before it.
 */
export interface TypedMusic {
  /** '' where the text has none: it stands in the first line of a file, `passagework 1 Title`. */
  readonly title: string
  readonly time: TimeSignature
  readonly fifths: number
  readonly mode: 'major' | 'minor'
  /** Beats of the time signature a minute. */
  readonly tempo: number
  /** In parts of a quarter; 0 when there is none. */
  readonly pickup: number
  readonly right: readonly TypedEvent[]
  readonly left: readonly TypedEvent[]
}

/** A note or chord, or, without a pitch, a rest. */
export interface TypedEvent {
  /** From low to high, each key once. */
  readonly pitches: readonly TypedPitch[]
  /** In parts of a quarter. */
  readonly length: number
}

export interface TypedPitch {
  /** 'F#4', 'Bb3', 'C##5' */
  readonly name: string
  readonly key: Key
}

/** What is wrong, and where: lines and columns count from 1, `width` is how many letters are meant. */
export interface TypedProblem {
  readonly line: number
  readonly column: number
  readonly width: number
  readonly flaw: TypedFlaw
}

export type TypedFlaw = Told<ReadingText['typed']>

/** 2^5 · 3 · 5 · 7 parts of a quarter: 128th notes, triplets, quintuplets, septuplets are whole. */
export const quarterParts = 3360

/** How long a full bar is, in parts of a quarter. */
export const barParts = ({ beats, beatType }: TimeSignature): number =>
  (beats * 4 * quarterParts) / beatType

/** The names of the major keys from seven flats to seven sharps, and of the minor keys. */
export const keyNames = {
  major: 'Cb Gb Db Ab Eb Bb F C G D A E B F# C#'.split(' '),
  minor: 'Ab Eb Bb F C G D A E B F# C# G# D# A#'.split(' '),
} as const

/** Four bars a line are read at a glance. */
const barsToALine = 4

/** The inverse of `parseTypedMusic`, with all bar lines. */
export const formatTypedMusic = (music: TypedMusic): string => {
  const { title, time, fifths, mode, tempo, pickup } = music
  const settings = [
    `time ${time.beats}/${time.beatType}`,
    `key ${keyNames[mode][fifths + 7] ?? 'C'}${mode === 'minor' ? ' minor' : ''}`,
    `tempo ${tempo}`,
    ...(pickup > 0 ? [`pickup ${formatLength(pickup)}`] : []),
  ].join('  ')
  const hands = (['right', 'left'] as const).flatMap((hand) => formatHand(hand, music))
  return [...(title === '' ? [] : [typedHeader(title)]), settings, ...hands, ''].join('\n')
}

/** The first line of a file, by which it is known. */
export const typedHeader = (title: string): string => `passagework 1 ${title}`.trim()

const formatHand = (hand: Hand, music: TypedMusic): string[] => {
  const bars = splitIntoBars(music[hand], music)
  let length = quarterParts
  const written = bars.map((bar) =>
    bar
      .map((piece) => {
        const word = `${piece.word}${piece.length === length ? '' : `:${formatLength(piece.length)}`}`
        length = piece.length
        return word
      })
      .join(' '),
  )
  const lines: string[] = []
  for (let i = 0; i < written.length; i += barsToALine)
    lines.push(`${hand}: ${written.slice(i, i + barsToALine).join(' | ')}`)
  return lines
}

interface Written {
  readonly word: string
  readonly length: number
}

/** The events cut at the bar lines, what is over held on in the next bar. */
const splitIntoBars = (
  events: readonly TypedEvent[],
  { time, pickup }: TypedMusic,
): readonly (readonly Written[])[] => {
  const bars: Written[][] = []
  let room = 0
  for (const { pitches, length } of events) {
    let word = wordOf(pitches)
    for (let rest = length; rest > 0;) {
      if (room === 0) {
        room = bars.length === 0 && pickup > 0 ? pickup : barParts(time)
        bars.push([])
      }
      const here = Math.min(rest, room)
      bars.at(-1)?.push({ word, length: here })
      word = '-'
      rest -= here
      room -= here
    }
  }
  return bars
}

const wordOf = (pitches: readonly TypedPitch[]): string => {
  const names = pitches.map(({ name }) => name)
  return names.length === 0 ? 'r' : names.length === 1 ? names.join('') : `[${names.join(' ')}]`
}

/** 5040 parts -> '3/2', 3360 -> '1'. */
export const formatLength = (parts: number): string => {
  const by = divisor(parts, quarterParts)
  const below = quarterParts / by
  return below === 1 ? `${parts / by}` : `${parts / by}/${below}`
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b))
