import type { Bar, Note, Score } from '@/music/music'
import { ok, type Result } from '@/music/result'
import type { PieceRead } from '@/score/score'
import { loadPiece } from './files'
import { checkNames, wordOf, type Options } from './options'
import type { Answer } from './verb'

/** `read --piece FILE`: what the file holds, times in quarter notes from the start. */
export const read = (options: Options): Result<Answer, string> => {
  const known = checkNames(options, ['piece'])
  const path = known.ok ? wordOf(options, 'piece') : known
  const piece = path.ok ? loadPiece(path.value) : path
  return piece.ok
    ? ok({ json: pieceJson(piece.value), text: () => describePiece(piece.value) })
    : piece
}

const pieceJson = ({ score, warnings }: PieceRead): object => {
  const quarters = (ticks: number): number => ticks / score.ticksPerQuarter
  return {
    title: score.title,
    notes: score.notes.map((note) => noteJson(note, score)),
    bars: score.bars.map((bar) => ({
      number: bar.number,
      beat: quarters(bar.start),
      beats: quarters(bar.length),
      time: formatTime(bar),
    })),
    tempos: score.tempos.map(({ start, tempo }) => ({ beat: quarters(start), tempo })),
    keys: score.keys.map(({ start, fifths, mode }) => ({ beat: quarters(start), fifths, mode })),
    warnings,
  }
}

const noteJson = (note: Note, { ticksPerQuarter, bars }: Score): object => ({
  id: note.id,
  key: note.key,
  beat: note.start / ticksPerQuarter,
  beats: note.length / ticksPerQuarter,
  hand: note.hand,
  handFrom: note.handFrom,
  bar: bars[note.barIndex]?.number,
  ...(note.grace ? { grace: true } : {}),
  ...(note.fingers ? { fingers: note.fingers } : {}),
})

const formatTime = ({ time }: Bar): string => `${time.beats}/${time.beatType}`

const describePiece = ({ score, warnings }: PieceRead): string => {
  const count = (hand: Note['hand']): number => score.notes.filter((n) => n.hand === hand).length
  const inferred = score.notes.some((n) => n.handFrom === 'inferred')
  const [first, last] = [score.bars[0], score.bars.at(-1)]
  const times = new Set(score.bars.map(formatTime))
  const tempos = score.tempos.map(({ tempo }) => Math.round(tempo))
  return [
    score.title,
    `bars ${first?.number} to ${last?.number}, ${[...times].join(', ')}`,
    `${score.notes.length} notes: right hand ${count('right')}, left hand ${count('left')}${inferred ? ' (hands inferred)' : ''}`,
    `quarter notes a minute: ${tempos.join(', ')}`,
    ...warnings.map((warning) => `Note: ${warning}`),
  ].join('\n')
}
