import fc from 'fast-check'
import { parseMidi, type MidiEvent } from 'midi-file'
import { expect, test } from 'vitest'
import { parseMidiFile } from '@/score/midiFile'
import { formatLength } from '@/score/writeMidiFile'
import { chunk, smf } from './smf'

const value = fc.nat(127)
const channel = fc.nat(15)
const message = (status: number, values: number): fc.Arbitrary<number[]> =>
  fc
    .tuple(channel, fc.array(value, { minLength: values, maxLength: values }))
    .map(([c, data]) => [status | c, ...data])
const mark = (type: number, data: fc.Arbitrary<number[]>): fc.Arbitrary<number[]> =>
  data.map((bytes) => [0xff, type, ...formatLength(bytes.length), ...bytes])
const bytes = (minLength: number, maxLength = minLength): fc.Arbitrary<number[]> =>
  fc.array(fc.nat(255), { minLength, maxLength })

const event = fc.oneof(
  { weight: 3, arbitrary: message(0x80, 2) },
  { weight: 6, arbitrary: message(0x90, 2) },
  message(0xa0, 2),
  message(0xb0, 2),
  message(0xc0, 1),
  message(0xd0, 1),
  message(0xe0, 2),
  bytes(0, 200).map((data) => [0xf0, ...formatLength(data.length), ...data]),
  mark(0x01, bytes(0, 300)),
  mark(0x03, fc.array(fc.integer({ min: 0x41, max: 0x5a }), { maxLength: 20 })),
  mark(0x51, bytes(3)),
  mark(0x58, bytes(4)),
  mark(0x59, bytes(2)),
  mark(0x7f, bytes(0, 20)),
)
const events = fc.array(fc.tuple(fc.nat(0xfffffff), event), { maxLength: 60 })

/** Each with its time before it; a status that was kept is left out, as files do. */
const writeTrack = (timed: readonly (readonly [number, readonly number[]])[]): number[] => {
  let kept = 0
  const written = timed.flatMap(([delta, [status = 0, ...data]]) => {
    const running = status === kept
    if (status < 0xf0) kept = status
    return [...formatLength(delta), ...(running ? data : [status, ...data])]
  })
  return [...written, 0, 0xff, 0x2f, 0]
}

/** In words of our own, what midi-file says of an event that we keep. */
const asOurs = (event: MidiEvent, at: number): object[] => {
  if (event.type === 'noteOn') {
    const { channel, noteNumber, velocity } = event
    return [{ kind: 'noteOn', at, channel, key: noteNumber, velocity }]
  }
  if (event.type === 'noteOff')
    return [{ kind: 'noteOff', at, channel: event.channel, key: event.noteNumber }]
  if (event.type === 'controller') {
    const { channel, controllerType, value } = event
    return [{ kind: 'controller', at, channel, controller: controllerType, value }]
  }
  if (event.type === 'programChange')
    return [{ kind: 'program', at, channel: event.channel, program: event.programNumber }]
  if (event.type === 'setTempo')
    return [{ kind: 'tempo', at, microsecondsPerQuarter: event.microsecondsPerBeat }]
  if (event.type === 'timeSignature')
    return [{ kind: 'time', at, beats: event.numerator, beatType: event.denominator }]
  if (event.type === 'keySignature')
    return [{ kind: 'key', at, fifths: event.key, minor: event.scale === 1 }]
  if (event.type === 'trackName') return [{ kind: 'name', at, text: event.text }]
  return event.type === 'endOfTrack' ? [{ kind: 'end', at }] : []
}

// The other reader: the npm package midi-file 1.2.4, written from the same specification.
test('a track of any events says what another reader finds in it', () => {
  fc.assert(
    fc.property(events, (timed) => {
      const file = Uint8Array.from([...smf(['']).slice(0, 14), ...chunk('MTrk', writeTrack(timed))])
      let at = 0
      const expected = parseMidi(file)
        .tracks.flat()
        .flatMap((each) => {
          at += each.deltaTime
          return asOurs(each, at)
        })
      const read = parseMidiFile(file)
      expect(read.ok && read.value.tracks.flat()).toEqual(expected)
      expect(read.ok && read.value.warnings).toEqual([])
    }),
    { numRuns: 300 },
  )
})

test('a track without its end mark is read as far as it goes', () => {
  fc.assert(
    fc.property(events, fc.nat(), (timed, cut) => {
      const some = timed.slice(0, cut % (timed.length + 1))
      const whole = writeTrack(some)
      const read = (track: readonly number[]) =>
        parseMidiFile(Uint8Array.from([...smf(['']).slice(0, 14), ...chunk('MTrk', track)]))
      const [ended, open] = [read(whole), read(whole.slice(0, -4))]
      expect(ended.ok && open.ok && open.value.tracks).toEqual(ended.ok && ended.value.tracks)
    }),
  )
})
