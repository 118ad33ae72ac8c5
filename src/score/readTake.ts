import { pedals, type KeyEvent, type Take } from '@/music/keyEvent'
import { failed, ok, type Result } from '@/music/result'
import { ms, type Ms } from '@/music/units'
import { parseMidiFile } from './midiFile'
import type { ReadProblem } from './readProblem'
import { drumChannel, type SmfEvent } from './score'
import { pedalControllers } from './writeMidiFile'

/**
 * Recorded playing from a Standard MIDI File: keys and pedals of all tracks and channels but the
 * drums, with their times in milliseconds from the start of the file through every tempo change.
 */
export const readTake = (bytes: Uint8Array): Result<Take, ReadProblem> => {
  const file = parseMidiFile(bytes)
  if (!file.ok) return file
  const events: KeyEvent[] = []
  let micros = 0
  let lastTick = 0
  let perQuarter = defaultMicroseconds
  for (const event of file.value.tracks
    .flat()
    .toSorted((a, b) => a.at - b.at || tempoFirst(a, b))) {
    micros += ((event.at - lastTick) * perQuarter) / file.value.ticksPerQuarter
    lastTick = event.at
    if (event.kind === 'tempo' && event.microsecondsPerQuarter > 0)
      perQuarter = event.microsecondsPerQuarter
    const played = playedEvent(event, ms(micros / 1000))
    if (played) events.push(played)
  }
  if (events.some((e) => e.kind === 'down')) return ok({ events })
  const drums = file.value.tracks.flat().some((e) => e.kind === 'noteOn')
  return failed({ kind: drums ? 'onlyDrums' : 'noNotes' })
}

/** SMF 1.0: 120 quarters a minute until a tempo is given. */
const defaultMicroseconds = 500_000

const tempoFirst = (a: SmfEvent, b: SmfEvent): number =>
  Number(b.kind === 'tempo') - Number(a.kind === 'tempo')

const playedEvent = (event: SmfEvent, at: Ms): KeyEvent | undefined => {
  if (event.kind !== 'noteOn' && event.kind !== 'noteOff' && event.kind !== 'controller')
    return undefined
  if (event.channel === drumChannel) return undefined
  if (event.kind === 'noteOn') return { kind: 'down', key: event.key, velocity: event.velocity, at }
  if (event.kind === 'noteOff') return { kind: 'up', key: event.key, at }
  const pedal = pedals.find((name) => pedalControllers[name] === event.controller)
  return pedal && { kind: 'pedal', pedal, value: event.value, at }
}
