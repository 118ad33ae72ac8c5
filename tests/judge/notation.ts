import type { Standard } from '@/judge/flaw'
import type { JudgeSettings } from '@/judge/judge'
import type { Repetition } from '@/judge/repetition'
import { replayTake } from '@/judge/replay'
import type { Chunk, ExpectedNote, Onset } from '@/music/chunk'
import type { KeyEvent, Take } from '@/music/keyEvent'
import { parseKey } from '@/music/pitch'
import { chunkId, key, ms, noteId, pieceId, tick, type Key, type NoteId } from '@/music/units'

const perQuarter = 480

/**
 * A chunk as text. An onset a word, a quarter long unless a length in quarters follows a colon; a
 * chord in brackets; ',' before a key is the left hand's; '=' a unison of both hands; '~' after a key
 * is a trill; 'r' after a chord: rolled; a grace note stands in parentheses before its onset.
 * Example: 'C4 [,E3 G4]:1/2 (D4) E4~ [C4 E4 G4]r =C4'.
 */
export const writeChunk = (text: string): Chunk => {
  let start = 0
  let graces: Key[] = []
  const onsets: Onset[] = []
  for (const word of wordsOf(text)) {
    if (word.startsWith('(')) {
      graces.push(keyOf(word.slice(1, -1)))
      continue
    }
    const [chord = '', length = '1'] = word.split(':')
    const [over = 1, under = 1] = length.split('/').map(Number)
    const ticks = (over / under) * perQuarter
    const names = chord.replace(/^\[|\]r?$/g, '').split(' ')
    const notes = names
      .map((name) => writeNote(name, start, ticks))
      .toSorted((a, b) => a.key - b.key)
    const [first, ...rest] = notes
    if (!first) throw new Error(`no notes: ${word}`)
    const trills = names.filter((name) => name.endsWith('~')).map((name) => keyOf(name))
    const reach = trills.flatMap((k) => [-2, -1, 0, 1, 2].map((d) => key(k + d)))
    onsets.push({
      start: tick(start),
      notes: [first, ...rest],
      auxiliaries: [...new Set([...graces, ...reach])].toSorted((a, b) => a - b),
      rolled: chord.endsWith(']r'),
    })
    graces = []
    start += ticks
  }
  return chunkOf(onsets, start)
}

export const chunkOf = (onsets: readonly Onset[], end: number): Chunk => ({
  id: chunkId('c'),
  piece: pieceId('p'),
  hand: 'both',
  ticksPerQuarter: perQuarter,
  start: tick(0),
  end: tick(end),
  barOffset: tick(0),
  barLength: tick(4 * perQuarter),
  onsets,
})

const writeNote = (name: string, start: number, length: number): ExpectedNote => {
  const k = keyOf(name)
  const id = noteId(`n${start}k${k}`)
  const ids: readonly [NoteId, ...NoteId[]] = name.startsWith('=') ? [id, noteId(`${id}b`)] : [id]
  return {
    ids,
    key: k,
    start: tick(start),
    length: tick(length),
    hand: name.startsWith(',') ? 'left' : 'right',
    ...(name.endsWith('~') ? { ornament: 'trill' } : {}),
  }
}

const keyOf = (name: string): Key => {
  const found = parseKey(name.replace(/[,=~]/g, ''))
  if (found === undefined) throw new Error(`no pitch: ${name}`)
  return found
}

const wordsOf = (text: string): readonly string[] => text.match(/\[[^\]]*\]\S*|\S+/g) ?? []

/** How long a quarter of the played text lasts. */
const beat = 400

/**
 * Playing as text. Each word is struck a quarter (400 ms) after the one before; a chord in brackets
 * together; '.' lets a quarter pass; a number adds so many milliseconds (a minus takes them away);
 * 'E4!' is brushed: velocity 12, 40 ms long. Keys are let go after 300 ms.
 */
export const writeTake = (text: string, quarter = beat): Take => {
  const events: KeyEvent[] = []
  let at = 1000
  for (const word of wordsOf(text)) {
    if (/^-?\d+(\.\d+)?$/.test(word)) at += Number(word)
    else if (word === '.') at += quarter
    else {
      for (const name of word.replace(/[[\]]/g, '').split(' ')) {
        const isBrushed = name.endsWith('!')
        const k = keyOf(name.replace('!', ''))
        events.push(
          { kind: 'down', key: k, velocity: isBrushed ? 12 : 64, at: ms(at) },
          { kind: 'up', key: k, at: ms(at + (isBrushed ? 40 : 300)) },
        )
      }
      at += quarter
    }
  }
  return { events: events.toSorted((a, b) => a.at - b.at) }
}

export const listen = (
  chunk: string,
  played: string,
  settings: Partial<JudgeSettings> = {},
): readonly Repetition[] =>
  replayTake(
    writeChunk(chunk),
    { standard: 'notes', forgiveBrushed: false, ...settings },
    writeTake(played),
  ).repetitions

/** The final marks of each repetition in the order of time, a lacking note where it should have come. */
export const judge = (chunk: string, played: string, standard: Standard = 'notes'): string =>
  listen(chunk, played, { standard }).map(marksOf).join(' | ')

export const verdicts = (chunk: string, played: string, standard: Standard = 'notes'): string =>
  listen(chunk, played, { standard })
    .map((r) => r.verdict)
    .join(' ')

/** The kinds of the flaws, of all repetitions. */
export const flaws = (chunk: string, played: string, standard: Standard): string =>
  listen(chunk, played, { standard })
    .flatMap((r) => r.flaws.map((f) => f.kind))
    .join(' ')

const marksOf = ({ marks }: Repetition): string => {
  const struck = marks.filter((m) => m.kind !== 'missing' && m.played)
  const words = struck
    .toSorted((a, b) => (a.played?.index ?? 0) - (b.played?.index ?? 0))
    .map((m) => ({ kind: m.kind, onset: m.onset }))
  for (const lack of marks.filter((m) => m.kind === 'missing')) {
    const after = words.findIndex((w) => w.onset > lack.onset)
    words.splice(after < 0 ? words.length : after, 0, { kind: 'missing', onset: lack.onset })
  }
  return words.map((w) => w.kind).join(' ')
}
