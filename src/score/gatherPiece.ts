import type { KeySignature } from '@/music/music'
import { tempo, type Tick } from '@/music/units'
import { joinNotes, type FileNote } from './joinNotes'
import type { Part } from './part'
import { drumChannel, type SmfEvent, type SmfFile, type SmfPiece, type TimeChange } from './score'
import { chooseTitle } from './title'

/** What the file says about the piece: notes with lengths in parts, and the marks of all tracks. */
export const gatherPiece = (file: SmfFile, fileName: string): SmfPiece => {
  const warnings = [...file.warnings]
  const joined = file.tracks.map((events) => joinNotes(events))
  const hanging = joined.reduce((sum, track) => sum + track.hanging, 0)
  if (hanging > 0)
    warnings.push(`${count(hanging, 'note')} never ended in the file; closed at the track’s end.`)
  const channels = joined.map((track) => new Set(track.notes.map((n) => n.channel)))
  const sounding = channels.filter((set) => [...set].some((c) => c !== drumChannel))
  const drumNotes = joined.reduce((sum, { notes }) => sum + notes.filter(isDrum).length, 0)
  if (drumNotes > 0) warnings.push(`${count(drumNotes, 'note')} on the drum channel (10) left out.`)
  const parts = file.tracks.flatMap((events, i) =>
    gatherParts(events, joined[i]?.notes ?? [], sounding.length === 1),
  )
  const marks = file.tracks.flatMap((events) => events.filter(isMark))
  return {
    title: chooseTitle(file, fileName),
    ticksPerQuarter: file.ticksPerQuarter,
    parts,
    drumNotes,
    tempos: lastAtEachTick(marks.flatMap(readTempo)),
    times: lastAtEachTick(marks.flatMap((e) => readTime(e, warnings))),
    keys: lastAtEachTick(marks.flatMap(readKey)),
    warnings,
  }
}

const isMark = ({ kind }: SmfEvent): boolean =>
  kind === 'tempo' || kind === 'time' || kind === 'key'

const isDrum = ({ channel }: FileNote): boolean => channel === drumChannel

/** A track is a part; where one track holds all notes, each of its channels is a part. */
const gatherParts = (
  events: readonly SmfEvent[],
  notes: readonly FileNote[],
  byChannel: boolean,
): Part[] => {
  const name = events.find((e) => e.kind === 'name')?.text ?? ''
  const pitched = notes.filter((n) => !isDrum(n))
  const channels = [...new Set(pitched.map((n) => n.channel))].toSorted((a, b) => a - b)
  const groups = byChannel ? channels.map((c) => [c]) : channels.length > 0 ? [channels] : []
  return groups.map((group) => ({
    name: groups.length > 1 ? '' : name,
    program: programOf(events, group[0] ?? 0),
    notes: pitched.filter((n) => group.includes(n.channel)),
  }))
}

const programOf = (events: readonly SmfEvent[], channel: number): number => {
  for (const e of events) if (e.kind === 'program' && e.channel === channel) return e.program
  return 0
}

const readTempo = (e: SmfEvent): SmfPiece['tempos'][number][] =>
  e.kind === 'tempo' && e.microsecondsPerQuarter > 0
    ? [{ start: e.at, tempo: tempo(60_000_000 / e.microsecondsPerQuarter) }]
    : []

/** The smallest note value that a bar is counted in; smaller ones stand in damaged files only (common practice, no source). */
const smallestBeat = 64

const readTime = (e: SmfEvent, warnings: string[]): TimeChange[] => {
  if (e.kind !== 'time') return []
  const { beats, beatType } = e
  if (beats >= 1 && beatType >= 1 && beatType <= smallestBeat)
    return [{ start: e.at, time: { beats, beatType } }]
  warnings.push('An impossible time signature was left out.')
  return []
}

const readKey = (e: SmfEvent): KeySignature[] =>
  e.kind === 'key' && Math.abs(e.fifths) <= 7
    ? [{ start: e.at, fifths: e.fifths, mode: e.minor ? 'minor' : 'major' }]
    : []

/** In order of time; where tracks repeat a mark at a tick, the last one holds. */
const lastAtEachTick = <T extends { readonly start: Tick }>(marks: readonly T[]): T[] => {
  const byTick = new Map<number, T>()
  for (const mark of marks) byTick.set(mark.start, mark)
  return [...byTick.values()].toSorted((a, b) => a.start - b.start)
}

const count = (n: number, thing: string): string => (n === 1 ? `1 ${thing}` : `${n} ${thing}s`)
