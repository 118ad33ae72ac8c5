import { afterEach, expect, test, vi } from 'vitest'
import type { App } from '@/app/app'
import { quarterMs } from '@/music/units'
import { createSound } from '@/sound/createSound'
import { keysOf, melody, sampleOf, sitDown } from '../support/atTheDesk'
import { createDice } from '../judge/player'
import { installFakeAudio } from '../support/fakeAudio'
import { createDesk } from '../support/fakePorts'

afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

const minute = 60_000
/** The metronome wakes as often. */
const stepMs = 50

/** The drill with the real metronome, on sound hardware whose clock runs fast by `skew`. */
const setUp = async ({ skew, follows }: { skew: number; follows: boolean }) => {
  const dice = createDice(7)
  const trueTime = (audio: number): number => ((audio - 1) * 1000) / (1 + skew)
  // A reading is half a millisecond off, one in twenty far more: as browsers give them.
  const heardAt = (audio: number): number =>
    trueTime(audio) + (dice() < 0.05 ? 60 * (dice() - 0.5) : dice() - 0.5)
  const audio = installFakeAudio(vi.stubGlobal, { heardAt })
  const desk = createDesk([sampleOf('First', melody)])
  const sound = createSound()
  const app = await sitDown({
    ...desk,
    ports: { ...desk.ports, sound: follows ? sound : { ...sound, watchBeats: () => () => {} } },
  })
  app.changeSettings({ standard: 'time' })
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval', 'setTimeout', 'clearTimeout'] })
  /** What has passed on the desk passes on the sound hardware and for the timers. */
  let passed = Number(desk.ports.now())
  const catchUp = (): void => {
    const by = desk.ports.now() - passed
    passed += by
    audio.move((by / 1000) * (1 + skew))
    vi.advanceTimersByTime(by)
  }
  const passUntil = (at: number): void => {
    while (desk.ports.now() < at) {
      desk.pass(Math.min(stepMs, at - desk.ports.now()))
      catchUp()
    }
  }
  let next = 0
  /** When the next click that was handed to the hardware is really heard. */
  const nextClick = (): number => {
    while (audio.started.length <= next) passUntil(desk.ports.now() + stepMs)
    return trueTime(audio.started[next++]?.at ?? 0)
  }
  const starting = app.practice.toggleMetronome()
  for (let i = 0; i < 20; i++) {
    await vi.advanceTimersByTimeAsync(0)
    passUntil(desk.ports.now() + stepMs)
  }
  await starting
  return { app, desk, nextClick, passUntil, catchUp }
}

/** Plays the melody again and again, each key exactly with a click as it is heard. */
const playFor = async (
  until: number,
  { desk, nextClick, passUntil, catchUp }: Awaited<ReturnType<typeof setUp>>,
): Promise<void> => {
  while (desk.ports.now() < until) {
    for (const key of keysOf(melody)) {
      passUntil(nextClick())
      desk.strike(key)
      catchUp()
    }
    for (let rest = 0; rest < 2; rest++) passUntil(nextClick())
    await Promise.resolve()
  }
}

const repetitions = (app: App) =>
  app.session.store.getState().events.flatMap((e) => (e.kind === 'repetition' ? [e] : []))
const flaws = (app: App): string[] => repetitions(app).flatMap((r) => r.flaws.map((f) => f.kind))

/** How far the click by which it was judged lay from the first key, which was struck on a click. */
const clickErrors = (app: App): number[] =>
  repetitions(app).map(({ clickMs = NaN, rung }) => {
    const gap = quarterMs(rung)
    return Math.abs(clickMs - Math.round(clickMs / gap) * gap)
  })

test.each([100e-6, -100e-6])(
  'who plays on the clicks for an hour is never early or late, though the clocks run apart by %s',
  { timeout: 60_000 },
  async (skew) => {
    const rig = await setUp({ skew, follows: true })
    await playFor(60 * minute, rig)
    const all = repetitions(rig.app)
    expect(all.length).toBeGreaterThan(900)
    expect(flaws(rig.app)).toEqual([])
    expect(all.every(({ verdict }) => verdict === 'clean')).toBe(true)
    expect(all.every(({ clickMs }) => clickMs !== undefined)).toBe(true)
    expect(Math.max(...clickErrors(rig.app))).toBeLessThan(1)
  },
)

test(
  'did the judge go by the first click alone, they would be called late within half an hour',
  { timeout: 60_000 },
  async () => {
    const rig = await setUp({ skew: -100e-6, follows: false })
    await playFor(30 * minute, rig)
    expect(flaws(rig.app).length).toBeGreaterThan(0)
    expect(new Set(flaws(rig.app))).toEqual(new Set(['late']))
    expect(Math.max(...clickErrors(rig.app))).toBeGreaterThan(100)
  },
)
