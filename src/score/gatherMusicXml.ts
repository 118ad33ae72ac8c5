import type { Bar, KeySignature, TempoChange } from '@/music/music'
import { failed, ok, type Result } from '@/music/result'
import { defaultTempo } from '@/music/tempoMap'
import { tempo, tick, type Tick } from '@/music/units'
import { mostBars } from './bars'
import { choosePart, handParts, type PlacedPart } from './choosePart'
import { finishScore, sortNotes } from './finishScore'
import { layPart, type LaidPart } from './layMeasures'
import { measureBars, slack } from './measureBars'
import type { MusicXmlFile } from './musicXml'
import { warnOfOddities } from './oddities'
import { giveHands } from './partHands'
import type { ReadProblem } from './readProblem'
import { chooseResolution } from './resolution'
import type { PieceRead } from './score'
import { tieNotes, type PlacedNote } from './tieNotes'
import { titleOfFile } from './title'
import { unfold } from './unfold'

/**
 * Makes a `Score` of what a MusicXML file says: all parts laid in bars, those of the pianist chosen
 * (`wanted`: indices among the parts, to choose others), ties joined, hands by the staves. Repeats
 * stay as written.
 */
export const gatherMusicXml = (
  file: MusicXmlFile,
  fileName: string,
  wanted?: readonly number[],
): Result<PieceRead, ReadProblem> => {
  const ticksPerQuarter = chooseResolution(file.parts)
  const laid = file.parts.map((part) => layPart(part, ticksPerQuarter))
  const bars = measureBars(laid, ticksPerQuarter)
  if (!bars) return failed({ kind: 'tooLong', limit: mostBars })
  const parts = laid.map((part) => placePart(part, bars, ticksPerQuarter))
  const chosen = new Set(wanted ?? choosePart(parts))
  const taken = parts.filter((_, i) => chosen.has(i))
  const handed = giveHands(handParts(taken))
  const notes = sortNotes(handed.notes)
  const lastBar = bars.at(-1)
  if (!lastBar || !notes.some(({ marks }) => !marks?.grace))
    return failed({ kind: parts.some(({ odd }) => odd.unpitched > 0) ? 'onlyDrums' : 'noNotes' })
  const score = finishScore({
    title: file.title || titleOfFile(fileName),
    ticksPerQuarter,
    notes,
    bars,
    tempos: temposOf(laid, bars),
    keys: keysOf(
      laid.filter((_, i) => chosen.has(i)),
      bars,
    ),
    end: tick(lastBar.start + lastBar.length),
  })
  const offered = parts.map(({ name, notes: all }, i) => ({
    name,
    notes: all.length,
    taken: chosen.has(i),
  }))
  const order = playOrderOf(laid, bars)
  return ok({
    score,
    warnings: [
      ...warnOfOddities(
        taken.map(({ odd }) => odd),
        offered,
      ),
      ...handed.warnings,
    ],
    ...(file.composer === '' ? {} : { composer: file.composer }),
    ...(parts.length > 1 ? { parts: offered } : {}),
    ...(order.length === bars.length && order.every((bar, i) => bar === i)
      ? {}
      : { playOrder: order }),
  })
}

const placePart = (part: LaidPart, bars: readonly Bar[], resolution: number): PlacedPart => {
  const placed = part.measures.flatMap(({ notes }, i) => {
    const bar = bars[i]
    return bar ? notes.map((note) => placeNote(note, bar, resolution)) : []
  })
  const { name, piano, staves, odd } = part
  return { name, piano, staves, odd, notes: tieNotes(placed, resolution / slack) }
}

/** A note ends with its bar at the latest; a grace note after the last note of a bar stays in it. */
const placeNote = (
  { at, length, key, staff, tie, marks }: LaidPart['measures'][number]['notes'][number],
  bar: Bar,
  resolution: number,
): PlacedNote => {
  const room = marks.grace ? resolution / lastGrace : 1
  const from = Math.max(0, Math.min(at, bar.length - room))
  return {
    start: tick(bar.start + from),
    length: tick(Math.min(length, bar.length - from)),
    key,
    staff,
    tie,
    marks,
  }
}

/** In parts of a quarter, so that its place is the same at every resolution: see `chooseResolution`. */
const lastGrace = 480

/** Everything that stands in the measures of a part, at its place in the score. */
const placeMarks = <T extends { readonly at: number }>(
  { measures }: LaidPart,
  bars: readonly Bar[],
  marksOf: (measure: LaidPart['measures'][number]) => readonly T[],
): (T & { readonly start: Tick })[] =>
  measures.flatMap((measure, i) =>
    marksOf(measure).map((mark) => ({ ...mark, start: tick((bars[i]?.start ?? 0) + mark.at) })),
  )

/** In order of time; where one stands for playing, the printed ones at its place say nothing. */
const temposOf = (parts: readonly LaidPart[], bars: readonly Bar[]): readonly TempoChange[] => {
  const marks = parts
    .flatMap((part) => placeMarks(part, bars, ({ tempos }) => tempos))
    .toSorted((a, b) => a.start - b.start || Number(a.forPlaying) - Number(b.forPlaying))
  const changes: TempoChange[] = []
  for (const [i, { start, tempo: said }] of marks.entries()) {
    if (marks[i + 1]?.start === start) continue
    const before = changes.at(-1)?.tempo ?? defaultTempo
    changes.push({
      start,
      tempo: typeof said === 'number' ? said : tempo(before * said.timesTheOldOne),
    })
  }
  return changes
}

/** Those of the first of the parts, the last one at each place. */
const keysOf = (parts: readonly LaidPart[], bars: readonly Bar[]): readonly KeySignature[] => {
  const [part] = parts
  if (!part) return []
  const marks = placeMarks(part, bars, ({ keys }) => keys).toSorted((a, b) => a.start - b.start)
  return marks
    .filter(({ start }, i) => marks[i + 1]?.start !== start)
    .map(({ start, fifths, mode }) => ({ start, fifths, mode }))
}

/** Repeats stand in every part as a rule; of those that contradict each other the first part's hold. */
const playOrderOf = (parts: readonly LaidPart[], bars: readonly Bar[]): readonly number[] =>
  unfold(
    bars.map((_, i) =>
      parts.reduceRight((signs, { measures }) => ({ ...signs, ...measures[i]?.signs }), {}),
    ),
  )
