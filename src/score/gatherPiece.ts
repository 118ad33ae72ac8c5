import type { KeySignature } from '@/music/music'
import { tempo, type Tick } from '@/music/units'
import type { FileNote, JoinedTrack } from './joinNotes'
import type { Part } from './part'
import { drumChannel, type SmfEvent, type SmfFile, type SmfPiece, type TimeChange } from './score'
import { chooseTitle } from './title'
import type { Warning } from './warning'

/** What the file says about the piece: notes with lengths in parts, and the marks of all tracks. */
export const gatherPiece = (file: SmfFile<JoinedTrack>, fileName: string): SmfPiece => {
  const warnings: Warning[] = [...file.warnings]
  const hanging = file.tracks.reduce((sum, track) => sum + track.hanging, 0)
  if (hanging > 0) warnings.push({ kind: 'unended', notes: hanging })
  const pitched = file.tracks.map(({ notes }) =>
    notes.some(isDrum) ? notes.filter(isPitched) : notes,
  )
  const channels = pitched.map(channelsOf)
  const byChannel = channels.filter((each) => each.length > 0).length === 1
  const drumNotes = file.tracks.reduce(
    (sum, { notes }, i) => sum + notes.length - (pitched[i]?.length ?? 0),
    0,
  )
  if (drumNotes > 0) warnings.push({ kind: 'drums', notes: drumNotes })
  const said = file.tracks.map(({ others }) => listen(others))
  const parts = file.tracks.flatMap((_, i) =>
    gatherParts(said[i], pitched[i] ?? [], channels[i] ?? [], byChannel),
  )
  const marks = said.flatMap((track) => track.marks)
  return {
    title: chooseTitle(said, fileName),
    ticksPerQuarter: file.ticksPerQuarter,
    parts,
    drumNotes,
    tempos: lastAtEachTick(marks.flatMap(readTempo)),
    times: lastAtEachTick(marks.flatMap((e) => readTime(e, warnings))),
    keys: lastAtEachTick(marks.flatMap(readKey)),
    warnings,
  }
}

/** What a track says besides its notes. */
interface TrackSaid {
  readonly name: string | undefined
  /** The first program of each channel. */
  readonly programs: ReadonlyMap<number, number>
  readonly marks: readonly SmfEvent[]
}

const listen = (events: readonly SmfEvent[]): TrackSaid => {
  const programs = new Map<number, number>()
  for (const e of events)
    if (e.kind === 'program' && !programs.has(e.channel)) programs.set(e.channel, e.program)
  return {
    name: events.find((e) => e.kind === 'name')?.text,
    programs,
    marks: events.filter(({ kind }) => kind === 'tempo' || kind === 'time' || kind === 'key'),
  }
}

const isDrum = ({ channel }: FileNote): boolean => channel === drumChannel
const isPitched = ({ channel }: FileNote): boolean => channel !== drumChannel

/** In order. */
const channelsOf = (notes: readonly FileNote[]): readonly number[] => {
  const channels = new Set<number>()
  for (const { channel } of notes) channels.add(channel)
  return [...channels].toSorted((a, b) => a - b)
}

/** A track is a part; where one track holds all notes, each of its channels is a part. */
const gatherParts = (
  said: TrackSaid | undefined,
  notes: readonly FileNote[],
  channels: readonly number[],
  byChannel: boolean,
): Part[] => {
  const [first] = channels
  if (first === undefined || !said) return []
  const program = (channel: number): number => said.programs.get(channel) ?? 0
  if (channels.length === 1 || !byChannel)
    return [{ name: said.name ?? '', program: program(first), notes }]
  return channels.map((channel) => ({
    name: '',
    program: program(channel),
    notes: notes.filter((n) => n.channel === channel),
  }))
}

const readTempo = (e: SmfEvent): SmfPiece['tempos'][number][] =>
  e.kind === 'tempo' && e.microsecondsPerQuarter > 0
    ? [{ start: e.at, tempo: tempo(60_000_000 / e.microsecondsPerQuarter) }]
    : []

/** The smallest note value that a bar is counted in; smaller ones stand in damaged files only (common practice, no source). */
const smallestBeat = 64

const readTime = (e: SmfEvent, warnings: Warning[]): TimeChange[] => {
  if (e.kind !== 'time') return []
  const { beats, beatType } = e
  if (beats >= 1 && beatType >= 1 && beatType <= smallestBeat)
    return [{ start: e.at, time: { beats, beatType } }]
  warnings.push({ kind: 'impossibleTime' })
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
