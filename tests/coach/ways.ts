import { beginCoach, stepCoach, type Coach, type CoachSettings, type Command } from '@/coach/coach'
import { diagnose } from '@/coach/diagnose'
import { buildLadder, startRung } from '@/coach/ladder'
import type { Problem } from '@/coach/reasons'
import { beginRemedy, offerRemedies } from '@/coach/remedies'
import { buildUp, type Exercise } from '@/exercises/buildUp'
import { progressOf } from '@/exercises/progress'
import { tempo, tick, type ChunkId, type Tempo } from '@/music/units'
import { goal, lastOnset, onsetAt, passage, stretchOf, type Desk, type Stretch } from './desk'

/** A way to practise the passage until five in a row are clean at the goal tempo; whether that was reached. */
export type Way = (desk: Desk) => boolean

const whole = stretchOf(0, lastOnset)
const ladder = { kind: 'classic' } as const
const streakGoal = 5

/** The whole passage at the goal tempo, again and again. */
export const plainRepetition: Way = (desk) => repeat(desk, () => goal)

/** The whole passage from 55 % of the goal tempo: once right, then faster; never slower again. */
export const onceRight: Way = (desk) => repeat(desk, ({ clean }) => climb(clean))

/** How often the fixed ladder is played at the goal tempo before it is climbed anew. */
const patience = 25

/**
 * The whole passage from 55 % of the goal tempo; a rung up after every five repetitions, whatever they
 * were. Without a streak in 25 at the goal tempo it is climbed again from below.
 */
export const fixedLadder: Way = (desk) =>
  repeat(desk, ({ all }) => climb(Math.floor((all % (5 * rungsToGoal + patience)) / 5)))

const rungs = buildLadder(ladder, goal)
const lowest = rungs.indexOf(startRung(rungs))
const rungsToGoal = rungs.length - 1 - lowest
const climb = (steps: number): Tempo => rungs[lowest + steps] ?? goal

const repeat = (
  desk: Desk,
  rungOf: (count: { readonly all: number; readonly clean: number }) => Tempo,
): boolean => {
  const drill = desk.nextDrill()
  let [streak, clean] = [0, 0]
  for (let all = 0; desk.hasTime(); all++) {
    const rung = rungOf({ all, clean })
    const { verdict } = desk.play(whole, rung, { drill, streakGoal, trial: false })
    if (verdict === 'clean') clean++
    streak = verdict === 'clean' && rung === goal ? streak + 1 : 0
    if (streak === streakGoal) return true
  }
  return false
}

/** The exercises of the build-up at their tempi, eight times each, clean or not; then the fixed ladder. */
export const countedGroups: Way = (desk) => {
  for (const exercise of exercises.slice(0, -1)) {
    const entry = { drill: desk.nextDrill(), streakGoal, trial: false }
    for (let n = 0; n < 8 && desk.hasTime(); n++)
      desk.play(placed(exercise), tempo(goal * exercise.reach), entry)
    desk.wait(turnSeconds)
  }
  return fixedLadder(desk)
}

/** The coach, with the whole passage from the first; smaller groups only where it asks for them. */
export const coachOnly: Way = (desk) => {
  const settings = { goalTempo: goal, ladder, streakGoal, trial: true }
  const [end] = drillUntilDone(desk, whole, beginCoach(settings), { stays: true, depth: 0 })
  return end === 'done'
}

/** The coach and the build-up: the whole way of the program. */
export const coachAndBuildUp: Way = (desk) => {
  const done = new Set<ChunkId>()
  /** Left for another place; taken up again when the others are done, too. */
  let left: readonly Exercise[] = []
  let endurance: Coach['endurance']
  while (desk.hasTime()) {
    const open = progressOf(exercises, done).left
    const next = open.find((each) => !left.includes(each)) ?? open[0]
    if (!next) return true
    if (left.includes(next)) left = []
    const [end, coach] = drillUntilDone(
      desk,
      placed(next),
      beginCoach(settingsOf(next), endurance),
      {
        stays: open.length === 1,
        depth: 0,
      },
    )
    endurance = coach.endurance
    if (end === 'done') done.add(next.chunk.id)
    else left = [...left, next]
    desk.wait(turnSeconds)
  }
  return progressOf(exercises, done).next === undefined
}

const exercises = buildUp(
  passage,
  { from: tick(0), to: passage.end },
  { hand: 'right', thoroughness: 'brisk', direction: 'forward' },
)

const placed = ({ from, to }: Exercise): Stretch => stretchOf(onsetAt(from), onsetAt(to))

const settingsOf = ({ begin, reach, streakGoal: wanted }: Exercise): CoachSettings => ({
  goalTempo: tempo(Math.round(goal * reach)),
  startTempo: tempo(Math.round(goal * begin)),
  streakGoal: wanted,
  ladder,
  trial: true,
})

/** To find another place and look at it (common practice, no source). */
const turnSeconds = 5
const pauseSeconds = 5
const restSeconds = 300
/** So many tries a remedy is given by the person. */
const mostRemedyTries = 20

type End = 'done' | 'left'
interface Course {
  /** There is no other place to go to. */
  readonly stays: boolean
  /** How many drills it lies inside. */
  readonly depth: number
  readonly mostTries?: number
}

/** Does what the coach says until the chunk is done, or is left for another. */
const drillUntilDone = (
  desk: Desk,
  stretch: Stretch,
  begun: Coach,
  course: Course,
): readonly [End, Coach] => {
  const drill = desk.nextDrill()
  let coach = begun
  for (let n = 0; desk.hasTime() && n < (course.mostTries ?? Infinity); n++) {
    const { rung, trial } = coach
    const entry = { drill, streakGoal: coach.streakGoal, trial: trial !== undefined }
    const [next, commands] = stepCoach(coach, desk.play(stretch, rung, entry))
    coach = next
    for (const command of commands) {
      if (command.kind === 'secure') return ['done', coach]
      if (command.kind === 'elsewhere' && !course.stays) return ['left', coach]
      coach = obey(desk, stretch, coach, command, course)
    }
  }
  return ['left', coach]
}

const obey = (
  desk: Desk,
  stretch: Stretch,
  coach: Coach,
  command: Command,
  course: Course,
): Coach => {
  switch (command.kind) {
    case 'pause':
      desk.wait(pauseSeconds)
      return coach
    case 'rest':
      desk.rest(restSeconds)
      return coach
    case 'smallerGroup':
      desk.wait(turnSeconds)
      return drillHalves(desk, stretch, coach, course)
    case 'problem':
      desk.wait(pauseSeconds)
      return course.depth > 0 ? coach : remedy(desk, stretch, coach, command)
    case 'streakMet':
    case 'secure':
    case 'tempo':
    case 'trialEnded':
    case 'advice':
    case 'elsewhere':
    case 'problemOutcome':
    case 'overruled':
      return coach
  }
}

/** Both halves at the slowest rung here; two onsets slower still. Then back to the group. */
const drillHalves = (desk: Desk, stretch: Stretch, coach: Coach, course: Course): Coach => {
  const { first, last } = stretch
  const middle = Math.floor((first + last) / 2)
  const parts = last - first > 1 ? [stretchOf(first, middle), stretchOf(middle, last)] : [stretch]
  const [slowest] = coach.rungs
  const startTempo = last - first > 1 ? slowest : tempo(Math.max(10, Math.round(0.7 * slowest)))
  let { endurance } = coach
  if (course.depth > 4) return coach
  for (const part of parts) {
    const settings = { goalTempo: slowest, startTempo, streakGoal: 3, ladder }
    const inside = { stays: true, depth: course.depth + 1 }
    const [, after] = drillUntilDone(desk, part, beginCoach(settings, endurance), inside)
    endurance = after.endurance
    desk.wait(turnSeconds)
  }
  return endurance ? { ...coach, endurance } : coach
}

/** The first remedy that is offered, three clean in a row of it, and back. */
const remedy = (desk: Desk, stretch: Stretch, coach: Coach, problem: Problem): Coach => {
  const diagnosis = diagnose(problem, stretch.chunk, coach.sightings)
  const [first] = offerRemedies(passage, stretch.chunk, diagnosis)
  if (!first) return coach
  const begun = beginRemedy(first, coach.rung, coach.endurance)
  const place = stretchOf(stretch.first + first.from, stretch.first + first.to)
  const inside = { stays: true, depth: 1, mostTries: mostRemedyTries }
  const [end, after] = drillUntilDone(desk, place, begun, inside)
  desk.wait(turnSeconds)
  const solved = end === 'done'
  const timed = after.endurance ? { ...coach, endurance: after.endurance } : coach
  return stepCoach(timed, {
    kind: 'remedied',
    remedy: first.kind,
    problem,
    solved,
    at: desk.now(),
  })[0]
}
