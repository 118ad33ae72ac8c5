import type { Hand, Note } from '@/music/music'
import type { Tick } from '@/music/units'
import type { Clef } from './clefs'
import type { Reading } from './readings'
import type { Graces } from './spellVoices'
import type { WrittenNote } from './quantise'
import type { Span } from './values'

/** The clefs and octaves of one staff as they are drawn. */
export interface StaffReading {
  /** What each bar begins with. */
  readonly clefs: readonly Clef[]
  /** New clefs inside bars, before what is written from `at` on. */
  readonly clefChanges: readonly { readonly at: number; readonly clef: Clef }[]
  /** By note id, grace notes included. */
  readonly readings: ReadonlyMap<string, Reading>
}

interface OpenBar extends Span {
  readonly bar: { readonly start: Tick }
}

/** `notes`: those that are drawn, in order. */
export const readStaff = (
  notes: readonly WrittenNote[],
  bars: readonly OpenBar[],
  all: readonly Reading[],
  hand: Hand,
  graces: Graces,
): StaffReading => {
  const inOrder = notes.toSorted((a, b) => a.start - b.start)
  const clefs: Clef[] = []
  const clefChanges: { at: number; clef: Clef }[] = []
  for (const { start, end, bar } of bars) {
    const own = inOrder.filter((note) => note.start >= start && note.start < end)
    const opening = readingAt(all, own[0]?.note.start ?? bar.start, hand).clef
    clefs.push(opening)
    let clef = opening
    for (const [i, { note, start: at }] of own.entries()) {
      const next = readingAt(all, note.start, hand).clef
      if (next === clef || at === own[i - 1]?.start) continue
      clefChanges.push({ at, clef: next })
      clef = next
    }
  }
  const readings = new Map<string, Reading>()
  for (const { note } of notes) {
    const reading = readingAt(all, note.start, hand)
    for (const { id } of [note, ...(graces.get(note.id) ?? [])]) readings.set(id, reading)
  }
  return { clefs, clefChanges, readings }
}

/** The clef that the next line of the piece begins with: the line before announces it. */
export const clefOfNext = (
  around: readonly Note[],
  { bar, end }: { readonly bar: Tick; readonly end: Tick },
  all: readonly Reading[],
  hand: Hand,
): Clef => {
  const first = around.find((n) => n.hand === hand && !n.grace && n.start >= bar && n.start < end)
  return readingAt(all, first?.start ?? bar, hand).clef
}

const readingAt = (all: readonly Reading[], at: Tick, hand: Hand): Reading =>
  all.findLast((reading) => reading.at <= at) ??
  all[0] ?? { at, clef: hand === 'right' ? 'treble' : 'bass', octaves: 0 }
