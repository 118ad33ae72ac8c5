import type { Bar, Note, Score } from '@/music/music'
import { ok, type Result } from '@/music/result'
import { fullBar } from '@/score/bars'
import type { PieceRead } from '@/score/score'
import { explainWarning } from '@/score/warning'
import { tick, type Tick } from '@/music/units'
import { loadPiece } from './files'
import { checkNames, wordOf, type Options } from './options'
import type { Answer } from './verb'

/**
 * `read --piece FILE`: what the file holds, in written order. Places are quarter notes from the downbeat
 * of the first full bar, as musicians count: the notes of an upbeat (a first bar that is shorter than
 * its time signature) stand before it, at negative beats. An upbeat of one quarter begins at beat -1.
 */
export const read = (options: Options): Result<Answer, string> => {
  const known = checkNames(options, ['piece'])
  const path = known.ok ? wordOf(options, 'piece') : known
  const piece = path.ok ? loadPiece(path.value) : path
  return piece.ok
    ? ok({ json: pieceJson(piece.value), text: () => describePiece(piece.value) })
    : piece
}

const pieceJson = ({ score, warnings }: PieceRead): object => {
  const { title, notes, bars, tempos, keys, ticksPerQuarter } = score
  const downbeat = firstDownbeat(score)
  const beat = (start: Tick): number => (start - downbeat) / ticksPerQuarter
  const beats = (length: Tick): number => length / ticksPerQuarter
  return {
    title,
    notes: notes.map(({ id, key, start, length, hand, handFrom, barIndex, grace, fingers }) => ({
      id,
      key,
      beat: beat(start),
      beats: beats(length),
      hand,
      handFrom,
      bar: bars[barIndex]?.number,
      ...(grace ? { grace } : {}),
      ...(fingers ? { fingers } : {}),
    })),
    bars: bars.map((bar) => ({
      number: bar.number,
      beat: beat(bar.start),
      beats: beats(bar.length),
      time: formatTime(bar),
    })),
    tempos: tempos.map(({ start, tempo }) => ({ beat: beat(start), tempo })),
    keys: keys.map(({ start, fifths, mode }) => ({ beat: beat(start), fifths, mode })),
    warnings: warnings.map(explainWarning),
  }
}

/** Where the first bar begins, or ends if it is an upbeat. */
export const firstDownbeat = ({ bars: [first], ticksPerQuarter }: Score): Tick => {
  const isUpbeat = first !== undefined && first.length < fullBar(first.time, ticksPerQuarter)
  return isUpbeat ? first.length : tick(0)
}

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
    ...warnings.map((warning) => `Note: ${explainWarning(warning)}`),
  ].join('\n')
}
