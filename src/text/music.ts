import { plural } from './plural'
import { catalogue } from './text'

/** Words of music: hands, bars, note values, forms of an exercise. */
export const musicText = catalogue('music', {
  hands: { right: 'right hand', left: 'left hand', both: 'both hands' },
  forms: {
    asWritten: 'as written',
    longShort: 'long–short',
    shortLong: 'short–long',
    stopAfter3: 'a stop after each three',
    stopAfter4: 'a stop after each four',
    accentEvery3: 'an accent on each third',
    accentEvery4: 'an accent on each fourth',
    blocked: 'as chords',
  },
  /** The note value that is counted as a beat. */
  beats: {
    eighths: 'eighths',
    quarters: 'quarters',
    dottedQuarters: 'dotted quarters',
    halves: 'halves',
    other: 'beats',
  },
  /** What clicks between the beats. */
  beatsAlone: 'the beats alone',
  partsOfQuarter: { 2: 'eighths', 3: 'triplets', 4: 'sixteenths' },
  toABeat: (n: number) => `${n} to a beat`,
  pedals: { sustain: 'damper pedal', sostenuto: 'middle pedal', soft: 'left pedal' },
  /** A pickup is bar 0. */
  bars: (from: number, to: number) => (from === to ? `bar ${from}` : `bars ${from}–${to}`),
  barAndBeat: (bar: number, beat: number) => `bar ${bar}, beat ${beat}`,
  /** After a figure; `beats` is the name of the counted note value. */
  aMinute: (beats: string) => `${beats} a minute`,
  onsets: (n: number) => plural(n, 'onset'),
  percent: (whole: number) => `${whole} %`,
})

export type MusicText = typeof musicText
