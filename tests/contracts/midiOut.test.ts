import { beforeEach, expect, test, vi } from 'vitest'
import { WebMidi } from 'webmidi'
import { createEchoes } from '@/devices/echoes'
import { createMidiKeyboard } from '@/devices/midiKeyboard'
import { createMidiOut, type SentNote } from '@/devices/midiOut'
import type { KeyEvent } from '@/music/keyEvent'
import { key } from '@/music/units'
import { installFakeMidi, type FakeMidiOptions } from '../support/fakeMidiAccess'

const stage = 'Stage 88'

/** The real webmidi over a fake MIDIAccess, with a keyboard that is heard and played. */
const setUp = async (options: FakeMidiOptions = {}) => {
  const midi = installFakeMidi({ inputs: [stage], outputs: [stage], ...options })
  const echoes = createEchoes()
  const keyboard = createMidiKeyboard(echoes.isEcho)
  const page = new EventTarget()
  const out = createMidiOut(echoes.sent, page)
  const heard: KeyEvent[] = []
  const lists: string[] = []
  keyboard.listen((event) => heard.push(event))
  out.watch((outputs) =>
    lists.push(
      outputs.map(({ name, standing }) => `${name}${standing === 'there' ? '' : ' -'}`).join(),
    ),
  )
  await keyboard.connect()
  out.choose(WebMidi.outputs[0]?.id ?? '', stage)
  return { midi, out, page, heard, lists }
}
/** 'C' is key 60, and so on: each a tenth of a second after the one before, half as long. */
const notes = (count: number, length = 0.05): readonly SentNote[] =>
  Array.from({ length: count }, (_, i) => ({
    key: key(60 + i),
    at: i / 10,
    length,
    velocity: 68,
  }))
const pause = (forMs: number): Promise<void> => new Promise((done) => setTimeout(done, forMs))
/** Keys that were struck and not let go, at the end of all that was sent. */
const hanging = (sent: readonly { readonly bytes: readonly number[]; readonly at: number }[]) => {
  const down = new Set<number>()
  for (const { bytes } of sent.toSorted((a, b) => a.at - b.at)) {
    const [status, number = 0] = bytes
    if (status === 0x90) down.add(number)
    if (status === 0x80) down.delete(number)
    if (status === 0xb0 && number === 123) down.clear()
  }
  return [...down]
}

beforeEach(async () => {
  // What the library looks for before it takes Node for a browser.
  vi.stubGlobal('navigator', {})
  vi.stubGlobal('window', globalThis)
  // The library is one for the whole process: as it was before its first use.
  await WebMidi.disable()
})

test('every note goes out on and off at its time, and playing resolves at the end', async () => {
  const { midi, out } = await setUp()
  await out.play(notes(3))
  const sent = midi.sent(stage)
  expect(sent.map(({ bytes: [status, number] }) => `${status?.toString(16)} ${number}`)).toEqual([
    '90 60',
    '80 60',
    '90 61',
    '80 61',
    '90 62',
    '80 62',
  ])
  const first = sent[0]?.at ?? 0
  for (const [i, { at }] of sent.entries())
    expect(at - first).toBeCloseTo(100 * Math.floor(i / 2) + 50 * (i % 2), 3)
})

test('stopped in the middle, every key that was struck goes off, and the rest is not played', async () => {
  const { midi, out } = await setUp()
  const playing = out.play(notes(20, 5))
  await pause(250)
  out.quiet()
  await playing
  const sent = midi.sent(stage)
  const struck = sent.filter(({ bytes: [status] }) => status === 0x90).length
  expect(struck).toBeGreaterThan(0)
  expect(struck).toBeLessThan(20)
  expect(hanging(sent)).toEqual([])
  expect(sent.at(-1)?.bytes).toEqual([0xb0, 123, 0])
  await pause(150)
  expect(midi.sent(stage)).toHaveLength(sent.length)
})

test.each(['pagehide', 'visibilitychange'])('at %s every key goes off', async (event) => {
  const { midi, out, page } = await setUp()
  const playing = out.play(notes(20, 5))
  await pause(150)
  page.dispatchEvent(new Event(event))
  await playing
  expect(hanging(midi.sent(stage))).toEqual([])
})

test('another instrument is chosen, or none: the one before is silent', async () => {
  const { midi, out } = await setUp({ outputs: [stage, 'Small 25'] })
  const playing = out.play(notes(20, 5))
  await pause(150)
  out.choose('', '')
  await playing
  expect(hanging(midi.sent(stage))).toEqual([])
  expect(out.isReady()).toBe(false)
})

test('unplugged amid a note it ends without an error; plugged in again, the note goes off', async () => {
  const { midi, out, lists } = await setUp()
  const playing = out.play(notes(20, 5))
  await pause(150)
  await midi.pull(stage)
  await playing
  expect(out.isReady()).toBe(false)
  expect(lists.at(-1)).toBe(`${stage} -`)
  await midi.plug(stage)
  await pause(20)
  expect(out.isReady()).toBe(true)
  expect(hanging(midi.sent(stage))).toEqual([])
})

test('what the instrument sends back is not heard as played; what the person plays meanwhile is', async () => {
  const { midi, out, heard } = await setUp({ looped: [stage] })
  const playing = out.play(notes(5))
  await pause(120)
  midi.send(stage, [0x90, 72, 90])
  midi.send(stage, [0x80, 72, 64])
  await playing
  await pause(50)
  expect(heard.map((e) => (e.kind === 'pedal' ? 'pedal' : `${e.kind} ${e.key}`))).toEqual([
    'down 72',
    'up 72',
  ])
})

test('without an instrument nothing is sent and nothing waits', async () => {
  const { out } = await setUp({ outputs: [] })
  expect(out.isReady()).toBe(false)
  await out.play(notes(2))
  out.quiet()
})
