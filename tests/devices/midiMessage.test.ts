import fc from 'fast-check'
import { expect, test } from 'vitest'
import { isAllOff, readMidiMessage } from '@/devices/midiMessage'
import { ms } from '@/music/units'

const at = ms(12.5)

// MIDI 1.0 Detailed Specification 4.2, table of status bytes and of controllers (from memory).
test.each([
  ['note on', [0x90, 60, 64], { kind: 'down', key: 60, velocity: 64, at }],
  ['note on, channel 16', [0x9f, 0, 127], { kind: 'down', key: 0, velocity: 127, at }],
  ['note on of velocity 0 is an up', [0x90, 60, 0], { kind: 'up', key: 60, at }],
  ['note off', [0x80, 127, 64], { kind: 'up', key: 127, at }],
  ['damper pedal', [0xb0, 64, 127], { kind: 'pedal', pedal: 'sustain', value: 127, at }],
  ['half damper', [0xb3, 64, 50], { kind: 'pedal', pedal: 'sustain', value: 50, at }],
  ['sostenuto pedal', [0xb0, 66, 0], { kind: 'pedal', pedal: 'sostenuto', value: 0, at }],
  ['soft pedal', [0xb0, 67, 1], { kind: 'pedal', pedal: 'soft', value: 1, at }],
])('%s', (_, bytes, event) => {
  expect(readMidiMessage(bytes, at)).toEqual(event)
})

test.each([
  ['timing clock', [0xf8]],
  ['active sensing', [0xfe]],
  ['pitch bend', [0xe0, 0, 64]],
  ['channel pressure', [0xd0, 64]],
  ['key pressure', [0xa0, 60, 64]],
  ['modulation', [0xb0, 1, 64]],
  ['portamento switch', [0xb0, 65, 127]],
  ['a message cut short', [0x90, 60]],
  ['system exclusive', [0xf0, 0x7e, 0x7f, 0x06, 0x01, 0xf7]],
  ['nothing', []],
])('%s moves no key', (_, bytes) => {
  expect(readMidiMessage(bytes, at)).toBeUndefined()
})

test('no bytes at all make it throw or give a key or a velocity out of range', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 8 }), (bytes) => {
      const event = readMidiMessage(bytes, at)
      if (event?.kind === 'down') {
        expect(event.velocity).toBeGreaterThan(0)
        expect(Math.max(event.velocity, event.key)).toBeLessThan(128)
      }
    }),
  )
})

test('all notes off and all sound off let go of everything', () => {
  expect(
    [
      [0xb0, 123, 0],
      [0xb5, 120, 0],
      [0xb0, 64, 0],
      [0x90, 123, 1],
    ].map(isAllOff),
  ).toEqual([true, true, false, false])
})
