import fc from 'fast-check'
import { expect, test } from 'vitest'
import { decodeSettings, defaultSettings, farthestTranspose, type Settings } from '@/app/settings'
import { key } from '@/music/units'

test('settings survive being stored and read back', () => {
  const mine: Settings = {
    theme: 'dark',
    language: 'de',
    noteNames: 'syllables',
    standard: 'time',
    streakGoal: 7,
    forgiveBrushed: true,
    input: 'port-3',
    inputName: 'Stage 88',
    transpose: -12,
    sound: false,
    metronomeVolume: 0.3,
    pianoVolume: 1,
    signalVolume: 0,
    output: 'out-2',
    outputName: 'Stage 88',
    perBeat: 3,
    silentBars: true,
    lagMs: -31,
    trial: false,
    span: 13,
    showFingers: false,
    cautionedOn: '2026-01-05',
    commands: {
      hear: { kind: 'key', key: key(21) },
      next: { kind: 'pedal', pedal: 'soft' },
      goOn: { kind: 'pedal', pedal: 'sustain' },
    },
    damperCommands: true,
    name: 'Ada the Example',
  }
  expect(decodeSettings(JSON.parse(JSON.stringify(mine)))).toEqual(mine)
})

test('signals that have no volume of their own yet are as loud as the metronome', () => {
  expect(decodeSettings({ metronomeVolume: 0.2 }).signalVolume).toBe(0.2)
  expect(decodeSettings({ metronomeVolume: 0.2, signalVolume: 0 }).signalVolume).toBe(0)
})

test.each<[string, unknown]>([
  ['nothing', undefined],
  ['null', null],
  ['a text', 'dark'],
  ['an old shape', { colour: 'blue' }],
  [
    'values out of bounds',
    {
      streakGoal: 99,
      transpose: 25,
      standard: 'kind',
      input: '',
      lagMs: 301,
      span: 30,
      cautionedOn: 5,
    },
  ],
  ['a lag that is no whole number', { lagMs: 12.5 }],
  ['volumes out of bounds', { metronomeVolume: 1.1, pianoVolume: -0.1, perBeat: 5 }],
])('%s gives the defaults', (_, stored) => {
  expect(decodeSettings(stored)).toEqual(defaultSettings)
})

test('whatever was stored, the settings are within bounds', () => {
  fc.assert(
    fc.property(fc.anything(), (stored) => {
      const { streakGoal, transpose, input, lagMs, name } = decodeSettings(stored)
      expect(name.length).toBeLessThanOrEqual(60)
      expect(streakGoal).toBeGreaterThanOrEqual(3)
      expect(streakGoal).toBeLessThanOrEqual(10)
      expect(Math.abs(transpose)).toBeLessThanOrEqual(farthestTranspose)
      expect(Math.abs(lagMs)).toBeLessThanOrEqual(300)
      expect(input).not.toBe('')
    }),
  )
})
