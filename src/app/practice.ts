import { createStore, type StoreApi } from 'zustand/vanilla'
import { stepCoach, type Coach, type CoachEvent } from '@/coach/coach'
import { explain } from '@/coach/reasons'
import { describeRepetition } from '@/judge/describeFlaw'
import type { JudgeEvent, JudgeSettings } from '@/judge/judge'
import { formatBeats } from '@/music/beat'
import type { Chunk } from '@/music/chunk'
import { nameKey } from '@/music/spelling'
import { ms, quarterMs, type Key, type Ms } from '@/music/units'
import {
  beginDrill,
  changeJudging,
  dropRepetition,
  isBusy,
  moveClick,
  stepDrill,
  type Drill,
  type Effect,
} from './drill'
import { clicksFrom, followClicks, type Clicks } from './followClicks'
import type { Instrument } from './instrument'
import { createMarkBoard, type MarkBoard } from './markBoard'
import type { Ports, Stop } from './ports'
import { showEffect, type PracticeState, type Speech } from './practiceState'
import type { Practising } from './practising'
import type { Session } from './session'
import type { Settings } from './settings'

/** The drill at the instrument: hears every key, shows what the judge and the coach find, keeps the record. */
export interface Practice {
  /** `undefined` while nothing is drilled. */
  readonly store: StoreApi<PracticeState | undefined>
  readonly marks: MarkBoard
  readonly begin: (practising: Practising, coach: Coach) => void
  readonly end: () => void
  readonly goOn: () => void
  /** What the space bar does: goes on after a pause, else starts or stops the metronome. */
  readonly goOnOrMetronome: () => void
  readonly toggleMetronome: () => Promise<void>
  /** Plays the chunk at the present tempo, or stops playing it. */
  readonly hear: () => Promise<void>
  readonly raise: () => void
  readonly lower: () => void
  /** Lets the simulated player show a drill, or stops it; any key of the person stops it too. */
  readonly toggleSimulated: () => Promise<void>
  /** The standard or the forgiveness changed: the judge starts anew after the present repetition. */
  readonly settingsChanged: () => void
}

/** Between the press of the button and the first simulated key. */
const breathMs = 700

export const createPractice = (
  ports: Ports,
  instrument: Instrument,
  session: Session,
  settings: StoreApi<Settings>,
): Practice => {
  const store = createStore<PracticeState | undefined>(() => undefined)
  const marks = createMarkBoard()
  let practising: Practising | undefined
  let drill: Drill | undefined
  /** The clicks of the metronome, while it sounds. */
  let clicks: Clicks | undefined
  /** Where the person's own drill stands while the simulated player shows one; nothing of that is recorded. */
  let keptCoach: Coach | undefined
  let stopListening: Stop = () => {}

  const update = (part: Partial<PracticeState>): void =>
    store.setState((state) => state && { ...state, ...part }, true)

  const judging = (coach: Coach): JudgeSettings => ({
    standard: settings.getState().standard,
    forgiveBrushed: settings.getState().forgiveBrushed,
    quarter: quarterMs(coach.rung),
    ...(clicks === undefined ? {} : { click: struck(clicks) }),
  })
  /** When a strike on the first click comes in. The simulated player has no lag. */
  const struck = ({ first }: Clicks): Ms =>
    keptCoach ? first : ms(first + settings.getState().lagMs)
  const judgeAnew = (): void => {
    if (drill) drill = changeJudging(drill, judging(drill.coach))
  }

  const hear = (event: JudgeEvent): void => {
    if (!drill) return
    const [next, effects] = stepDrill(drill, event)
    drill = next
    if (effects.length > 0) carryOut(next.coach, effects, event.at)
  }
  const tellCoach = (event: CoachEvent): void => {
    if (!drill) return
    const [coach, commands] = stepCoach(drill.coach, event)
    drill = { ...drill, coach }
    carryOut(
      coach,
      commands.map((command): Effect => ({ kind: 'coach', command })),
      event.at,
    )
  }

  /** Marks at once; verdict, counters and sentence when the record of them is stored. */
  const carryOut = (coach: Coach, effects: readonly Effect[], at: Ms): void => {
    if (!practising) return
    const { time, signature } = practising
    const name = (k: Key): string => nameKey(k, signature)
    const speech: Speech = {
      explain: (reason) => explain(reason, (t) => formatBeats(t, time), name),
      describe: (repetition) => describeRepetition(repetition, name),
    }
    const stored: Promise<void>[] = []
    for (const effect of effects) {
      marks.take(effect)
      if (effect.kind === 'judged' && !keptCoach)
        stored.push(session.repetition({ practising, ...effect, verdictAt: at }))
      if (effect.kind !== 'coach') continue
      if (!keptCoach) stored.push(session.command(practising, effect.command))
      if (effect.command.kind === 'tempo') followTempo(coach)
    }
    const show = (): void =>
      store.setState(
        (state) => state && effects.reduce(showEffect(speech), { ...state, coach }),
        true,
      )
    if (stored.length === 0) show()
    else void Promise.all(stored).then(show)
  }

  const followTempo = (coach: Coach): void => {
    const changed = clicks && ports.sound.changeTempo(coach.rung)
    clicks = changed && practising && clicksFrom(changed.firstBeat, practising.time, coach.rung)
    judgeAnew()
  }
  ports.sound.watchBeats(({ at }) => {
    if (!clicks || !drill) return
    clicks = followClicks(clicks, at)
    drill = moveClick(drill, struck(clicks))
  })

  const stopMetronome = (): void => {
    ports.sound.stopMetronome()
    clicks = undefined
    judgeAnew()
    update({ metronome: 'off' })
  }
  const toggleMetronome = async (): Promise<void> => {
    const state = store.getState()
    if (!state || !practising) return
    if (state.metronome !== 'off') return stopMetronome()
    update({ metronome: 'starting' })
    const { chunk, time } = practising
    await ports.sound.unlock()
    const started = await ports.sound.startMetronome({
      tempo: drill?.coach.rung ?? state.coach.rung,
      time,
      countInBars: 1,
      barOffset: chunk.barOffset / chunk.ticksPerQuarter,
    })
    // It may have been switched off, or the drill left, while it started.
    if (store.getState()?.metronome !== 'starting' || !started) return stopMetronome()
    clicks = clicksFrom(started.firstBeat, time, drill?.coach.rung ?? state.coach.rung)
    judgeAnew()
    update({ metronome: 'on' })
  }

  const startSimulated = async (): Promise<void> => {
    if (!drill) return
    const { chunk, coach } = drill
    keptCoach = coach
    drill = beginDrill(chunk, judging(coach), { ...coach, streak: 0, recent: [], window: [] })
    marks.clear()
    update({
      simulated: true,
      coach: drill.coach,
      last: undefined,
      verdict: undefined,
      said: undefined,
    })
    await ports.player.play(chunk, coach.rung, nextStart(chunk, coach))
    if (keptCoach === coach) stopSimulated()
  }
  /** In a moment; where the metronome sounds, when the chunk's place in the bar comes round again. */
  const nextStart = ({ barLength, ticksPerQuarter }: Chunk, { rung }: Coach): Ms => {
    const soon = ports.now() + breathMs
    if (!clicks) return ms(soon)
    const bar = (barLength / ticksPerQuarter) * quarterMs(rung)
    return ms(clicks.first + Math.max(0, Math.ceil((soon - clicks.first) / bar)) * bar)
  }
  /** Gives the person's own drill back as it was. */
  const stopSimulated = (): void => {
    if (!keptCoach || !drill) return
    const coach = keptCoach
    const { rung } = drill.coach
    keptCoach = undefined
    ports.player.stop()
    drill = beginDrill(drill.chunk, judging(coach), coach)
    if (rung !== coach.rung) followTempo(coach)
    marks.clear()
    update({ simulated: false, coach, last: undefined, verdict: undefined, said: undefined })
  }

  const loseKeyboard = (): void => {
    if (!drill || !isBusy(drill) || keptCoach) return
    drill = dropRepetition(drill)
    marks.clear()
    update({ said: { kind: 'unplugged' } })
  }

  const end = (): void => {
    stopListening()
    keptCoach = undefined
    ports.player.stop()
    ports.sound.quiet()
    ports.sound.stopMetronome()
    clicks = undefined
    drill = undefined
    practising = undefined
    marks.clear()
    store.setState(() => undefined, true)
  }

  const goOn = (): void => {
    tellCoach({ kind: 'goOn', at: ports.now() })
    update({ said: undefined })
  }

  return {
    store,
    marks,
    end,
    goOn,
    toggleMetronome,
    begin: (next, coach) => {
      end()
      practising = next
      drill = beginDrill(next.chunk, judging(coach), coach)
      store.setState(() => ({ coach, metronome: 'off', hearing: false, simulated: false }), true)
      ports.computerKeys.reach(next.chunk.onsets.flatMap(({ notes }) => notes.map((n) => n.key)))
      const stops = [
        instrument.listen((event, who) => {
          if (who === 'person' && event.kind === 'down') stopSimulated()
          hear(event)
        }),
        instrument.watchUnplugged(loseKeyboard),
        ports.everyMoment(() => hear({ kind: 'clock', at: ports.now() })),
      ]
      stopListening = () => stops.forEach((stop) => stop())
    },
    goOnOrMetronome: () => {
      if (store.getState()?.coach.paused) goOn()
      else void toggleMetronome()
    },
    hear: async () => {
      if (!practising || !drill) return
      if (store.getState()?.hearing) return ports.sound.quiet()
      update({ hearing: true })
      await ports.sound.unlock()
      if (drill) await ports.sound.hearChunk(drill.chunk, drill.coach.rung)
      update({ hearing: false })
    },
    raise: () => tellCoach({ kind: 'raise', at: ports.now() }),
    lower: () => tellCoach({ kind: 'lower', at: ports.now() }),
    toggleSimulated: () => (keptCoach ? Promise.resolve(stopSimulated()) : startSimulated()),
    settingsChanged: judgeAnew,
  }
}
