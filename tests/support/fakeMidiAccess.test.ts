import { runInNewContext } from 'node:vm'
import { beforeEach, expect, test, vi } from 'vitest'
import { installFakeMidi } from './fakeMidiAccess'

/** What the Web MIDI API (W3C) says of ports, checked on the fake that stands for it. */
const ask = async (): Promise<MIDIAccess> => navigator.requestMIDIAccess()

/** Each change that the access tells: state and connection of the port. */
const watchChanges = (access: MIDIAccess): string[] => {
  const changes: string[] = []
  access.onstatechange = ({ port }: MIDIConnectionEvent) =>
    changes.push(`${port?.state} ${port?.connection}`)
  return changes
}
const only = (access: MIDIAccess): MIDIInput => {
  const [input, ...others] = [...access.inputs.values()]
  if (!input || others.length > 0) throw new Error('expected one input')
  return input
}

beforeEach(() => {
  vi.unstubAllGlobals()
  vi.stubGlobal('navigator', {})
})

test('open changes the connection later, not at once, and tells the access and the port', async () => {
  installFakeMidi({ inputs: ['A'] })
  const access = await ask()
  const changes = watchChanges(access)
  const input = only(access)
  const told = vi.fn()
  input.onstatechange = told
  const opened = input.open()
  expect(input.connection).toBe('closed')
  expect(await opened).toBe(input)
  expect(changes).toEqual(['connected open'])
  expect(told).toHaveBeenCalledOnce()
})

test('setting a message handler opens the port', async () => {
  const midi = installFakeMidi({ inputs: ['A'] })
  const input = only(await ask())
  input.onmidimessage = () => {}
  expect(midi.isOpen('A')).toBe(false)
  await vi.waitFor(() => expect(midi.isOpen('A')).toBe(true))
})

test('a pulled open port is pending and no longer listed; it comes back as the same object, open', async () => {
  const midi = installFakeMidi({ inputs: ['A'] })
  const access = await ask()
  const input = only(access)
  await input.open()
  const changes = watchChanges(access)
  await midi.pull('A')
  expect(access.inputs.size).toBe(0)
  await midi.plug('A')
  expect(only(access)).toBe(input)
  expect(changes).toEqual(['disconnected pending', 'connected open'])
})

test('a port that was never opened stays closed when it is pulled', async () => {
  const midi = installFakeMidi({ inputs: ['A'] })
  const changes = watchChanges(await ask())
  await midi.pull('A')
  await midi.plug('A')
  expect(changes).toEqual(['disconnected closed', 'connected closed'])
})

test('messages carry the given bytes and time, and only an open port hears them', async () => {
  const midi = installFakeMidi({ inputs: ['A'] })
  const input = only(await ask())
  const heard: [number[], number][] = []
  input.addEventListener('midimessage', (e) => heard.push([[...(e.data ?? [])], e.timeStamp]))
  expect(() => midi.send('A', [0x90, 60, 64], 1)).toThrow('nobody has opened "A"')
  await input.open()
  midi.send('A', [0x90, 60, 64], 123.5)
  expect(heard).toEqual([[[0x90, 60, 64], 123.5]])
})

test('a refusal rejects with NotAllowedError, an occupied port with InvalidAccessError', async () => {
  const midi = installFakeMidi({ inputs: ['A'], denied: true })
  await expect(ask()).rejects.toMatchObject({ name: 'NotAllowedError' })
  midi.allow()
  midi.occupy('A')
  await expect(only(await ask()).open()).rejects.toMatchObject({ name: 'InvalidAccessError' })
})

test('the source text alone installs it, as in a page', async () => {
  // Another global world, with nothing of this file in it.
  const page = { navigator, EventTarget, Event, DOMException, performance, setTimeout }
  runInNewContext(`(${installFakeMidi.toString()})({ inputs: ['A', 'B'] })`, page)
  expect([...(await ask()).inputs.values()].map((input) => input.name)).toEqual(['A', 'B'])
})
