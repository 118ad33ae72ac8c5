import type { Tempo } from '@/music/units'
import { beatLength, clickBar, pulsesPerQuarter, type Bar } from './accents'
import type { TimeSignature } from '@/music/music'
import type { Accent, ClickPattern, MetronomeSettings } from './sound'

/** A metronome that is going. Place is counted in whole `pulsesPerQuarter`ths of a quarter from `anchor`. */
export interface Beating {
  readonly time: TimeSignature
  readonly bar: Bar
  readonly turns: ClickPattern['turns']
  readonly tempo: Tempo
  /** Audio time in seconds at which the place `anchorPlace` is heard. */
  readonly anchor: number
  readonly anchorPlace: number
  /** The next click. */
  readonly next: Place
  /** The click with which the music begins. */
  readonly start: Place
}

/** Which bar, 0 where the music begins, and which pulse of it. */
interface Place {
  readonly bar: number
  readonly pulse: number
}

export interface Click {
  /** Audio time in seconds. */
  readonly at: number
  readonly accent: Accent
  readonly bar: number
  readonly beat: number
  /** Before the music begins. */
  readonly countIn: boolean
  readonly silent: boolean
}

/**
 * A metronome whose first click sounds at `at` (audio seconds). The count-in begins `countInBars`
 * before the music, at the same place of a bar, on the click at or before it.
 */
export const beginBeating = (settings: MetronomeSettings, at: number): Beating => {
  const bar = clickBar(settings.time, settings.perBeat ?? 1)
  const start = { bar: 0, pulse: startPulse(settings, bar) }
  const next = { ...start, bar: -settings.countInBars }
  const { tempo, time, turns } = settings
  return { time, bar, turns, tempo, anchor: at, anchorPlace: placeOf(bar, next), next, start }
}

/** All clicks before `until` (audio seconds) that were not given yet, and the metronome after them. */
export const planClicks = (
  beating: Beating,
  until: number,
): readonly [Beating, readonly Click[]] => {
  const clicks: Click[] = []
  let { next } = beating
  for (let click = clickAt(beating, next); click.at < until; click = clickAt(beating, next)) {
    clicks.push(click)
    next = following(beating.bar, next)
  }
  return [{ ...beating, next }, clicks]
}

/** The click that comes next. */
export const nextClick = (beating: Beating): Click => clickAt(beating, beating.next)

/** The first beat of the music, or the next one where it has begun: no click between two beats. */
export const firstBeat = (beating: Beating): Click => {
  const { bar, next, start } = beating
  let place = clickAt(beating, next).countIn ? start : next
  while (bar.pulses[place.pulse]?.accent === 'soft') place = following(bar, place)
  return clickAt(beating, place)
}

/** Another tempo from the next click on: that click keeps its time. */
export const changeBeating = (beating: Beating, tempo: Tempo): Beating => ({
  ...beating,
  tempo,
  anchor: nextClick(beating).at,
  anchorPlace: placeOf(beating.bar, beating.next),
})

/** Another pattern from the next click on; where that one is not of it, from the first of its own after that. */
export const changePattern = (beating: Beating, { perBeat = 1, turns }: ClickPattern): Beating => {
  const bar = clickBar(beating.time, perBeat)
  const moved = ({ bar: number, pulse }: Place): Place => {
    const offset = beating.bar.pulses[pulse]?.offset ?? 0
    const at = bar.pulses.findIndex((each) => each.offset >= offset)
    return at < 0 ? { bar: number + 1, pulse: 0 } : { bar: number, pulse: at }
  }
  return { ...beating, bar, turns, next: moved(beating.next), start: moved(beating.start) }
}

/** Leaves out the clicks before `from`: late ones are worse than none. */
export const skipClicks = (beating: Beating, from: number): Beating => planClicks(beating, from)[0]

/** The beat that holds the place where the music begins, not a click between two beats. */
const startPulse = ({ time, barOffset = 0 }: MetronomeSettings, bar: Bar): number => {
  const place = Math.round(barOffset * pulsesPerQuarter) % bar.length
  const beat = Math.floor(place / beatLength(time))
  return Math.max(
    0,
    bar.pulses.findIndex((pulse) => pulse.beat === beat),
  )
}

const placeOf = (bar: Bar, { bar: number, pulse }: Place): number =>
  number * bar.length + (bar.pulses[pulse]?.offset ?? 0)

const following = (bar: Bar, { bar: number, pulse }: Place): Place =>
  pulse + 1 < bar.pulses.length ? { bar: number, pulse: pulse + 1 } : { bar: number + 1, pulse: 0 }

/** From the anchor in one multiplication, so that no error adds up. */
const clickAt = (beating: Beating, place: Place): Click => {
  const { bar, tempo, turns, anchor, anchorPlace, start } = beating
  const pulse = bar.pulses[place.pulse]
  const quarters = (placeOf(bar, place) - anchorPlace) / pulsesPerQuarter
  return {
    at: anchor + (quarters * 60) / tempo,
    accent: pulse?.accent ?? 'weak',
    bar: place.bar,
    beat: pulse?.beat ?? 0,
    countIn: placeOf(bar, place) < placeOf(bar, start),
    silent: isSilent(place.bar, turns),
  }
}

/** The first bars sound, the count-in always. */
const isSilent = (bar: number, turns: ClickPattern['turns']): boolean =>
  turns !== undefined && bar >= 0 && bar % (turns.sounding + turns.silent) >= turns.sounding
