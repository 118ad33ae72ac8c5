import type { StoreApi } from 'zustand/vanilla'
import { stepCoach, type Coach, type CoachEvent, type Command } from '@/coach/coach'
import type { Problem } from '@/coach/reasons'
import type { JudgeEvent, JudgeSettings } from '@/judge/judge'
import type { Repetition } from '@/judge/repetition'
import type { Chunk } from '@/music/chunk'
import { ms, quarterMs, type Ms } from '@/music/units'
import { createClicking } from './clicking'
import {
  beginDrill,
  breakOff,
  changeJudging,
  dropRepetition,
  isBusy,
  moveClick,
  stepDrill,
  type Drill,
  type Effect,
} from './drill'
import type { Clicks } from './followClicks'
import type { Loss } from './instrument'
import type { MarkBoard } from './markBoard'
import type { Ports } from './ports'
import { showEffect, type PracticeState } from './practiceState'
import type { Practising } from './practising'
import type { Session } from './session'
import { patternOf, type Settings } from './settings'
import { signalOf, type Signals } from './signals'
import type { TakenUp } from './takeUp'

/** Judge and coach at work on one chunk: steps them, and carries out what they say. */
export interface Drilling {
  /** A metronome that sounds goes on, at the tempo of the coach. */
  readonly begin: (practising: Practising, coach: Coach) => void
  readonly end: () => void
  readonly hear: (event: JudgeEvent) => void
  readonly tellCoach: (event: CoachEvent) => void
  /** The person's drill as it stands now. */
  readonly standing: () => TakenUp | undefined
  /** What was begun is judged as it stands. */
  readonly breakOff: () => void
  /** The keyboard is heard no more: what was begun counts for nothing. */
  readonly lose: (how: Loss) => void
  /** The judge begins anew after the present repetition, the clicks from the next one on. */
  readonly settingsChanged: () => void
  readonly toggleMetronome: () => Promise<void>
  readonly hearIt: () => Promise<void>
  readonly toggleSimulated: () => Promise<void>
  /** Gives the person's own drill back as it was, where the simulated player showed one. */
  readonly stopSimulated: () => void
}

interface Desk {
  readonly ports: Ports
  readonly session: Session
  readonly settings: StoreApi<Settings>
  readonly store: StoreApi<PracticeState | undefined>
  readonly marks: MarkBoard
  readonly signals: Signals
  /** The person's repetition was judged; whether the drill stops for a problem in it. */
  readonly onJudged: (repetition: Repetition, at: Ms, stops: boolean) => void
  /** The reach of the exercise was met, and the page says so. */
  readonly onDone: () => void
  readonly onProblem: (problem: Problem) => void
}

/** Between the press of the button and the first simulated key. */
const leadInMs = 700

const nothingSaid = { last: undefined, said: undefined } as const

export const createDrilling = (desk: Desk): Drilling => {
  const { ports, session, settings, store, marks, signals } = desk
  let practising: Practising | undefined
  let drill: Drill | undefined
  /** Where the person's own drill stands while the simulated player shows one; nothing of that is recorded. */
  let keptCoach: Coach | undefined

  const update = (part: Partial<PracticeState>): void =>
    store.setState((state) => state && { ...state, ...part }, true)

  const clicking = createClicking(
    ports.sound,
    () => patternOf(settings.getState()),
    (clicks) => {
      if (drill) drill = moveClick(drill, struck(clicks))
    },
  )
  /** When a strike on the first click comes in. The simulated player has no lag. */
  const struck = ({ first }: Clicks): Ms =>
    keptCoach ? first : ms(first + settings.getState().lagMs)
  const judging = (coach: Coach): JudgeSettings => {
    const clicks = clicking.clicks()
    const { standard, forgiveBrushed } = settings.getState()
    return {
      standard,
      forgiveBrushed,
      quarter: quarterMs(coach.rung),
      ...(clicks === undefined ? {} : { click: struck(clicks) }),
    }
  }
  const judgeAnew = (): void => {
    if (drill) drill = changeJudging(drill, judging(drill.coach))
  }

  let storing: Promise<void> | undefined
  /** What comes after a verdict waits as it does, so that no later key shows what the disk does not have. */
  const whenStored = (records: readonly Promise<void>[], show: () => void): void => {
    if (records.length === 0 && !storing) return show()
    const of = practising
    const mine = Promise.all([storing, ...records]).then(() => {
      if (storing === mine) storing = undefined
      if (practising === of) show()
    })
    storing = mine
  }

  /** Marks at once; verdict, counters and sentence when the record of them is stored. */
  const carryOut = (coach: Coach, effects: readonly Effect[], at: Ms): void => {
    if (!practising || effects.length === 0) return
    const stored: Promise<void>[] = []
    for (const effect of effects) {
      marks.take(effect)
      if (effect.kind === 'judged' && !keptCoach)
        stored.push(session.repetition({ practising, ...effect, verdictAt: at }))
      if (effect.kind !== 'coach') continue
      if (effect.command.kind === 'tempo') followTempo(coach)
      if (keptCoach) continue
      stored.push(session.command(practising, effect.command, coach.streakGoal))
      const signal = signalOf(effect.command)
      if (signal) signals.ask(signal, at)
    }
    const commands = keptCoach ? [] : commandsIn(effects)
    const isDone = commands.some(({ kind }) => kind === 'secure')
    const problem = commands.flatMap((command) =>
      command.kind === 'problem' && command.reason.kind === 'sameFlaw'
        ? [command.reason.problem]
        : [],
    )[0]
    const isRemedy = practising.remedy !== undefined
    const show = (): void => {
      store.setState((state) => state && effects.reduce(showEffect, { ...state, coach }), true)
      const judged = effects.findLast(({ kind }) => kind === 'judged')
      if (judged?.kind === 'judged' && !keptCoach)
        desk.onJudged(judged.repetition, at, problem !== undefined && !isRemedy)
      if (isDone) desk.onDone()
      else if (problem && !isRemedy) desk.onProblem(problem)
    }
    whenStored(stored, show)
  }

  const followTempo = (coach: Coach): void => {
    clicking.changeTempo(coach.rung)
    judgeAnew()
  }
  const stopMetronome = (): void => {
    clicking.stop()
    judgeAnew()
    update({ metronome: 'off' })
  }
  const toggleMetronome = async (): Promise<void> => {
    const state = store.getState()
    if (!state || !practising || !drill) return
    if (state.metronome !== 'off') return stopMetronome()
    update({ metronome: 'starting' })
    const { chunk, time } = practising
    const { rung } = drill.coach
    await ports.sound.unlock()
    const started = await clicking.start(chunk, time, rung)
    // It may have been switched off, or the drill left, while it started.
    if (store.getState()?.metronome !== 'starting' || !started) return stopMetronome()
    if (drill.coach.rung !== rung) clicking.changeTempo(drill.coach.rung)
    judgeAnew()
    update({ metronome: 'on' })
  }
  /** What was begun counts for nothing, where it was not the player's fault. */
  const drop = (): boolean => {
    if (!drill || !isBusy(drill) || keptCoach) return false
    drill = dropRepetition(drill)
    marks.clear()
    return true
  }
  // Nobody is judged by clicks that nobody hears.
  ports.sound.watch(({ kind }) => {
    const isSilent = kind === 'off' || kind === 'blocked' || kind === 'failed'
    if (!isSilent || store.getState()?.metronome !== 'on') return
    stopMetronome()
    if (kind === 'off') return
    drop()
    update({ said: { kind: 'soundLost' } })
  })

  const startSimulated = async (): Promise<void> => {
    if (!drill) return
    const { chunk, coach } = drill
    keptCoach = coach
    drill = beginDrill(chunk, judging(coach), {
      ...coach,
      trial: undefined,
      watches: [],
      streak: 0,
      recent: [],
      window: [],
    })
    marks.clear()
    update({ ...nothingSaid, simulated: true, coach: drill.coach })
    await ports.player.play(chunk, coach.rung, nextStart(chunk, coach))
    if (keptCoach === coach) stopSimulated()
  }
  /** In a moment; where the metronome sounds, when the chunk's place in the bar comes round again. */
  const nextStart = ({ barLength, ticksPerQuarter }: Chunk, { rung }: Coach): Ms => {
    const soon = ports.now() + leadInMs
    const clicks = clicking.clicks()
    if (!clicks) return ms(soon)
    const bar = (barLength / ticksPerQuarter) * quarterMs(rung)
    return ms(clicks.first + Math.max(0, Math.ceil((soon - clicks.first) / bar)) * bar)
  }
  const stopSimulated = (): void => {
    if (!keptCoach || !drill) return
    const coach = keptCoach
    const { rung } = drill.coach
    keptCoach = undefined
    ports.player.stop()
    drill = beginDrill(drill.chunk, judging(coach), coach)
    if (rung !== coach.rung) followTempo(coach)
    marks.clear()
    update({ ...nothingSaid, simulated: false, coach })
  }

  return {
    settingsChanged: () => {
      clicking.changePattern()
      judgeAnew()
    },
    standing: () => practising && drill && { practising, coach: keptCoach ?? drill.coach },
    toggleMetronome,
    stopSimulated,
    begin: (next, coach) => {
      practising = next
      marks.clear()
      clicking.changeTempo(coach.rung)
      drill = beginDrill(next.chunk, judging(coach), coach)
    },
    end: () => {
      keptCoach = undefined
      ports.player.stop()
      ports.sound.quiet()
      clicking.stop()
      drill = undefined
      practising = undefined
      marks.clear()
    },
    hear: (event) => {
      if (!drill) return
      const [next, effects] = stepDrill(drill, event)
      drill = next
      carryOut(next.coach, effects, event.at)
    },
    tellCoach: (event) => {
      if (!drill) return
      const [coach, commands] = stepCoach(drill.coach, event)
      drill = { ...drill, coach }
      if (commands.length === 0) return whenStored([], () => update({ coach }))
      const effects = commands.map((command): Effect => ({ kind: 'coach', command }))
      carryOut(coach, effects, event.at)
    },
    breakOff: () => {
      if (!drill) return
      stopSimulated()
      const [next, effects] = breakOff(drill, ports.now())
      drill = next
      carryOut(next.coach, effects, ports.now())
    },
    lose: (how) => {
      if (drop()) update({ said: { kind: how } })
    },
    hearIt: async () => {
      if (!drill) return
      if (store.getState()?.hearing) return ports.sound.quiet()
      update({ hearing: true })
      const { chunk, coach } = drill
      await ports.sound.unlock()
      if (drill) await ports.sound.hearChunk(chunk, coach.rung)
      update({ hearing: false })
    },
    toggleSimulated: () => (keptCoach ? Promise.resolve(stopSimulated()) : startSimulated()),
  }
}

const commandsIn = (effects: readonly Effect[]): readonly Command[] =>
  effects.flatMap((effect) => (effect.kind === 'coach' ? [effect.command] : []))
