import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { WebMidi } from 'webmidi'
import type { MidiState } from '@/devices/devices'
import { createMidiKeyboard } from '@/devices/midiKeyboard'
import type { KeyEvent } from '@/music/keyEvent'
import { installFakeMidi, type FakeMidi, type FakeMidiOptions } from '../support/fakeMidiAccess'

/** The real webmidi over a fake MIDIAccess. */
const setUp = (options: FakeMidiOptions = { inputs: ['Stage 88'] }) => {
  const midi = installFakeMidi(options)
  const keyboard = createMidiKeyboard()
  const heard: KeyEvent[] = []
  const states: MidiState[] = []
  keyboard.listen((event) => heard.push(event))
  keyboard.watch((state) => states.push(state))
  return { midi, keyboard, heard, states }
}
const press = (midi: FakeMidi, name: string, key: number, at: number): void =>
  midi.send(name, [0x90, key, 64], at)

const inShort = (events: readonly KeyEvent[]): string =>
  events
    .map((e) => (e.kind === 'pedal' ? `${e.pedal}${e.value}` : `${e.kind}${e.key}`) + `@${e.at}`)
    .join(' ')
const marks = { there: '', unplugged: ' (gone)', taken: ' (taken)' } as const
const inputsIn = (state: MidiState | undefined): string =>
  state?.kind === 'ready'
    ? state.inputs.map(({ name, standing }) => `${name}${marks[standing]}`).join(', ')
    : `${state?.kind}`

afterEach(() => {
  vi.useRealTimers()
})

beforeEach(async () => {
  // What the library looks for before it takes Node for a browser.
  vi.stubGlobal('navigator', {})
  vi.stubGlobal('window', globalThis)
  // The library is one for the whole process: as it was before its first use.
  await WebMidi.disable()
})

test('keys come with their raw velocity and the time stamp of the message', async () => {
  const { midi, keyboard, heard } = setUp()
  await keyboard.connect()
  midi.send('Stage 88', [0x90, 60, 1], 1000.25)
  midi.send('Stage 88', [0x90, 60, 0], 1200.5)
  midi.send('Stage 88', [0x93, 61, 127], 1300)
  midi.send('Stage 88', [0x83, 61, 40], 1400)
  expect(heard).toEqual([
    { kind: 'down', key: 60, velocity: 1, at: 1000.25 },
    { kind: 'up', key: 60, at: 1200.5 },
    { kind: 'down', key: 61, velocity: 127, at: 1300 },
    { kind: 'up', key: 61, at: 1400 },
  ])
})

// MIDI 1.0, control change numbers: 64 damper, 66 sostenuto, 67 soft.
test('each pedal comes as itself, with every value in between and the time stamp of the message', async () => {
  const { midi, keyboard, heard } = setUp()
  await keyboard.connect()
  keyboard.transpose(12)
  for (const [i, controller] of [67, 66, 64].entries())
    for (const [j, value] of [127, 63, 0].entries())
      midi.send('Stage 88', [0xb2, controller, value], 100 * i + j + 0.5)
  expect(inShort(heard)).toBe(
    'soft127@0.5 soft63@1.5 soft0@2.5 ' +
      'sostenuto127@100.5 sostenuto63@101.5 sostenuto0@102.5 ' +
      'sustain127@200.5 sustain63@201.5 sustain0@202.5',
  )
})

test('a pedal that is down when the keyboard goes is up, so that no command hangs', async () => {
  const { midi, keyboard, heard } = setUp()
  await keyboard.connect()
  midi.send('Stage 88', [0xb0, 67, 127], 5)
  await midi.pull('Stage 88')
  expect(
    heard.map((e) => (e.kind === 'pedal' ? `${e.pedal}${e.value}` : `${e.kind}${e.key}`)),
  ).toEqual(['soft127', 'soft0'])
})

test('before access is asked for the state is asking, then the inputs are listed once each', async () => {
  const { keyboard, states } = setUp({ inputs: ['Stage 88', 'Small 25'] })
  expect(states).toEqual([{ kind: 'asking' }])
  await keyboard.connect()
  expect(inputsIn(states.at(-1))).toBe('Stage 88, Small 25')
})

test('no Web MIDI, a refusal and no device are states', async () => {
  const absent = setUp({ absent: true })
  await absent.keyboard.connect()
  expect(absent.states.map((state) => state.kind)).toEqual(['unsupported', 'unsupported'])

  const denied = setUp({ denied: true })
  await denied.keyboard.connect()
  expect(denied.states.at(-1)).toEqual({ kind: 'denied' })

  const empty = setUp({})
  await empty.keyboard.connect()
  expect(empty.states.at(-1)).toEqual({ kind: 'ready', inputs: [], chosen: 'all' })
})

test('after a refusal the person may allow it and connect again', async () => {
  const { midi, keyboard, states } = setUp({ inputs: ['Stage 88'], denied: true })
  await keyboard.connect()
  midi.allow()
  await keyboard.connect()
  expect(inputsIn(states.at(-1))).toBe('Stage 88')
})

test('an input plugged later is heard', async () => {
  const { midi, keyboard, heard, states } = setUp({})
  await keyboard.connect()
  await midi.plug('Stage 88')
  expect(inputsIn(states.at(-1))).toBe('Stage 88')
  press(midi, 'Stage 88', 60, 5)
  expect(inShort(heard)).toBe('down60@5')
})

test('a pulled input lifts its keys and pedals, and is heard again when it is plugged in again', async () => {
  const { midi, keyboard, heard, states } = setUp()
  await keyboard.connect()
  press(midi, 'Stage 88', 60, 5)
  midi.send('Stage 88', [0xb0, 64, 127], 6)
  await midi.pull('Stage 88')
  expect(
    heard.map((e) => (e.kind === 'pedal' ? `${e.pedal}${e.value}` : `${e.kind}${e.key}`)),
  ).toEqual(['down60', 'sustain127', 'up60', 'sustain0'])
  expect(inputsIn(states.at(-1))).toBe('Stage 88 (gone)')
  expect(() => press(midi, 'Stage 88', 60, 7)).toThrow('nobody has opened')

  for (const round of [1, 2, 3]) {
    await midi.plug('Stage 88')
    expect(inputsIn(states.at(-1))).toBe('Stage 88')
    heard.length = 0
    press(midi, 'Stage 88', 62, 10 * round)
    midi.send('Stage 88', [0x80, 62, 0], 10 * round + 1)
    expect(inShort(heard)).toBe(`down62@${10 * round} up62@${10 * round + 1}`)
    await midi.pull('Stage 88')
  }
})

test('only the chosen input is heard; a key held on the other one goes up', async () => {
  const { midi, keyboard, heard, states } = setUp({ inputs: ['Stage 88', 'Small 25'] })
  await keyboard.connect()
  const state = states.at(-1)
  const small =
    state?.kind === 'ready' ? state.inputs.find((i) => i.name === 'Small 25') : undefined
  press(midi, 'Stage 88', 60, 1)
  keyboard.choose(small?.id ?? '')
  press(midi, 'Stage 88', 62, 2)
  press(midi, 'Small 25', 64, 3)
  expect(heard.map((e) => (e.kind === 'pedal' ? '' : `${e.kind}${e.key}`))).toEqual([
    'down60',
    'up60',
    'down64',
  ])
})

test('one key on two ports is one note', async () => {
  const { midi, keyboard, heard } = setUp({ inputs: ['Stage 88', 'Stage 88 port 2'] })
  await keyboard.connect()
  press(midi, 'Stage 88', 60, 1)
  press(midi, 'Stage 88 port 2', 60, 2)
  midi.send('Stage 88', [0x80, 60, 0], 3)
  midi.send('Stage 88 port 2', [0x80, 60, 0], 4)
  expect(inShort(heard)).toBe('down60@1 up60@4')
})

test('a chosen input that comes back under another id is known by its name', async () => {
  const { midi, keyboard, heard, states } = setUp({ inputs: ['Other'] })
  keyboard.choose('an-id-of-yesterday', 'Stage 88')
  await keyboard.connect()
  press(midi, 'Other', 50, 1)
  await midi.plug('Stage 88')
  press(midi, 'Stage 88', 60, 2)
  press(midi, 'Other', 51, 3)
  expect(inShort(heard)).toBe('down60@2')
  expect(states.at(-1)).toMatchObject({ kind: 'ready', chosen: 'fake-input-2' })
})

test('transposing moves the keys, lets go of those that are down, and drops what leaves the range', async () => {
  const { midi, keyboard, heard } = setUp()
  keyboard.transpose(-12)
  await keyboard.connect()
  press(midi, 'Stage 88', 60, 1)
  keyboard.transpose(12)
  midi.send('Stage 88', [0x80, 60, 0], 2)
  press(midi, 'Stage 88', 120, 3)
  press(midi, 'Stage 88', 60, 4)
  expect(heard.map((e) => (e.kind === 'pedal' ? '' : `${e.kind}${e.key}`))).toEqual([
    'down48',
    'up48',
    'down72',
  ])
})

test('an input that another program holds is named, and can be connected when it is free', async () => {
  const { midi, keyboard, states } = setUp()
  midi.occupy('Stage 88')
  await keyboard.connect()
  expect(inputsIn(states.at(-1))).toBe('Stage 88 (taken)')
  midi.free('Stage 88')
  await keyboard.connect()
  expect(inputsIn(states.at(-1))).toBe('Stage 88')
})

test('one input in use elsewhere does not keep the other from being heard', async () => {
  const { midi, keyboard, heard, states } = setUp({ inputs: ['Busy', 'Stage 88'] })
  midi.occupy('Busy')
  await keyboard.connect()
  expect(inputsIn(states.at(-1))).toBe('Busy (taken), Stage 88')
  press(midi, 'Stage 88', 60, 1)
  expect(inShort(heard)).toBe('down60@1')
})

test('an input that another program holds when it is plugged in is told of, and heard when it is free', async () => {
  const unhandled: unknown[] = []
  const note = (reason: unknown): unknown => unhandled.push(reason)
  process.on('unhandledRejection', note)
  vi.useFakeTimers()
  const { midi, keyboard, heard, states } = setUp({})
  void keyboard.connect()
  await vi.advanceTimersByTimeAsync(100)
  midi.occupy('Stage 88')
  void midi.plug('Stage 88')
  await vi.advanceTimersByTimeAsync(100)
  expect(inputsIn(states.at(-1))).toBe('Stage 88 (taken)')
  await vi.advanceTimersByTimeAsync(10_000)
  expect(inputsIn(states.at(-1))).toBe('Stage 88 (taken)')
  midi.free('Stage 88')
  await vi.advanceTimersByTimeAsync(2_100)
  expect(inputsIn(states.at(-1))).toBe('Stage 88')
  press(midi, 'Stage 88', 60, 5)
  expect(inShort(heard)).toBe('down60@5')
  expect(vi.getTimerCount()).toBe(0)
  vi.useRealTimers()
  await new Promise((done) => setTimeout(done, 0))
  process.off('unhandledRejection', note)
  expect(unhandled).toEqual([])
})

test('an input that another program takes lets go of its keys, while the other is heard on', async () => {
  vi.useFakeTimers()
  const { midi, keyboard, heard, states } = setUp({ inputs: ['Stage 88', 'Small 25'] })
  void keyboard.connect()
  await vi.advanceTimersByTimeAsync(100)
  press(midi, 'Stage 88', 60, 1)
  midi.occupy('Stage 88')
  expect(inputsIn(states.at(-1))).toBe('Stage 88 (taken), Small 25')
  press(midi, 'Small 25', 62, 2)
  expect(heard.map((e) => (e.kind === 'pedal' ? '' : `${e.kind}${e.key}`))).toEqual([
    'down60',
    'up60',
    'down62',
  ])
  await vi.advanceTimersByTimeAsync(2_100)
  expect(inputsIn(states.at(-1))).toBe('Stage 88 (taken), Small 25')
  midi.free('Stage 88')
  await vi.advanceTimersByTimeAsync(2_100)
  expect(inputsIn(states.at(-1))).toBe('Stage 88, Small 25')
  press(midi, 'Stage 88', 64, 3)
  expect(heard.at(-1)).toMatchObject({ kind: 'down', key: 64 })
})
