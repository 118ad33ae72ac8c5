import type { TapTestState } from '@/app/tapTest'
import type { Binding, DrillCommand } from '@/app/commandKeys'
import type { FlawKind, Standard } from '@/judge/flaw'
import type { Lag } from '@/judge/tapTest'
import type { Chunk } from '@/music/chunk'
import type { Form } from '@/music/form'
import type { Bar, HandChoice, Score, TimeSignature } from '@/music/music'
import { beatQuarters } from '@/music/beat'
import { nameKey } from '@/music/spelling'
import type { Tempo } from '@/music/units'
import { drillText } from '@/text/drill'
import { flawsText } from '@/text/flaws'
import { musicText } from '@/text/music'
import { tapTestText } from '@/text/tapTest'

/** Words for what stands in the data: which they are is said in `src/text`. */
export const handWords: Readonly<Record<HandChoice, string>> = musicText.hands
export const formWords: Readonly<Record<Form, string>> = musicText.forms
export const standardWords: Readonly<Record<Standard, string>> = flawsText.standards
export const flawWords: Readonly<Record<FlawKind, string>> = flawsText.names
export const commandWords: Readonly<Record<DrillCommand, string>> = drillText.commands

/** Bars 3 to 3 -> 'bar 3'; a pickup is bar 0. */
export const formatBars = (from: Bar, to: Bar): string => musicText.bars(from.number, to.number)

/** The name of the counted note value, for a screen reader and beside the figure. */
export const beatWord = (time: TimeSignature): string => {
  switch (beatQuarters(time)) {
    case 0.5:
      return musicText.beats.eighths
    case 1:
      return musicText.beats.quarters
    case 1.5:
      return musicText.beats.dottedQuarters
    case 2:
      return musicText.beats.halves
    default:
      return musicText.beats.other
  }
}

/** What clicks between the beats: 'eighths', 'triplets', 'sixteenths' where a quarter is counted. */
export const perBeatWord = (perBeat: 1 | 2 | 3 | 4, time: TimeSignature): string => {
  if (perBeat === 1) return musicText.beatsAlone
  return beatQuarters(time) === 1 ? musicText.partsOfQuarter[perBeat] : musicText.toABeat(perBeat)
}

/** In which bar and on which of its beats a tick lies, by their numbers. */
export const barAndBeat = (score: Score, at: number): readonly [bar: number, beat: number] => {
  const bar = score.bars.findLast(({ start }) => start <= at)
  const beat = bar
    ? Math.floor(((at - bar.start) * bar.time.beatType) / (4 * score.ticksPerQuarter)) + 1
    : 1
  return [bar?.number ?? 1, beat]
}

/** 'bar 3, beat 2' */
export const describePlace = (score: Score, at: number): string =>
  musicText.barAndBeat(...barAndBeat(score, at))

/** 'bar 3, beat 2 · 6 onsets' */
export const describeChunk = (score: Score, chunk: Chunk): string =>
  `${describePlace(score, chunk.start)} · ${musicText.onsets(chunk.onsets.length)}`

/** 'A0', 'left pedal' */
export const bindingWord = (binding: Binding): string =>
  binding.kind === 'key' ? nameKey(binding.key) : musicText.pedals[binding.pedal]

export const percent = (share: number): string => musicText.percent(Math.round(share * 100))

/** 31 -> '31 ms after the click'. */
export const describeLag = (lag: number): string => {
  const whole = Math.round(lag)
  if (whole === 0) return tapTestText.noLag
  return tapTestText.lag(Math.abs(whole), whole > 0 ? 'after' : 'before')
}

/** What to do in the tap test, or what it found. */
export const describeTapTest = (state: TapTestState, tempo: Tempo): string => {
  switch (state.kind) {
    case 'ready':
      return tapTestText.start(tempo)
    case 'starting':
      return tapTestText.begins
    case 'silent':
      return tapTestText.silent
    case 'listening':
      return tapTestText.strike
    case 'done':
      return describeMeasured(state.lag)
  }
}

const describeMeasured = (measured: Lag): string => {
  if (measured.kind === 'few') return tapTestText.few(measured.counted)
  const lag = Math.round(measured.lag) === 0 ? tapTestText.onTheClick : describeLag(measured.lag)
  return tapTestText[measured.kind](tapTestText.figure(lag, Math.round(measured.spread)))
}
