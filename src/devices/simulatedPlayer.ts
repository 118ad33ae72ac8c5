import type { Take } from '@/music/keyEvent'
import { ms, type Ms } from '@/music/units'
import type { Device } from './devices'
import { createHolding } from './holding'

/** The clock that the simulated player lives by: `performance.now`, `setTimeout`, `clearTimeout`. */
export interface PlayerClock<Timer> {
  readonly now: () => number
  readonly setTimer: (run: () => void, delayMs: number) => Timer
  readonly clearTimer: (timer: Timer) => void
}

/** Plays a planned take in real time, as if someone sat at the keyboard: see simulatedTake.ts. */
export interface SimulatedPlayer extends Device {
  /** The take's time 0 falls on `at`, now when left out. Resolves at the take's end, or when stopped. */
  readonly start: (take: Take, at?: Ms) => Promise<void>
  /** Lifts all keys at once. */
  readonly stop: () => void
}

export const createSimulatedPlayer = <Timer>(clock: PlayerClock<Timer>): SimulatedPlayer => {
  const holding = createHolding()
  let current: Run<Timer> | undefined
  const stop = (): void => {
    if (!current) return
    const { timer, end } = current
    current = undefined
    if (timer !== undefined) clock.clearTimer(timer)
    holding.letGoAll(ms(clock.now()))
    end()
  }
  const play = (run: Run<Timer>, take: Take, at: Ms, from: number): void => {
    let i = from
    for (let event = take.events[i]; event; event = take.events[++i]) {
      const due = ms(Math.max(at + event.at, run.begun))
      const wait = due - clock.now()
      // The event that the timer was set for is played even where the timer came a little early.
      if (wait > 0 && !(i === from && run.timer !== undefined)) {
        run.timer = clock.setTimer(() => play(run, take, at, i), wait)
        return
      }
      holding.feed('player', { ...event, at: due })
      // Whoever heard it may have stopped the player, or started another take.
      if (run !== current) return
    }
    run.timer = undefined
    stop()
  }
  return {
    listen: holding.listen,
    stop,
    // A human hand may come a little before the beat: not before the moment it was asked to play.
    start: (take, at = ms(clock.now() - Math.min(0, take.events[0]?.at ?? 0))) =>
      new Promise((end) => {
        stop()
        const run: Run<Timer> = { begun: ms(clock.now()), end, timer: undefined }
        current = run
        play(run, take, at, 0)
      }),
  }
}

interface Run<Timer> {
  /** No key comes before it was asked for. */
  readonly begun: Ms
  readonly end: () => void
  timer: Timer | undefined
}
