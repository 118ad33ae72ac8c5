import { expect, test } from 'vitest'
import type { MidiOut } from '@/devices/midiOut'
import { tempo } from '@/music/units'
import { createSound } from '@/sound/createSound'
import { soundPort } from '../../src/hearing'
import { writeChunk } from '../support/chunks'

/** What was asked of the sampled piano and of the instrument, in order. */
const setUp = (isReady: boolean) => {
  const asked: string[] = []
  const hear = (who: string) => (notes: readonly unknown[]) => {
    asked.push(`${who} plays ${notes.length}`)
    return Promise.resolve()
  }
  const out: MidiOut = {
    watch: () => () => {},
    choose: () => {},
    isReady: () => isReady,
    play: hear('instrument'),
    quiet: () => asked.push('instrument quiet'),
  }
  const sound = { ...createSound(), hear: hear('piano'), quiet: () => asked.push('piano quiet') }
  return { port: soundPort(sound, out), asked }
}
const chunk = writeChunk('C4 D4 E4')

test('"hear it" sounds on the instrument where one is chosen and there, else on the sampled piano', async () => {
  const [instrument, piano] = [setUp(true), setUp(false)]
  await instrument.port.hearChunk(chunk, tempo(120))
  await piano.port.hearChunk(chunk, tempo(120))
  expect(instrument.asked.filter((each) => each.includes('plays'))).toEqual(['instrument plays 3'])
  expect(piano.asked.filter((each) => each.includes('plays'))).toEqual(['piano plays 3'])
})

test('whatever sounded before is silent first, whichever it was', async () => {
  const { port, asked } = setUp(true)
  await port.hearChunk(chunk, tempo(120))
  expect(asked).toEqual(['piano quiet', 'instrument quiet', 'instrument plays 3'])
})

test('switched off, the instrument is silent at once and nothing is sent', async () => {
  const { port, asked } = setUp(true)
  port.setOn(false)
  expect(asked).toEqual(['instrument quiet'])
  await port.hearChunk(chunk, tempo(120))
  expect(asked.filter((each) => each.includes('plays'))).toEqual([])
})
