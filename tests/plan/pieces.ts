import type { Score } from '@/music/music'
import { msAt } from '@/music/tempoMap'
import { layOutPiece, type Analysis, type PieceLayout } from '@/plan/layOut'
import { writeScore } from '../music/writeScore'

/** Sixteen bars of our own: a run, a leap, a broken chord, and the run again a tone higher. */
const bars = {
  right: [
    'C5:1/2 D5:1/2 E5:1/2 F5:1/2 G5:1/2 F5:1/2 E5:1/2 D5:1/2',
    'E5 G5:1/2 E5:1/2 D5 r',
    'G5:1/2 C6:1/2 E5:1/2 C6:1/2 F5:1/2 B5:1/2 D5:1/2 B5:1/2',
    'C6 G5 E5 r',
  ],
  left: ['C3 G3 E3 G3', 'C3 G3 B2 G3', 'E3 G3 D3 G3', 'C3 E3 C3 r'],
}

/** `times` phrases of four bars, each a little other than the last. */
export const pieceOf = (times: number): Score => {
  const phrase = (i: number): readonly [string, string] => [
    rotated(bars.right, i).join(' '),
    rotated(bars.left, 2 * i).join(' '),
  ]
  const phrases = Array.from({ length: times }, (_, i) => phrase(i))
  return writeScore({
    right: phrases.map(([right]) => right).join(' '),
    left: phrases.map(([, left]) => left).join(' '),
  })
}

const rotated = (lines: readonly string[], by: number): readonly string[] =>
  lines.map((_, i) => lines[(i * (1 + (by % 2)) + by) % lines.length] ?? '')

/** Notes a second, twice over: a stand-in for the analysis, so that the plan is tested apart from it. */
export const analysisOf = (score: Score, spots: Analysis['spots'] = []): Analysis => {
  const difficultyIn: Analysis['difficultyIn'] = ({ from, to }) => {
    const inside = score.notes.filter(({ start }) => start >= from && start < to)
    const at = (t: typeof from) => msAt(score.tempos, score.ticksPerQuarter, t)
    const seconds = (at(to) - at(from)) / 1000
    return seconds > 0 ? (2 * inside.length) / seconds : 0
  }
  const [first] = score.bars
  const difficulty = first ? difficultyIn({ from: first.start, to: score.end }) : 0
  return { spots, difficulty, uncertainty: 0.15 * difficulty, difficultyIn }
}

export const layoutOf = (score: Score, spots: Analysis['spots'] = []): PieceLayout =>
  layOutPiece(score, analysisOf(score, spots))
