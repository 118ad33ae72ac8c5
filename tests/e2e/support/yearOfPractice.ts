import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { proposeChunks } from '@/exercises/propose'
import { drillId, eventId, sessionId } from '@/journal/ids'
import { journalVersion, type JournalEvent, type RecordedFlaw } from '@/journal/journal'
import { recordPlace } from '@/journal/record'
import type { Chunk } from '@/music/chunk'
import type { Score } from '@/music/music'
import { key, pieceId, tempo, tick } from '@/music/units'
import { readPiece } from '@/score/readPiece'

/** So many sittings of one chunk each, on the days before `end`. */
const sittings = 420
const perSitting = 12
const dayMs = 86_400_000

/** Its last days, and how the pieces were brought. */
export const daysOfPractice = (end: number, days: number): readonly JournalEvent[] =>
  yearOfPractice(end).filter(
    ({ kind, atEpochMs }) => kind === 'pieceAdded' || atEpochMs > end - days * dayMs,
  )

/**
 * A year of practice made by rule, the same each time: two samples and a piece that is not at hand;
 * the clean share rises from a half to three quarters, tempi climb, chunks become secure, kept, slip.
 */
export const yearOfPractice = (end: number): readonly JournalEvent[] => {
  const random = randomFrom(7)
  const chunks = [...chunksOf('morning-at-the-mill.mid'), ...chunksOf('ferry-at-dusk.mid')]
  return [
    ...added(chunks, end),
    ...Array.from({ length: sittings }, (_, i) => {
      const chunk = chunks[Math.floor(random() ** 1.6 * chunks.length)]
      const at = end - Math.floor(365 * (1 - i / sittings)) * dayMs + (i % 2) * 1_800_000
      return chunk ? sitting(chunk, i, at, random) : []
    }).flat(),
  ]
}

interface Placed {
  readonly score: Score
  readonly chunk: Chunk
  readonly title: string
}

const chunksOf = (fileName: string): readonly Placed[] => {
  const path = fileURLToPath(new URL(`../../../sample-midi/${fileName}`, import.meta.url))
  const piece = readPiece(readFileSync(path), fileName)
  if (!piece.ok) throw new Error(`${fileName} cannot be read`)
  const { score } = piece.value
  return (['right', 'left'] as const)
    .flatMap((hand) => proposeChunks(score, tick(0), score.end, hand).slice(0, 9))
    .map((chunk) => ({ score, chunk, title: score.title }))
}

const stamp = (name: string, atEpochMs: number) => ({
  v: journalVersion,
  id: eventId(name),
  session: sessionId(`s${Math.floor(atEpochMs / dayMs)}`),
  atEpochMs,
})

const added = (chunks: readonly Placed[], end: number): readonly JournalEvent[] =>
  [...new Map(chunks.map((each) => [each.chunk.piece, each])).values()].map(({ chunk, title }) => ({
    ...stamp(`added ${chunk.piece}`, end - 366 * dayMs),
    kind: 'pieceAdded',
    piece: chunk.piece,
    title,
    fileName: 'piece.mid',
  }))

const sitting = (
  placed: Placed,
  index: number,
  at: number,
  random: () => number,
): readonly JournalEvent[] => {
  const { chunk, score } = placed
  const goalTempo = tempo(104)
  const progress = index / sittings
  const bars = score.notes
    .filter(({ start }) => start >= chunk.start && start < chunk.end)
    .map(({ barIndex }) => score.bars[barIndex]?.number ?? 1)
  // Each ninth sitting is of a piece that nobody brought along.
  const piece = index % 9 === 0 ? pieceId('p-elsewhere') : chunk.piece
  const where = { drill: drillId(`d${index}`), piece, chunk: chunk.id }
  const rungOf = (i: number) =>
    tempo([52, 60, 66, 72, 80, 88, 96, 104][Math.min(7, Math.floor(progress * 9 + i / 9))] ?? 52)
  const events: JournalEvent[] = [
    {
      ...stamp(`begun ${index}`, at),
      kind: 'drillBegun',
      ...where,
      place: recordPlace(chunk, Math.min(...bars), Math.max(...bars)),
      form: 'asWritten',
      time: { beats: 4, beatType: 4 },
      streakGoal: 5,
      goalTempo,
      startTempo: rungOf(0),
      ladder: 'classic',
      standard: 'flow',
    },
  ]
  for (let i = 0; i < perSitting; i++) {
    const luck = random()
    const verdict = luck < 0.5 + progress / 4 ? 'clean' : luck < 0.93 ? 'flawed' : 'brokenOff'
    events.push({
      ...stamp(`r ${index} ${i}`, at + (i + 1) * 9_000),
      kind: 'repetition',
      ...where,
      rung: rungOf(i),
      standard: 'flow',
      forgiveBrushed: false,
      verdict,
      tookMs: 5_000,
      flaws: verdict === 'flawed' ? [flawIn(chunk, random)] : [],
      figures: {},
      take: '',
    })
  }
  const after = at + (perSitting + 1) * 9_000
  if (rungOf(perSitting) === goalTempo)
    events.push({ ...stamp(`secure ${index}`, after), kind: 'secure', ...where, rung: goalTempo })
  if (index % 5 === 0)
    events.push({
      ...stamp(`overruled ${index}`, after),
      kind: 'overruled',
      ...where,
      what: index % 2 === 0 ? 'raise' : 'pause',
    })
  return events
}

/** Most often another key at the same note of the chunk, as it is in life. */
const flawIn = (chunk: Chunk, random: () => number): RecordedFlaw => {
  const onset = Math.min(chunk.onsets.length - 1, Math.floor(random() ** 2 * chunk.onsets.length))
  const note = chunk.onsets[onset]?.notes[0]
  const luck = random()
  const last = chunk.onsets.length - 1
  if (luck > 0.96) return { kind: 'drift', onset: last, ms: luck > 0.975 ? -120 : 90 }
  if (note && luck > 0.9)
    return { kind: 'extra', onset, played: key(note.key + (luck > 0.93 ? 2 : 3)) }
  if (!note || luck > 0.8) return { kind: 'hesitation', onset, ms: 400 }
  const written = { onset, notes: note.ids, written: note.key }
  return luck < 0.6
    ? { kind: 'wrong', ...written, played: key(note.key + (luck < 0.4 ? 1 : -2)) }
    : { kind: 'missing', ...written }
}

/** The same numbers for the same seed. Source: mulberry32, Tommy Ettinger, public domain, from memory. */
const randomFrom = (seed: number): (() => number) => {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}
