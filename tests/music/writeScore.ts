import { identifyPiece, nameNotes } from '@/music/identity'
import type { Bar, Hand, Note, Score, TempoChange } from '@/music/music'
import { parseKey } from '@/music/pitch'
import { tempo, tick, type Key } from '@/music/units'

interface Sheet {
  readonly right?: string
  readonly left?: string
  readonly time?: readonly [beats: number, beatType: number]
  /** In quarters; 0 without a pickup. */
  readonly pickup?: number
  readonly ticksPerQuarter?: number
  readonly tempos?: readonly TempoChange[]
}

interface Written {
  readonly start: number
  readonly length: number
  readonly key: Key
  readonly hand: Hand
  readonly grace: boolean
}

/**
 * A score in a small notation: 'C4:1/2' is an eighth (lengths in quarters, a quarter without one),
 * 'C4+E4' a chord, 'r:2' a half rest, '(D4)' a grace note before what follows.
 */
export const writeScore = (sheet: Sheet): Score => {
  const ticksPerQuarter = sheet.ticksPerQuarter ?? 480
  const written = [
    ...line(sheet.left ?? '', 'left', ticksPerQuarter),
    ...line(sheet.right ?? '', 'right', ticksPerQuarter),
  ].toSorted((a, b) => a.start - b.start || a.key - b.key)
  const length = Math.max(...written.map((n) => n.start + n.length))
  const bars = rule(length, sheet, ticksPerQuarter)
  const notes: Note[] = nameNotes(written.map(place), ticksPerQuarter).map((n) => ({
    ...n,
    barIndex: bars.findLastIndex((bar) => bar.start <= n.start),
  }))
  return {
    id: identifyPiece(notes, bars, ticksPerQuarter),
    title: 'Fixture',
    ticksPerQuarter,
    notes,
    bars,
    tempos: sheet.tempos ?? [{ start: tick(0), tempo: tempo(120) }],
    keys: [],
    end: tick(bars.reduce((sum, bar) => sum + bar.length, 0)),
  }
}

const place = (n: Written): Omit<Note, 'id' | 'barIndex'> => ({
  key: n.key,
  start: tick(n.start),
  length: tick(n.length),
  hand: n.hand,
  handFrom: 'file',
  ...(n.grace ? { grace: true as const } : {}),
})

const line = (text: string, hand: Hand, ticksPerQuarter: number): Written[] => {
  let start = 0
  return text
    .split(/\s+/)
    .filter((word) => word !== '')
    .flatMap((word) => {
      const grace = word.startsWith('(')
      const [names = '', length = '1'] = word.replace(/[()]/g, '').split(':')
      const [over = 1, under = 1] = length.split('/').map(Number)
      const ticks = (over / under) * ticksPerQuarter
      const at = start
      if (!grace) start += ticks
      return names === 'r'
        ? []
        : chord(names).map((key) => ({ start: at, length: ticks, key, hand, grace }))
    })
}

const chord = (names: string): Key[] =>
  names.split('+').map((name) => {
    const key = parseKey(name)
    if (key === undefined) throw new Error(`no pitch name: ${name}`)
    return key
  })

const rule = (length: number, sheet: Sheet, ticksPerQuarter: number): Bar[] => {
  const [beats, beatType] = sheet.time ?? [4, 4]
  const whole = (beats * 4 * ticksPerQuarter) / beatType
  const pickup = (sheet.pickup ?? 0) * ticksPerQuarter
  const bars: Bar[] = []
  for (let start = 0; start < length; start += bars.at(-1)?.length ?? whole) {
    const partial = start === 0 && pickup > 0
    bars.push({
      number: bars.length + (pickup > 0 ? 0 : 1),
      start: tick(start),
      length: tick(partial ? pickup : whole),
      time: { beats, beatType },
    })
  }
  return bars
}
