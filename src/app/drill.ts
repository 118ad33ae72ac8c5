import { coachRepetition, stepCoach, type Coach, type Command } from '@/coach/coach'
import { anchorClick } from '@/judge/anchorClick'
import type { Mark } from '@/judge/flaw'
import {
  beginJudge,
  closingTime,
  stepJudge,
  type Finding,
  type Judge,
  type JudgeEvent,
  type JudgeSettings,
} from '@/judge/judge'
import type { Repetition } from '@/judge/repetition'
import type { Chunk } from '@/music/chunk'
import type { KeyEvent, Take } from '@/music/keyEvent'
import type { Key, Ms, Tempo } from '@/music/units'

/** A chunk being drilled: the judge listens, the coach counts. */
export interface Drill {
  readonly chunk: Chunk
  /** As wanted; where they changed while a repetition was under way, the judge starts anew when it has ended. */
  readonly settings: JudgeSettings
  readonly judge: Judge
  /** What the judge began with. */
  readonly inForce: InForce
  /** The time of a click, where it was found to have moved while a repetition was under way. */
  readonly moved: Ms | undefined
  /** A repetition is under way. */
  readonly underWay: boolean
  readonly coach: Coach
  /** Repetitions of this drill, the broken off included. */
  readonly repetitions: number
  /** Key events since the last repetition ended, for its take. */
  readonly heard: readonly KeyEvent[]
}

interface InForce {
  readonly settings: JudgeSettings
  readonly rung: Tempo
}

/** What happened, for the page, the journal and the sound. */
export type Effect =
  /** A repetition began: the marks of the one before go. */
  | { readonly kind: 'began' }
  | { readonly kind: 'mark'; readonly slot: string; readonly mark: Mark }
  | { readonly kind: 'unmark'; readonly slot: string }
  | { readonly kind: 'stray'; readonly key: Key }
  | {
      readonly kind: 'judged'
      readonly repetition: Repetition
      readonly take: Take
      readonly inForce: InForce
    }
  | { readonly kind: 'coach'; readonly command: Command }

/** Key events kept of one repetition; far more than the longest passage needs, so that an hour of noodling stays small. */
const longestTake = 4000

export type DrillStep = readonly [Drill, readonly Effect[]]

export const beginDrill = (chunk: Chunk, settings: JudgeSettings, coach: Coach): Drill => ({
  chunk,
  settings,
  judge: beginJudge(chunk, settings),
  inForce: { settings, rung: coach.rung },
  moved: undefined,
  underWay: false,
  coach,
  repetitions: 0,
  heard: [],
})

/** The judge starts anew with other settings, after the repetition that is under way; the coach goes on. */
export const changeJudging = (drill: Drill, settings: JudgeSettings): Drill =>
  isBusy(drill) ? { ...drill, settings } : judgeAnew(drill, settings)

/**
 * The person goes back to the beginning of their own: what was begun is judged as it stands, as if
 * silence had followed, and what comes next begins anew.
 */
export const breakOff = (drill: Drill, at: Ms): DrillStep => {
  const [closed, effects] = stepDrill(drill, { kind: 'clock', at: closingTime(drill.judge) }, at)
  return [judgeAnew(closed, closed.settings), effects]
}

/** The repetition under way is dropped, as if it had not been begun: the instrument failed, not the player. */
export const dropRepetition = (drill: Drill): Drill => judgeAnew(drill, drill.settings)

const judgeAnew = (drill: Drill, settings: JudgeSettings): Drill => ({
  ...drill,
  settings,
  inForce: { settings, rung: drill.coach.rung },
  moved: undefined,
  underWay: false,
  judge: beginJudge(drill.chunk, settings),
  heard: [],
})

/**
 * A click falls at another time than was thought. Nothing that was heard is lost: a repetition under
 * way is judged by the clicks that it began with, the next one by these.
 */
export const moveClick = (drill: Drill, click: Ms): Drill => {
  const settings = { ...drill.settings, click }
  if (isStale(drill)) return { ...drill, settings }
  if (drill.underWay) return { ...drill, moved: click }
  const inForce = { ...drill.inForce, settings }
  return { ...drill, settings, inForce, moved: undefined, judge: anchorClick(drill.judge, click) }
}

/** A repetition is under way, or what was struck last may yet turn out to begin one. */
export const isBusy = ({ underWay, judge }: Drill): boolean =>
  underWay || judge.deadline !== undefined

/** Other settings are wanted than those that the judge began with. */
const isStale = (drill: Drill): boolean => drill.settings !== drill.inForce.settings

/** `at`: when what is found out is known; where it is left out, with the event. */
export const stepDrill = (before: Drill, event: JudgeEvent, at: Ms = event.at): DrillStep => {
  const drill = isStale(before) && !isBusy(before) ? changeJudging(before, before.settings) : before
  const [judge, findings] = stepJudge(drill.judge, event)
  const heard = event.kind === 'clock' ? drill.heard : [...drill.heard.slice(-longestTake), event]
  return findings.reduce<DrillStep>(
    ([now, effects], finding, i) => {
      const [next, more] = take(now, finding, { at, next: nextBeginning(findings, i) })
      return [next, [...effects, ...more]]
    },
    [{ ...drill, judge, heard }, []],
  )
}

/** When the repetition after the i-th finding began, where it has already begun. */
const nextBeginning = (findings: readonly Finding[], i: number): Ms | undefined => {
  const began = findings.slice(i + 1).find((finding) => finding.kind === 'began')
  return began?.at
}

interface Moment {
  readonly at: Ms
  readonly next: Ms | undefined
}

const take = (drill: Drill, finding: Finding, moment: Moment): DrillStep => {
  switch (finding.kind) {
    case 'began':
      return [
        { ...drill, underWay: true, heard: drill.heard.filter((e) => e.at >= finding.at) },
        [{ kind: 'began' }],
      ]
    case 'mark':
    case 'unmark':
      return [drill, [finding]]
    case 'stray':
      return [drill, [{ kind: 'stray', key: finding.key }]]
    case 'ended':
      return end(drill, finding.repetition, moment)
  }
}

const end = (drill: Drill, repetition: Repetition, { at, next }: Moment): DrillStep => {
  const [coach, commands] = stepCoach(drill.coach, coachRepetition(repetition, at))
  const isOfIt = (e: KeyEvent): boolean =>
    e.at >= repetition.start && (next === undefined || e.at < next)
  const take: Take = { events: drill.heard.filter(isOfIt) }
  const ended = { ...drill, underWay: false, coach, repetitions: drill.repetitions + 1 }
  return [
    drill.moved === undefined ? ended : moveClick(ended, drill.moved),
    [
      { kind: 'judged', repetition, take, inForce: drill.inForce },
      ...commands.map((command): Effect => ({ kind: 'coach', command })),
    ],
  ]
}
