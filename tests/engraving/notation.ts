/** A small notation for scores: 'C4 1/2 E4+G4 1/2 r 1' is names, then quarters; `l:` starts the left hand. */
import { nameNotes, identifyPiece } from '@/music/identity'
import type { Bar, Hand, KeySignature, Score, TimeSignature } from '@/music/music'
import { parseKey } from '@/music/pitch'
import { tempo, tick, type Key, type Tick } from '@/music/units'

export const resolution = 480

interface Raw {
  readonly key: Key
  readonly start: Tick
  readonly length: Tick
  readonly hand: Hand
}

export interface Frame {
  readonly time?: TimeSignature
  readonly fifths?: number
  readonly mode?: KeySignature['mode']
  /** Quarters of the pickup. */
  readonly pickup?: number
  /** Share of the written length that sounds. */
  readonly articulation?: number
}

/** 'C4 1 D4 1/2 | ...': lines of one voice each, 'l:' before those of the left hand. */
export const scoreOf = (text: string, frame: Frame = {}): Score => {
  const raw = text
    .trim()
    .split('\n')
    .flatMap((line) => readLine(line, frame.articulation ?? 1))
  return scoreFrom(raw, frame)
}

export const scoreFrom = (raw: readonly Raw[], frame: Frame = {}): Score => {
  const time = frame.time ?? { beats: 4, beatType: 4 }
  const full = (resolution * 4 * time.beats) / time.beatType
  const pickup = (frame.pickup ?? 0) * resolution
  const last = Math.max(...raw.map((n) => n.start + n.length))
  const bars: Bar[] = []
  for (let at = 0, number = pickup ? 0 : 1; at < last; number++) {
    const length = number === 0 ? pickup : full
    bars.push({ number, start: tick(at), length: tick(length), time })
    at += length
  }
  const sorted = raw.toSorted((a, b) => a.start - b.start || a.key - b.key)
  const notes = nameNotes(sorted, resolution).map((note) => ({
    ...note,
    handFrom: 'file' as const,
    barIndex: bars.findLastIndex((bar) => bar.start <= note.start),
  }))
  return {
    id: identifyPiece(notes, bars, resolution),
    title: 'Study',
    ticksPerQuarter: resolution,
    notes,
    bars,
    tempos: [{ start: tick(0), tempo: tempo(120) }],
    keys: [{ start: tick(0), fifths: frame.fifths ?? 0, mode: frame.mode ?? 'major' }],
    end: tick((bars.at(-1)?.start ?? 0) + (bars.at(-1)?.length ?? 0)),
  }
}

const readLine = (line: string, articulation: number): Raw[] => {
  const hand: Hand = line.trim().startsWith('l:') ? 'left' : 'right'
  const words = line.replace('l:', '').replaceAll('|', ' ').trim().split(/\s+/)
  const notes: Raw[] = []
  let at = 0
  for (let i = 0; i + 1 < words.length; i += 2) {
    const length = quartersOf(words[i + 1] ?? '1') * resolution
    for (const name of (words[i] ?? 'r').split('+')) {
      const key = parseKey(name)
      if (key !== undefined)
        notes.push({
          key,
          start: tick(Math.round(at)),
          length: tick(Math.max(1, Math.round(length * articulation))),
          hand,
        })
    }
    at += length
  }
  return notes
}

const quartersOf = (text: string): number => {
  const [above = '1', below = '1'] = text.split('/')
  return Number(above) / Number(below)
}
