import type { Exercise } from '@/exercises/buildUp'
import { progressOf } from '@/exercises/progress'
import { dayAt, type Day } from '@/journal/day'
import { drillId, eventId, sessionId } from '@/journal/ids'
import { journalVersion, type JournalEvent, type RecordedPlace } from '@/journal/journal'
import { isPlayed, sumDay } from '@/journal/sumDays'
import type { PieceDecision } from '@/journal/words'
import { quarterMs, tempo, type ChunkId, type PieceId, type Tempo } from '@/music/units'
import { planDay, type DayPlan } from '@/plan/day'
import type { PlanItem } from '@/plan/items'
import type { PieceLayout, PlanPlace } from '@/plan/layOut'
import { paceFrom } from '@/plan/pace'
import { planPiece, type PiecePlan } from '@/plan/plan'
import { isBelowFloor, recordFrom, type PracticeRecord } from '@/plan/record'
import type { Pianist } from './pianist'

const dayMs = 86_400_000
/** 2026-01-05, a Monday. */
const firstDay = 20_458

export const dayNumber = (i: number): Day => dayAt((firstDay + i) * dayMs + dayMs / 2, 0)

export const emptyRecord: PracticeRecord = { chunkDays: [], reached: new Map() }

/** A piece at the desk, and who plays it. */
export interface Desk {
  readonly layout: PieceLayout
  readonly pianist: Pianist
}

/** What a day was. */
export interface Practised {
  readonly plan: DayPlan
  readonly pieces: readonly PiecePlan[]
  readonly record: PracticeRecord
  readonly cleanShare: number
  /** What the day adds to the journal. */
  readonly events: readonly JournalEvent[]
}

export interface Course {
  readonly minutes: number
  readonly seed: number
  /** Whether the pianist sits down on a day, counted from 0. */
  readonly plays?: (day: number) => boolean
}

/** One day after the plan: every item begun, worked at for its minutes, and left. */
export const practiseDay = (
  desks: readonly Desk[],
  record: PracticeRecord,
  i: number,
  { minutes, seed }: Course,
  decisionOn: (piece: PieceId) => PieceDecision | undefined = () => undefined,
): Practised => {
  const layouts = desks.map(({ layout }) => layout)
  const pace = paceFrom(record, layouts)
  const pieces = layouts.map((layout) => planPiece(layout, record, pace, decisionOn(layout.piece)))
  const day = dayNumber(i)
  const plan = planDay({ day, minutes, seed, pieces, lowered: isBelowFloor(record) })
  const log = createLog(i)
  const done = new Map(record.reached)
  const rungs = new Map<ChunkId, Tempo>()
  for (const item of plan.items) {
    if (item.kind === 'rest') {
      log.wait(item.minutes * 60)
      continue
    }
    const desk = desks.find(({ layout }) => layout.piece === item.piece)
    if (desk) play(desk, item, { i, log, done, rungs })
  }
  const sums = sumDay(day, log.events.filter(isPlayed))
  const { clean, flawed } = sums.total.tally
  return {
    plan,
    pieces,
    record: recordFrom([...record.chunkDays, ...sums.chunks]),
    cleanShare: clean / Math.max(1, clean + flawed),
    events: log.events,
  }
}

interface Sitting {
  readonly i: number
  readonly log: Log
  /** How far each chunk has come. */
  readonly done: Map<ChunkId, Tempo>
  /** Where the last turn at it ended. */
  readonly rungs: Map<ChunkId, Tempo>
}

const play = (desk: Desk, item: PlanItem, sitting: Sitting): void => {
  const { layout } = desk
  const place = layout.places.find(({ id, exercises }) => {
    return id === item.chunk || exercises.some(({ chunk }) => chunk.id === item.chunk)
  })
  switch (item.kind) {
    case 'warmUp':
    case 'coldCheck':
    case 'runThrough':
      return playThrough(desk, item, place, sitting)
    case 'problemSpot':
    case 'newGroup':
    case 'join':
      if (place) drill(desk, item, placeOfTurn(layout, item) ?? place, sitting)
  }
}

const placeOfTurn = ({ places }: PieceLayout, { passage }: PlanItem): PlanPlace | undefined =>
  places.find(
    ({ place }) =>
      place.from === passage?.from && place.to === passage.to && place.hand === passage.hand,
  )

const playThrough = (
  desk: Desk,
  item: PlanItem,
  place: PlanPlace | undefined,
  { i, log }: Sitting,
): void => {
  const exercise = place?.exercises.find(({ chunk }) => chunk.id === item.chunk)
  const stretch = exercise ?? { from: 0 as Exercise['from'], to: Infinity as Exercise['to'] }
  const seconds = exercise
    ? secondsAt(exercise, item.startTempo)
    : desk.layout.minutes * 60 * (desk.layout.goalTempo / item.startTempo)
  const goal = desk.layout.goalTempo
  log.begin(item, goal)
  const until = log.seconds() + item.minutes * 60
  const once = item.kind !== 'warmUp'
  do {
    const clean = desk.pianist.play(
      { ...stretch, hand: item.place.hand },
      item.startTempo / goal,
      i,
    )
    log.repetition(item, item.startTempo, clean, seconds)
    log.wait(desk.pianist.pauseSeconds)
  } while (!once && log.seconds() < until)
}

/** The build-up of a place for the minutes of a turn, as a plain coach would have it. */
const drill = (desk: Desk, item: PlanItem, place: PlanPlace, sitting: Sitting): void => {
  const { log, done } = sitting
  const goal = desk.layout.goalTempo
  const until = log.seconds() + item.minutes * 60
  const whole = place.exercises.at(-1)
  while (log.seconds() < until) {
    const met = place.exercises.filter((e) => (done.get(e.chunk.id) ?? 0) >= reachOf(e, goal))
    const { next } = progressOf(place.exercises, new Set(met.map(({ chunk }) => chunk.id)))
    const exercise = next ?? whole
    if (!exercise) return
    const secured = drillExercise(desk, item, exercise, { ...sitting, until })
    if (!secured) return
    done.set(exercise.chunk.id, secured)
    if (exercise === whole) return
    log.wait(5)
  }
}

const reachOf = ({ reach }: Exercise, goal: Tempo): number => Math.round(goal * reach)

const drillExercise = (
  desk: Desk,
  item: PlanItem,
  exercise: Exercise,
  { i, log, rungs, until }: Sitting & { readonly until: number },
): Tempo | undefined => {
  const goal = desk.layout.goalTempo
  const top = reachOf(exercise, goal)
  const own = { ...item, chunk: exercise.chunk.id, place: { ...item.place, ...exercise.place } }
  log.begin(own, goal)
  const begin =
    exercise.chunk.id === item.chunk ? item.startTempo : Math.round(goal * exercise.begin)
  let rung = Math.min(top, rungs.get(exercise.chunk.id) ?? begin)
  let [streak, lately] = [0, [] as readonly boolean[]]
  while (log.seconds() < until) {
    const clean = desk.pianist.play(exercise, rung / goal, i)
    log.repetition(own, tempo(rung), clean, secondsAt(exercise, tempo(rung)))
    log.wait(desk.pianist.pauseSeconds)
    streak = clean ? streak + 1 : 0
    lately = [...lately, clean].slice(-5)
    if (streak >= exercise.streakGoal) {
      if (rung >= top) return log.done(own, tempo(rung), exercise.reach === 1)
      rung = Math.min(top, Math.ceil(rung * 1.045))
      ;[streak, lately] = [0, []]
    } else if (lately.filter((each) => !each).length >= 3) {
      rung = Math.max(Math.round(goal * 0.4), Math.floor(rung / 1.045))
      ;[streak, lately] = [0, []]
    }
  }
  rungs.set(exercise.chunk.id, tempo(rung))
  return undefined
}

const secondsAt = ({ chunk }: Exercise, rung: Tempo): number =>
  (((chunk.end - chunk.start) / chunk.ticksPerQuarter) * quarterMs(rung)) / 1000

interface Told {
  readonly piece: PieceId
  readonly chunk: ChunkId
  readonly place: RecordedPlace
}

interface Log {
  readonly events: JournalEvent[]
  readonly seconds: () => number
  readonly wait: (seconds: number) => void
  readonly begin: (told: Told, goal: Tempo) => void
  readonly repetition: (told: Told, rung: Tempo, clean: boolean, seconds: number) => void
  readonly done: (told: Told, rung: Tempo, secure: boolean) => Tempo
}

/** The journal of a day that begins at noon. */
const createLog = (i: number): Log => {
  const events: JournalEvent[] = []
  const start = (firstDay + i) * dayMs + dayMs / 2
  let clock = 0
  let drills = 0
  const stamp = () => ({
    v: journalVersion,
    id: eventId(`${i} ${events.length}`),
    session: sessionId(`${i}`),
    atEpochMs: start + Math.round(clock * 1000) + events.length / 1000,
    drill: drillId(`${i} ${drills}`),
  })
  return {
    events,
    seconds: () => clock,
    wait: (seconds) => {
      clock += seconds
    },
    begin: ({ piece, chunk, place }, goal) => {
      drills++
      events.push({
        ...stamp(),
        kind: 'drillBegun',
        piece,
        chunk,
        place,
        form: 'asWritten',
        time: { beats: 4, beatType: 4 },
        streakGoal: 5,
        goalTempo: goal,
        startTempo: goal,
        ladder: 'classic',
        standard: 'flow',
      })
    },
    repetition: ({ piece, chunk }, rung, clean, seconds) => {
      clock += seconds
      events.push({
        ...stamp(),
        kind: 'repetition',
        piece,
        chunk,
        rung,
        standard: 'flow',
        forgiveBrushed: false,
        verdict: clean ? 'clean' : 'flawed',
        tookMs: Math.round(seconds * 1000),
        flaws: [],
        figures: {},
        take: '',
      })
    },
    done: ({ piece, chunk }, rung, secure) => {
      const entry = { ...stamp(), piece, chunk, rung }
      events.push(
        secure ? { ...entry, kind: 'secure' } : { ...entry, kind: 'exerciseDone', streak: 3 },
      )
      return rung
    },
  }
}
