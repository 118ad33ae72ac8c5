import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { key, ms, tempo } from '@/music/units'
import { createSound } from '@/sound/createSound'
import type { Beat, MetronomeSettings, SoundState } from '@/sound/sound'
import { writeChunk } from '../support/chunks'
import { installFakeAudio } from '../support/fakeAudio'

const settings: MetronomeSettings = {
  tempo: tempo(120),
  time: { beats: 3, beatType: 4 },
  countInBars: 1,
}
const note = { key: key(60), at: 0, length: 1, velocity: 64 }

const setUp = (options: { blocked?: boolean } = {}) => {
  const audio = installFakeAudio(vi.stubGlobal, options)
  vi.stubGlobal('fetch', async () => new Response(new Uint8Array(4)))
  const sound = createSound()
  const states: SoundState[] = []
  sound.watch((state) => states.push(state))
  return { audio, sound, states }
}
/** Both clocks go on together, in steps shorter than the metronome's wakings. */
const pass = async (audio: ReturnType<typeof installFakeAudio>, seconds: number) => {
  for (let t = 0; t < seconds - 1e-9; t += 0.025) {
    audio.move(0.025)
    await vi.advanceTimersByTimeAsync(25)
  }
}
/** The result of something that waits for timers. */
const settle = async <T>(work: Promise<T>): Promise<T> => {
  await vi.advanceTimersByTimeAsync(3000)
  return work
}

beforeEach(() => void vi.useFakeTimers())
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

test('nothing is opened before sound is asked for', async () => {
  const { audio, sound, states } = setUp()
  await sound.prepare([key(60)])
  expect(audio.opened()).toBe(0)
  expect(states).toEqual([{ kind: 'asleep' }])
  await sound.unlock()
  expect(audio.opened()).toBe(1)
  expect(states).toContainEqual({ kind: 'ready' })
})

test('the metronome hands each click to the audio clock ahead of its time, evenly', async () => {
  const { audio, sound } = setUp()
  const beats: Beat[] = []
  sound.watchBeats((beat) => beats.push(beat))
  const started = await settle(sound.startMetronome(settings))
  await pass(audio, 4)
  sound.stopMetronome()
  const times = audio.started.map((click) => click.at)
  expect(times.length).toBeGreaterThanOrEqual(8)
  for (const [i, at] of times.entries()) expect(at).toBeCloseTo((times[0] ?? 0) + i * 0.5, 9)
  // The first beat comes after three beats of count-in, told on the page's clock, 1 s ahead.
  expect(started?.firstBeat).toBeCloseTo(((times[3] ?? 0) + 1) * 1000, 6)
  expect(beats.slice(0, 5).map((beat) => [beat.countIn, beat.accent])).toEqual([
    [true, 'strong'],
    [true, 'weak'],
    [true, 'weak'],
    [false, 'strong'],
    [false, 'weak'],
  ])
  expect(beats[3]?.at).toBe(started?.firstBeat)
})

test('stopped, it takes back the clicks that it has handed over', async () => {
  const { audio, sound } = setUp()
  await settle(sound.startMetronome({ ...settings, tempo: tempo(300) }))
  sound.stopMetronome()
  expect(audio.started.length).toBeGreaterThan(0)
  expect(audio.started.every((click) => click.stopAt === 1)).toBe(true)
  const before = audio.started.length
  await pass(audio, 1)
  expect(audio.started).toHaveLength(before)
})

test('another tempo takes hold at the next click, whose time it gives', async () => {
  const { audio, sound } = setUp()
  await settle(sound.startMetronome({ ...settings, countInBars: 0 }))
  await pass(audio, 1)
  const change = sound.changeTempo(tempo(60))
  const handedOver = audio.started.length
  await pass(audio, 3)
  const [next = 0, after = 0] = audio.started.slice(handedOver).map((click) => click.at)
  expect(change?.firstBeat).toBeCloseTo((next + 1) * 1000, 6)
  expect(after - next).toBeCloseTo(1, 9)
  sound.stopMetronome()
  expect(sound.changeTempo(tempo(90))).toBeUndefined()
})

test('“hear it” plays the chunk in time from near samples, and ends when it has sounded', async () => {
  const { audio, sound } = setUp()
  let ended = false
  void sound.hearChunk(writeChunk('C4 D4+A4'), tempo(60)).then(() => (ended = true))
  await vi.advanceTimersByTimeAsync(100)
  const [first, second, third] = audio.started
  expect((second?.at ?? 0) - (first?.at ?? 0)).toBeCloseTo(1, 9)
  expect(third?.at).toBe(second?.at)
  expect(audio.started.map((one) => one.rate)).toEqual([1, 2 ** (-1 / 12), 1])
  await pass(audio, 1.5)
  expect(ended).toBe(false)
  await pass(audio, 2)
  expect(ended).toBe(true)
})

test('a take is heard in its own time; with sound off nothing of it sounds', async () => {
  const { audio, sound } = setUp()
  const take = {
    events: [
      { kind: 'down', key: key(60), velocity: 100, at: ms(900) },
      { kind: 'up', key: key(60), at: ms(1000) },
      { kind: 'down', key: key(62), velocity: 30, at: ms(1270) },
      { kind: 'up', key: key(62), at: ms(1300) },
    ],
  } as const
  sound.setOn(false)
  await settle(sound.hearTake(take))
  expect(audio.started).toEqual([])
  sound.setOn(true)
  void sound.hearTake(take)
  await vi.advanceTimersByTimeAsync(100)
  const [first, second] = audio.started
  expect((second?.at ?? 0) - (first?.at ?? 0)).toBeCloseTo(0.37, 9)
})

test('quiet ends what is being heard, also while it still loads', async () => {
  const { audio, sound } = setUp()
  const loading = sound.hear([note])
  sound.quiet()
  await settle(loading)
  expect(audio.started).toEqual([])
  const playing = sound.hear([note])
  await vi.advanceTimersByTimeAsync(100)
  expect(audio.started).toHaveLength(1)
  sound.quiet()
  await playing
  expect(audio.started[0]?.stopAt).toBeLessThan(1.2)
})

test('switched off, nothing sounds, and what sounded stops', async () => {
  const { audio, sound, states } = setUp()
  await settle(sound.startMetronome(settings))
  const hearing = sound.hear([note])
  await vi.advanceTimersByTimeAsync(100)
  sound.setOn(false)
  await hearing
  const before = audio.started.length
  expect(before).toBeGreaterThan(1)
  expect(audio.started.every((one) => one.stopAt < 1.2)).toBe(true)
  expect(await settle(sound.startMetronome(settings))).toBeUndefined()
  await settle(sound.hear([note]))
  await pass(audio, 1)
  expect(audio.started).toHaveLength(before)
  expect(states.at(-1)).toEqual({ kind: 'off' })
  sound.setOn(true)
  expect(states.at(-1)).toEqual({ kind: 'ready' })
})

test('a signal wakes nothing, sounds once when sound is awake, and is taken back without a crack', async () => {
  const { audio, sound } = setUp()
  sound.signal('up')
  expect(audio.opened()).toBe(0)
  await settle(sound.unlock())
  const stop = sound.signal('up')
  expect(audio.started).toHaveLength(1)
  expect(audio.started[0]?.at).toBeCloseTo(1.02, 6)
  stop()
  expect(audio.started[0]?.stopAt).toBeCloseTo(1.075, 6)
  sound.setOn(false)
  sound.signal('up')
  expect(audio.started).toHaveLength(1)
})

test('the next signal takes the place of the one before', async () => {
  const { audio, sound } = setUp()
  await settle(sound.unlock())
  sound.signal('streak')
  sound.signal('done')
  expect(audio.started).toHaveLength(2)
  expect(audio.started.map((one) => Number.isFinite(one.stopAt))).toEqual([true, false])
})

test('signals and metronome are as loud as each is set', async () => {
  const { audio, sound } = setUp()
  sound.setVolume('signals', 0)
  await settle(sound.startMetronome(settings))
  await pass(audio, 0.5)
  const loudness = (): number | undefined => audio.started.at(-1)?.loudness()
  expect(loudness()).toBeCloseTo(0.8, 6)
  sound.signal('up')
  expect(loudness()).toBe(0)
  sound.setVolume('metronome', 0)
  sound.setVolume('signals', 0.5)
  sound.signal('down')
  expect(loudness()).toBeCloseTo(0.5, 6)
  sound.stopMetronome()
})

test('where the browser wants a gesture first, the state says so and nothing waits for ever', async () => {
  const { sound, states } = setUp({ blocked: true })
  expect(await settle(sound.startMetronome(settings))).toBeUndefined()
  await settle(sound.hear([note]))
  expect(states.at(-1)).toEqual({ kind: 'blocked' })
})

test('a browser without sound is a state, not an error', async () => {
  vi.stubGlobal('AudioContext', undefined)
  const sound = createSound()
  const states: SoundState[] = []
  sound.watch((state) => states.push(state))
  await sound.unlock()
  expect(await sound.startMetronome(settings)).toBeUndefined()
  await sound.hear([note])
  expect(states.at(-1)).toMatchObject({ kind: 'failed' })
})

test('samples that cannot be fetched are a state, and are tried again the next time', async () => {
  const { audio, sound, states } = setUp()
  vi.stubGlobal('fetch', async () => new Response('', { status: 503 }))
  await settle(sound.hear([note]))
  expect(states.at(-1)).toMatchObject({ kind: 'failed' })
  expect(audio.started).toEqual([])
  vi.stubGlobal('fetch', async () => new Response(new Uint8Array(4)))
  void sound.hear([note])
  await vi.advanceTimersByTimeAsync(100)
  expect(audio.started).toHaveLength(1)
  expect(states.at(-1)).toEqual({ kind: 'ready' })
})

test('silent bars are told and not heard, and come and go while the metronome runs', async () => {
  const { audio, sound } = setUp()
  const beats: Beat[] = []
  sound.watchBeats((beat) => beats.push(beat))
  const turns = { sounding: 1, silent: 1 }
  await settle(sound.startMetronome({ ...settings, turns }))
  // A bar lasts a second and a half: the count-in, a bar that sounds, a silent one, and half a bar.
  await pass(audio, 5)
  const heard = beats.filter(({ silent }) => !silent).length
  expect(audio.started).toHaveLength(heard)
  expect(new Set(beats.filter(({ silent }) => silent).map(({ bar }) => bar))).toEqual(new Set([1]))
  sound.changePattern({ perBeat: 2 })
  await pass(audio, 3)
  sound.stopMetronome()
  expect(beats.filter(({ bar, silent }) => bar > 2 && silent)).toEqual([])
  const gaps = beats.slice(1).map(({ at }, i) => Math.round(at - (beats[i]?.at ?? 0)))
  expect(new Set(gaps)).toEqual(new Set([500]))
  expect(audio.started.length).toBeGreaterThan(beats.length - 3)
})
