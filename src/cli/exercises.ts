import { buildUp, type BuildUpOptions, type Exercise } from '@/exercises/buildUp'
import { estimateMinutes, usualPace, type Pace } from '@/exercises/estimate'
import { directions } from '@/exercises/order'
import { thoroughnesses } from '@/exercises/steps'
import { formsOf, writeVariant } from '@/exercises/variants'
import type { Chunk } from '@/music/chunk'
import type { HandChoice, Score } from '@/music/music'
import { formatKey } from '@/music/pitch'
import { ok, type Result } from '@/music/result'
import { tempoAt } from '@/music/tempoMap'
import { tempo, tick, type Tick } from '@/music/units'
import { buildUpText, nameExercise } from '@/text/buildUp'
import { loadPiece } from './files'
import { checkNames, choiceOf, numberOf, wordOf, type Options } from './options'
import { choosePassage } from './passage'
import type { Answer } from './verb'

const known = ['piece', 'from', 'to', 'hand', 'thoroughness', 'direction', 'span', 'tempo']
/** Semitones from a fourth to two octaves. */
const spanBounds = { from: 5, to: 24, whole: true }
/** Quarter notes a minute that a person or a metronome can mean. */
const tempoBounds = { from: 5, to: 1000 }

/** `exercises --piece FILE --from BAR --to BAR --hand H ...`: the build-up of a passage, and its variants. */
export const exercises = (options: Options): Result<Answer, string> => {
  const names = checkNames(options, known)
  const path = names.ok ? wordOf(options, 'piece') : names
  const piece = path.ok ? loadPiece(path.value) : path
  if (!piece.ok) return piece
  const { score } = piece.value
  const passage = choosePassage(score, options)
  if (!passage.ok) return passage
  const choices = chooseBuildUp(options, passage.value)
  if (!choices.ok) return choices
  const wanted = numberOf(options, 'tempo', tempoBounds)
  if (!wanted.ok) return wanted
  const { start, onsets } = passage.value
  const goalTempo = tempo(wanted.value ?? tempoAt(score.tempos, start))
  const found: Found = {
    score,
    passage: passage.value,
    choices: choices.value,
    pace: { goalTempo, ...usualPace },
    all: buildUp(
      score,
      { from: start, to: tick(start + (onsets.at(-1)?.start ?? 0) + 1) },
      choices.value,
    ),
  }
  return ok({ json: foundJson(found), text: () => describe(found) })
}

interface Found {
  readonly score: Score
  readonly passage: Chunk
  readonly choices: BuildUpOptions
  readonly pace: Pace
  readonly all: readonly Exercise[]
}

const chooseBuildUp = (
  options: Options,
  { hand }: { readonly hand: HandChoice },
): Result<BuildUpOptions, string> => {
  const thoroughness = choiceOf(options, 'thoroughness', thoroughnesses)
  if (!thoroughness.ok) return thoroughness
  const direction = choiceOf(options, 'direction', directions)
  if (!direction.ok) return direction
  const span = numberOf(options, 'span', spanBounds)
  if (!span.ok) return span
  return ok({
    hand,
    thoroughness: thoroughness.value,
    direction: direction.value,
    ...(span.value === undefined ? {} : { span: span.value }),
  })
}

const foundJson = ({ score, passage, choices, pace, all }: Found): object => ({
  chunk: passage.id,
  onsets: passage.onsets.length,
  hand: choices.hand,
  thoroughness: choices.thoroughness,
  direction: choices.direction,
  goalTempo: pace.goalTempo,
  minutes: rounded(estimateMinutes(all, pace)),
  exercises: all.map((exercise, i) => exerciseJson(exercise, i, score, pace)),
  variants: formsOf(score, passage, choices.span).flatMap((form) => {
    const variant = writeVariant(score, passage, form, choices.span)
    return variant
      ? [
          {
            form,
            chunk: variant.chunk.id,
            purpose: buildUpText.purposes[form],
            onsets: onsetsJson(variant.chunk),
          },
        ]
      : []
  }),
})

const exerciseJson = (exercise: Exercise, index: number, score: Score, pace: Pace): object => {
  const { chunk, from, to } = exercise
  return {
    number: index + 1,
    stage: exercise.stage,
    what: exercise.what,
    size: exercise.size,
    hand: exercise.hand,
    form: exercise.form,
    chunk: chunk.id,
    fromBeat: from / score.ticksPerQuarter,
    toBeat: to / score.ticksPerQuarter,
    fromBar: barAt(score, from),
    toBar: barAt(score, to),
    why: buildUpText.purposes[exercise.why],
    begin: exercise.begin,
    reach: exercise.reach,
    streakGoal: exercise.streakGoal,
    minutes: rounded(estimateMinutes([exercise], pace)),
    onsets: onsetsJson(chunk),
  }
}

/** Beats are quarter notes from the chunk's first onset. */
const onsetsJson = ({ onsets, ticksPerQuarter }: Chunk): readonly object[] =>
  onsets.map(({ start, notes }) => ({
    beat: start / ticksPerQuarter,
    keys: notes.map(({ key }) => key),
  }))

const rounded = (minutes: number): number => Math.round(minutes * 10) / 10

const barAt = ({ bars }: Score, at: Tick): number =>
  bars.findLast((bar) => bar.start <= at)?.number ?? 0

const describe = ({ score, passage, choices, pace, all }: Found): string => {
  const minutes = Math.max(1, Math.round(estimateMinutes(all, pace)))
  const forms = formsOf(score, passage, choices.span).filter((form) => form !== 'asWritten')
  return [
    `${passage.onsets.length} onsets, ${handWords[choices.hand]}, ${choices.thoroughness}: ${all.length} exercises, about ${minutes} minutes up to ${Math.round(pace.goalTempo)} quarters a minute.`,
    ...all.flatMap((exercise, i) => [
      ...(exercise.stage === all[i - 1]?.stage ? [] : [stageLine(exercise)]),
      exerciseLine(exercise, i, score) +
        (isFirstReason(exercise, i, all) ? ` ${buildUpText.purposes[exercise.why]}` : ''),
    ]),
    ...forms.map((form) => `Variant ${form}: ${buildUpText.purposes[form]}`),
  ].join('\n')
}

/** A reason is told once in a stage. */
const isFirstReason = (
  { stage, why }: Exercise,
  index: number,
  all: readonly Exercise[],
): boolean => all.findIndex((each) => each.stage === stage && each.why === why) === index

const stageLine = ({ stage, begin, reach, streakGoal }: Exercise): string =>
  `Stage ${stage}: ${streakGoal} clean in a row, ${begin === reach ? 'at' : `from ${percent(begin)} to`} ${percent(reach)} of the goal tempo`

const percent = (share: number): string => `${Math.round(share * 100)} %`

const exerciseLine = (exercise: Exercise, index: number, score: Score): string => {
  const { chunk, form, from, to, size } = exercise
  const [first, last] = [barAt(score, from), barAt(score, to)]
  const bars = first === last ? `bar ${first}` : `bars ${first} to ${last}`
  const name = nameExercise(exercise)
  const named = form === 'asWritten' ? name : `${name}, ${form}`
  const keys = size <= longestListed ? ` ${keysOf(chunk)}` : ` ${size} onsets`
  return `  ${index + 1}. ${named}, ${handWords[chunk.hand]}, ${bars}:${keys}.`
}

/** More onsets than this are counted, not listed. */
const longestListed = 5

const keysOf = ({ onsets }: Chunk): string =>
  onsets.map(({ notes }) => notes.map(({ key }) => formatKey(key)).join('+')).join(' ')

const handWords: Readonly<Record<HandChoice, string>> = {
  right: 'right hand',
  left: 'left hand',
  both: 'both hands',
}
