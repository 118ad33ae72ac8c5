import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  bind,
  decodeBindings,
  drillCommands,
  isFree,
  nothingPressed,
  reachOf,
  readCommand,
  unbind,
  type Binding,
  type Bindings,
  type Meaning,
  type Pressed,
} from '@/app/commandKeys'
import { keysOf } from '@/app/practising'
import { pedals, type KeyEvent } from '@/music/keyEvent'
import { key, ms } from '@/music/units'
import {
  anyChunk,
  anySeed,
  createDice,
  evenManner,
  play,
  slipIn,
  slips,
  takeOf,
} from '../judge/player'
import { writeChunk } from '../support/chunks'

const down = (k: number): KeyEvent => ({ kind: 'down', key: key(k), velocity: 64, at: ms(0) })
const up = (k: number): KeyEvent => ({ kind: 'up', key: key(k), at: ms(1) })
const pedal = (value: number): KeyEvent => ({ kind: 'pedal', pedal: 'soft', value, at: ms(0) })
const keyOf = (k: number): Binding => ({ kind: 'key', key: key(k) })
const softPedal: Binding = { kind: 'pedal', pedal: 'soft' }

/** What each event means, in order. */
const meanings = (
  events: readonly KeyEvent[],
  bindings: Bindings,
  reach = reachOf(keysOf(writeChunk('C4 D4 E4 G4'))),
): readonly string[] => {
  let pressed: Pressed = nothingPressed
  return events.map((event) => {
    const [next, meaning] = readCommand(pressed, event, bindings, reach)
    pressed = next
    return inShort(meaning)
  })
}
const inShort = (meaning: Meaning): string =>
  meaning.kind === 'command' ? meaning.command : meaning.kind

test.each([
  ['a key a fourth below the lowest plays', 55, 'playing'],
  ['the next key down is a command', 54, 'again'],
  ['a key a fourth above the highest plays', 72, 'playing'],
  ['the next key up is a command', 73, 'again'],
  ['a key of the passage plays', 62, 'playing'],
])('%s', (_, struck, meaning) => {
  expect(meanings([down(struck)], { again: keyOf(struck) })).toEqual([meaning])
})

test('the key of a command comes up as nothing, a key that plays comes up as playing', () => {
  expect(meanings([down(21), down(60), up(21), up(60)], { hear: keyOf(21) })).toEqual([
    'hear',
    'playing',
    'nothing',
    'playing',
  ])
})

test('a key that went down as a command comes up as nothing, even when it plays by then', () => {
  const [held] = readCommand(
    nothingPressed,
    down(50),
    { next: keyOf(50) },
    { lowest: 55, highest: 72 },
  )
  const [, meaning] = readCommand(held, up(50), { next: keyOf(50) }, { lowest: 40, highest: 60 })
  expect(inShort(meaning)).toBe('nothing')
})

test('a pedal means its command once each time that it goes down, however it trembles', () => {
  const moves = [10, 63, 64, 90, 60, 66, 45, 127, 20, 0, 80].map(pedal)
  expect(meanings(moves, { metronome: softPedal }).filter((m) => m !== 'nothing')).toEqual([
    'metronome',
    'metronome',
  ])
})

test('a pedal that is not bound is part of the playing', () => {
  expect(meanings([pedal(127), pedal(0)], { hear: keyOf(21) })).toEqual(['playing', 'playing'])
})

test('a key that is given to another command leaves the first one', () => {
  const bound = bind(bind({}, 'hear', keyOf(21)), 'next', keyOf(21))
  expect(bound).toEqual({ next: keyOf(21) })
  expect(unbind(bound, 'next')).toEqual({})
})

test('a pedal is free everywhere, a key only away from the passage', () => {
  const reach = reachOf(keysOf(writeChunk('C4+C5')))
  expect([softPedal, keyOf(21), keyOf(66)].map((b) => isFree(b, reach))).toEqual([
    true,
    true,
    false,
  ])
})

const anyBinding: fc.Arbitrary<Binding> = fc.oneof(
  fc.integer({ min: 0, max: 127 }).map(keyOf),
  fc.constantFrom(...pedals).map((each): Binding => ({ kind: 'pedal', pedal: each })),
)
const anyBindings: fc.Arbitrary<Bindings> = fc
  .array(fc.tuple(fc.constantFrom(...drillCommands), anyBinding), { maxLength: 8 })
  .map((all) => all.reduce<Bindings>((now, [command, to]) => bind(now, command, to), {}))

test('bindings survive being stored and read back, and whatever was stored reads as bindings', () => {
  fc.assert(
    fc.property(anyBindings, (bindings) => {
      expect(decodeBindings(JSON.parse(JSON.stringify(bindings)))).toEqual(bindings)
    }),
  )
  fc.assert(
    fc.property(fc.anything(), (stored) => {
      const read = decodeBindings(stored)
      expect(decodeBindings(read)).toEqual(read)
    }),
  )
})

test('playing a passage, with or without a slip, never means a command unless a bound key away from it was struck', () => {
  fc.assert(
    fc.property(
      anyChunk(2),
      anyBindings,
      fc.option(fc.constantFrom(...slips), { nil: undefined }),
      anySeed,
      (chunk, bindings, slip, seed) => {
        const dice = createDice(seed)
        const clean = play(chunk, evenManner, dice)
        const struck = slip ? (slipIn(chunk, clean, slip, dice)?.struck ?? clean) : clean
        const reach = reachOf(keysOf(chunk))
        const { events } = takeOf(struck)
        const away = new Set(
          struck.map((s) => s.key).filter((k) => k < reach.lowest || k > reach.highest),
        )
        const found = meanings(events, bindings, reach)
        for (const [i, meaning] of found.entries()) {
          const event = events[i]
          if (meaning === 'playing' || event?.kind === 'pedal') continue
          expect(event && away.has(event.key)).toBe(true)
        }
        if (away.size === 0) expect(new Set(found)).toEqual(new Set(['playing']))
      },
    ),
    { numRuns: 500 },
  )
})
