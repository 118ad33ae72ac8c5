import type { Flaw, PlayedNote, Standard } from '@/judge/flaw'
import type { JudgeSettings } from '@/judge/judge'
import type { Repetition } from '@/judge/repetition'
import type { Chunk } from '@/music/chunk'
import type { Score } from '@/music/music'
import { formatKey } from '@/music/pitch'
import { ok, type Result } from '@/music/result'
import { quarterMs, tempo } from '@/music/units'
import { judgeTake } from './atTempo'
import { loadPiece, loadTake } from './files'
import { judgeJournal } from './judgeJournal'
import { checkNames, choiceOf, numberOf, wordOf, type Options } from './options'
import { choosePassage } from './passage'
import type { Answer } from './verb'

const known = ['piece', 'take', 'hand', 'from', 'to', 'tempo', 'standard']
const knownWithJournal = ['piece', 'journal']
/** The first one holds when none is given. */
const standards: readonly [Standard, ...Standard[]] = ['flow', 'notes', 'time']
/** Quarter notes a minute that a person or a metronome can mean. */
const tempoBounds = { from: 5, to: 1000 }

/**
 * `judge --piece FILE --take FILE ...`: the take's repetitions of the passage and their verdicts;
 * with `--journal FILE` in place of the take, the recorded repetitions of the piece judged again.
 */
export const judge = (options: Options): Result<Answer, string> => {
  if (options.has('journal')) {
    const names = checkNames(options, knownWithJournal)
    return names.ok ? judgeJournal(options) : names
  }
  const names = checkNames(options, known)
  const settings = names.ok ? chooseSettings(options) : names
  if (!settings.ok) return settings
  const piecePath = wordOf(options, 'piece')
  const takePath = wordOf(options, 'take')
  const piece = piecePath.ok ? loadPiece(piecePath.value) : piecePath
  if (!piece.ok) return piece
  const take = takePath.ok ? loadTake(takePath.value) : takePath
  if (!take.ok) return take
  const chunk = choosePassage(piece.value.score, options)
  if (!chunk.ok) return chunk
  const repetitions = judgeTake(chunk.value, settings.value, take.value)
  return ok({
    json: repetitionsJson(repetitions, chunk.value),
    text: () => describe(repetitions, chunk.value, piece.value.score),
  })
}

const chooseSettings = (options: Options): Result<JudgeSettings, string> => {
  const standard = choiceOf(options, 'standard', standards)
  const chosen = numberOf(options, 'tempo', tempoBounds)
  if (!standard.ok) return standard
  if (!chosen.ok) return chosen
  const quarter = chosen.value === undefined ? {} : { quarter: quarterMs(tempo(chosen.value)) }
  return ok({ standard: standard.value, forgiveBrushed: false, ...quarter })
}

const repetitionsJson = (repetitions: readonly Repetition[], chunk: Chunk): object => ({
  repetitions: repetitions.map((repetition, i) => ({
    startMs: round(repetition.start),
    lastOnsetMs: round(repetition.lastOnset),
    verdict: repetition.verdict,
    tempo: repetition.figures.tempo === undefined ? null : round(repetition.figures.tempo),
    flaws: [...repetition.flaws, ...givenUp(repetition, repetitions[i + 1], chunk)].flatMap(
      (flaw) =>
        strikesOf(flaw).map((played) =>
          flawJson({ ...flaw, ...(played ? { played } : {}) }, chunk),
        ),
    ),
  })),
  ...sums(repetitions),
})

/** A restart is listed once for each strike that was given up by it, any other flaw once. */
const strikesOf = ({ played, again = [] }: Flaw): readonly (PlayedNote | undefined)[] => [
  played,
  ...again,
]

/** The next beginning came too soon for silence to have broken the repetition off. */
const soon = 4000

/** Where the player went back to the start before the last onset, the right strikes that were given up by it. */
const givenUp = (
  { marks, lastOnset }: Repetition,
  next: Repetition | undefined,
  chunk: Chunk,
): readonly Flaw[] => {
  const reached = Math.max(...marks.map((mark) => (mark.kind === 'missing' ? 0 : mark.onset)))
  if (!next || next.start - lastOnset >= soon || reached >= chunk.onsets.length - 1) return []
  return marks.flatMap((mark) => (mark.kind === 'right' ? [{ ...mark, kind: 'restart' }] : []))
}

/** `beat` counts quarters from the chunk's first onset, `atMs` from the start of the take. */
const flawJson = ({ kind, expected, played, ms }: Flaw, chunk: Chunk): object => ({
  kind,
  expected: expected ? { key: expected.key, beat: expected.start / chunk.ticksPerQuarter } : null,
  played: played ? { key: played.key, atMs: round(played.at) } : null,
  ...(ms === undefined ? {} : { ms: round(ms) }),
})

/** To the microsecond; what is beyond is noise of the sums. */
const round = (n: number): number => Math.round(n * 1000) / 1000

interface Sums {
  readonly clean: number
  readonly flawed: number
  readonly brokenOff: number
  readonly longestStreak: number
}

const sums = (repetitions: readonly Repetition[]): Sums => {
  const count = { clean: 0, flawed: 0, brokenOff: 0 }
  let streak = 0
  let longestStreak = 0
  for (const { verdict } of repetitions) {
    count[verdict]++
    streak = verdict === 'clean' ? streak + 1 : 0
    longestStreak = Math.max(longestStreak, streak)
  }
  return { ...count, longestStreak }
}

const describe = (repetitions: readonly Repetition[], chunk: Chunk, score: Score): string => {
  const { clean, flawed, brokenOff, longestStreak } = sums(repetitions)
  const lines = repetitions.flatMap(({ start, verdict, figures, flaws }, i) => {
    const at = `${(start / 1000).toFixed(1)} s`.padStart(9)
    const pace =
      figures.tempo === undefined ? '' : `, ${Math.round(figures.tempo)} quarters a minute`
    const name = verdict === 'brokenOff' ? 'broken off' : verdict
    return [
      `${String(i + 1).padStart(3)}${at}  ${name}${pace}`,
      ...flaws.map((flaw) => `${' '.repeat(14)}${describeFlaw(flaw, chunk, score)}`),
    ]
  })
  const total = `${clean} clean, ${flawed} flawed, ${brokenOff} broken off; longest streak ${longestStreak}`
  return [...lines, total].join('\n')
}

/** 'wrong: F#5 for F5, bar 9, beat 2.5'. Beats are quarters, counted from 1. */
const describeFlaw = ({ kind, expected, played, ms }: Flaw, chunk: Chunk, score: Score): string => {
  const flats = (score.keys[0]?.fifths ?? 0) < 0 ? 'flats' : 'sharps'
  const names = [played, expected].flatMap((note) => (note ? [formatKey(note.key, flats)] : []))
  const size = ms === undefined ? '' : ` (${Math.round(ms)} ms)`
  const at = chunk.start + (expected?.start ?? 0)
  const bar = score.bars.findLast((b) => b.start <= at)
  const beat = 1 + (at - (bar?.start ?? 0)) / score.ticksPerQuarter
  const place = expected ? `, bar ${bar?.number}, beat ${Number(beat.toFixed(2))}` : ''
  return `${kind}: ${[...new Set(names)].join(' for ')}${place}${size}`
}
