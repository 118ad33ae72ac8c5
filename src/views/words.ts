import type { TapTestState } from '@/app/tapTest'
import type { Binding, DrillCommand } from '@/app/commandKeys'
import type { FlawKind, Standard } from '@/judge/flaw'
import type { Lag } from '@/judge/tapTest'
import type { Chunk } from '@/music/chunk'
import type { Form } from '@/music/form'
import type { Pedal } from '@/music/keyEvent'
import type { Bar, HandChoice, Score, TimeSignature } from '@/music/music'
import { beatQuarters } from '@/music/beat'
import { formatKey } from '@/music/pitch'
import type { Tempo } from '@/music/units'

/** Every word on the screens that is made from data. */
export const handWords: Readonly<Record<HandChoice, string>> = {
  right: 'right hand',
  left: 'left hand',
  both: 'both hands',
}

export const standardWords: Readonly<Record<Standard, string>> = {
  notes: 'notes: right keys, right order',
  flow: 'flow: right keys, no stops',
  time: 'time: no stops, steady pulse, chords together',
}

/** Bars 3 to 3 -> 'bar 3'; a pickup is bar 0. */
export const formatBars = (from: Bar, to: Bar): string =>
  from.number === to.number ? `bar ${from.number}` : `bars ${from.number}–${to.number}`

/** The name of the counted note value, for a screen reader and beside the figure. */
export const beatWord = (time: TimeSignature): string => {
  switch (beatQuarters(time)) {
    case 0.5:
      return 'eighths'
    case 1:
      return 'quarters'
    case 1.5:
      return 'dotted quarters'
    case 2:
      return 'halves'
    default:
      return 'beats'
  }
}

/** What clicks between the beats: 'eighths', 'triplets', 'sixteenths' where a quarter is counted. */
export const perBeatWord = (perBeat: 1 | 2 | 3 | 4, time: TimeSignature): string => {
  if (perBeat === 1) return 'the beats alone'
  return beatQuarters(time) === 1
    ? ({ 2: 'eighths', 3: 'triplets', 4: 'sixteenths' } as const)[perBeat]
    : `${perBeat} to a beat`
}

/** 'bar 3, beat 2' */
export const describePlace = (score: Score, at: number): string => {
  const bar = score.bars.findLast(({ start }) => start <= at)
  const beat = bar
    ? Math.floor(((at - bar.start) * bar.time.beatType) / (4 * score.ticksPerQuarter)) + 1
    : 1
  return `bar ${bar?.number ?? 1}, beat ${beat}`
}

/** 'bar 3, beat 2 · 6 onsets' */
export const describeChunk = (score: Score, chunk: Chunk): string =>
  `${describePlace(score, chunk.start)} · ${plural(chunk.onsets.length, 'onset')}`

export const formWords: Readonly<Record<Form, string>> = {
  asWritten: 'as written',
  longShort: 'long–short',
  shortLong: 'short–long',
  stopAfter3: 'a stop after each three',
  stopAfter4: 'a stop after each four',
  accentEvery3: 'an accent on each third',
  accentEvery4: 'an accent on each fourth',
  blocked: 'as chords',
}

export const commandWords: Readonly<Record<DrillCommand, string>> = {
  hear: 'Hear it',
  again: 'Again',
  next: 'Next',
  back: 'Back',
  goOn: 'Go on, or pause',
  metronome: 'Metronome',
}

const pedalWords: Readonly<Record<Pedal, string>> = {
  sustain: 'damper pedal',
  sostenuto: 'middle pedal',
  soft: 'left pedal',
}

/** 'A0', 'left pedal' */
export const bindingWord = (binding: Binding): string =>
  binding.kind === 'key' ? formatKey(binding.key) : pedalWords[binding.pedal]

export const percent = (share: number): string => `${Math.round(share * 100)} %`

/** The flaws by name, as in a list of what went wrong. */
export const flawWords: Readonly<Record<FlawKind, string>> = {
  wrong: 'Another key',
  missing: 'Missing',
  extra: 'A key too many',
  repeated: 'Struck twice',
  order: 'Order exchanged',
  restart: 'Went back',
  hesitation: 'Stop',
  early: 'Early',
  late: 'Late',
  uneven: 'Uneven',
  spread: 'Chord not together',
  drift: 'Tempo drifts',
}

export const plural = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`

/** 31 -> '31 ms after the click'. */
export const describeLag = (lag: number): string => {
  const whole = Math.round(lag)
  if (whole === 0) return 'none'
  return `${Math.abs(whole)} ms ${whole > 0 ? 'after' : 'before'} the click`
}

/** What to do in the tap test, or what it found. */
export const describeTapTest = (state: TapTestState, tempo: Tempo): string => {
  switch (state.kind) {
    case 'ready':
      return `Start the clicks, and strike a key with each; they come ${tempo} a minute.`
    case 'starting':
      return 'The clicks begin …'
    case 'silent':
      return 'No click can sound.'
    case 'listening':
      return 'Strike any key with each click.'
    case 'done':
      return describeMeasured(state.lag)
  }
}

const describeMeasured = (measured: Lag): string => {
  if (measured.kind === 'few')
    return `Only ${plural(measured.counted, 'strike')} can be counted: measure again, one strike to each click.`
  const lag = Math.round(measured.lag) === 0 ? 'on the click' : describeLag(measured.lag)
  const figure = `${lag}, give or take ${Math.round(measured.spread)} ms`
  switch (measured.kind) {
    case 'trusted':
      return `You strike ${figure}.`
    case 'uneven':
      return `You strike ${figure}: too uneven to tell the lag. Measure again.`
    case 'far':
      return `You strike ${figure}: too much to leave out. Wireless headphones may be the cause.`
  }
}
