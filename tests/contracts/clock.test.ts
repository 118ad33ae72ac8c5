import { describe, expect, test } from 'vitest'
import type { PlayerClock } from '@/devices/simulatedPlayer'
import { createHandClock } from '../support/handClock'

interface Rig {
  readonly clock: PlayerClock<unknown>
  readonly wait: (forMs: number) => Promise<void>
}

const handRig = (): Rig => {
  const clock = createHandClock(500)
  return {
    clock: { ...clock, clearTimer: (id) => clock.clearTimer(Number(id)) },
    wait: async (t) => clock.move(t),
  }
}
/** What the page gives to the simulated player. */
const realRig = (): Rig => ({
  clock: {
    now: () => performance.now(),
    setTimer: (run, delayMs) => setTimeout(run, delayMs),
    clearTimer: (id) => clearTimeout(id as NodeJS.Timeout),
  },
  wait: (forMs) => new Promise((resolve) => setTimeout(resolve, forMs)),
})

describe.each([
  ['the clock moved by hand', handRig],
  ['the real clock', realRig],
])('%s', (_, setUp) => {
  test('timers run in the order of their times, none early, none before the caller has gone on', async () => {
    const { clock, wait } = setUp()
    const ran: [string, number][] = []
    const begun = clock.now()
    clock.setTimer(() => ran.push(['late', clock.now() - begun]), 40)
    clock.setTimer(() => ran.push(['at once', clock.now() - begun]), 0)
    clock.setTimer(() => ran.push(['soon', clock.now() - begun]), 15)
    expect(ran).toEqual([])
    await wait(80)
    expect(ran.map(([name]) => name)).toEqual(['at once', 'soon', 'late'])
    // Timers count whole milliseconds and may come one early by the finer clock.
    for (const [i, due] of [0, 15, 40].entries())
      expect(ran[i]?.[1]).toBeGreaterThanOrEqual(due - 1)
    expect(clock.now() - begun).toBeGreaterThanOrEqual(79)
  })

  test('a cleared timer does not run, nor one cleared by another', async () => {
    const { clock, wait } = setUp()
    const ran: string[] = []
    const first = clock.setTimer(() => ran.push('first'), 5)
    const third = clock.setTimer(() => ran.push('third'), 30)
    clock.setTimer(() => clock.clearTimer(third), 10)
    clock.clearTimer(first)
    await wait(50)
    expect(ran).toEqual([])
  })
})
