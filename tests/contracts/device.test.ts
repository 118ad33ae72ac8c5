import fc from 'fast-check'
import { afterEach, describe, expect, test, vi } from 'vitest'
import { WebMidi } from 'webmidi'
import { createComputerKeys } from '@/devices/computerKeys'
import type { Device } from '@/devices/devices'
import { createMidiKeyboard } from '@/devices/midiKeyboard'
import { mergeDevices } from '@/devices/mergeDevices'
import { createScreenKeys } from '@/devices/screenKeys'
import { createSimulatedPlayer } from '@/devices/simulatedPlayer'
import { planTake } from '@/devices/simulatedTake'
import type { KeyEvent } from '@/music/keyEvent'
import { key, tempo } from '@/music/units'
import { writeChunk } from '../support/chunks'
import { installFakeMidi } from '../support/fakeMidiAccess'
import { createHandClock } from '../support/handClock'
import { createKeyTarget } from '../support/keyboardEvents'
import { faultsOf } from '../support/soundStream'

/** A device with hands on it: finger `n` of ten goes down or up at a time; all contact can be lost. */
interface Rig {
  readonly device: Device
  readonly move: (finger: number, down: boolean, at: number) => void
  /** The cable is pulled, the focus lost, the player stopped. */
  readonly lose: () => Promise<void> | void
}

const computerRig = (): Rig => {
  const computer = createKeyTarget()
  const codes = 'KeyA KeyW KeyS KeyD KeyR KeyF KeyT KeyG KeyH KeyU'.split(' ')
  return {
    device: createComputerKeys(computer.target),
    move: (finger, down, at) => computer[down ? 'down' : 'up'](codes[finger] ?? '', at),
    lose: () => void computer.blur(1e6),
  }
}
const screenRig = (): Rig => {
  const keys = createScreenKeys()
  return {
    device: keys,
    move: (finger, down, at) =>
      // Two fingers to a key, as on a narrow screen.
      down ? keys.press(key(60 + (finger >> 1)), at, finger) : keys.release(at, finger),
    lose: () => keys.releaseAll(1e6),
  }
}
const midiRig = async (): Promise<Rig> => {
  vi.stubGlobal('navigator', {})
  vi.stubGlobal('window', globalThis)
  await WebMidi.disable()
  const midi = installFakeMidi({ inputs: ['one', 'two'] })
  const keyboard = createMidiKeyboard()
  await keyboard.connect()
  return {
    device: keyboard,
    move: (finger, down, at) =>
      midi.send(finger % 2 ? 'one' : 'two', [down ? 0x90 : 0x80, 60 + (finger >> 1), 64], at),
    lose: async () => void (await Promise.all(['one', 'two'].map(midi.pull))),
  }
}
const mergedRig = (): Rig => {
  const [left, right] = [computerRig(), screenRig()]
  return {
    device: mergeDevices([left.device, right.device]),
    move: (finger, down, at) => (finger % 2 ? left : right).move(finger, down, at),
    lose: async () => {
      await left.lose()
      await right.lose()
    },
  }
}
const playerRig = (): Rig => {
  const clock = createHandClock()
  const player = createSimulatedPlayer(clock)
  const chunk = writeChunk('C4+E4+G4 D4:1/4 D4:1/4 D4:1/2 E4')
  return {
    device: player,
    move: (finger, down, at) => {
      clock.move(Math.max(0, at - clock.now()))
      const take = planTake(chunk, { tempo: tempo(120), seed: finger })
      if (down) void player.start(take)
      else if (finger % 3 === 0) player.stop()
    },
    lose: () => {
      void player.start(planTake(chunk, { tempo: tempo(120), seed: 1 }))
      clock.move(700)
      player.stop()
    },
  }
}

const rigs: readonly (readonly [string, () => Rig | Promise<Rig>])[] = [
  ['the MIDI keyboard', midiRig],
  ['the computer’s keys', computerRig],
  ['the keys on screen', screenRig],
  ['the simulated player', playerRig],
  ['merged devices', mergedRig],
]

const moves = fc.array(fc.tuple(fc.nat(9), fc.boolean(), fc.integer({ min: 0, max: 300 })), {
  maxLength: 60,
})

describe.each(rigs)('%s', (_, setUp) => {
  afterEach(() => {
    vi.unstubAllGlobals()
  })

  test('whatever the fingers do, the stream is in order, ups follow downs, and none sticks after a loss', async () => {
    await fc.assert(
      fc.asyncProperty(moves, async (fingers) => {
        const { device, move, lose } = await setUp()
        const heard: KeyEvent[] = []
        device.listen((event) => heard.push(event))
        let at = 0
        for (const [finger, down, later] of fingers) move(finger, down, (at += later))
        expect(faultsOf(heard, false)).toEqual([])
        await lose()
        expect(faultsOf(heard, true)).toEqual([])
        if (fingers.some(([, down]) => down)) expect(heard.length).toBeGreaterThan(0)
      }),
      { numRuns: 60 },
    )
  })

  test('who has stopped listening hears nothing, the others go on', async () => {
    const { device, move } = await setUp()
    const [one, other]: [KeyEvent[], KeyEvent[]] = [[], []]
    const stop = device.listen((event) => one.push(event))
    device.listen((event) => other.push(event))
    stop()
    const before = one.length
    move(2, true, 10)
    expect(one.length).toBe(before)
    expect(other.length).toBeGreaterThan(0)
  })
})
