import fc from 'fast-check'
import { expect, test } from 'vitest'
import { baseFor, createComputerKeys, layOut } from '@/devices/computerKeys'
import type { KeyEvent } from '@/music/keyEvent'
import { formatKey, isBlackKey } from '@/music/pitch'
import { key } from '@/music/units'
import { createKeyTarget } from '../support/keyboardEvents'
import { inShort } from '../support/soundStream'

const setUp = () => {
  const computer = createKeyTarget()
  const keys = createComputerKeys(computer.target)
  const heard: KeyEvent[] = []
  const stop = keys.listen((event) => heard.push(event))
  return { computer, keys, heard, stop }
}
const namesOf = (base: number, codes: string): string => {
  const layout = layOut(key(base))
  return codes
    .split(' ')
    .map((code) => {
      const k = layout.get(code)
      return k === undefined ? '-' : formatKey(k)
    })
    .join(' ')
}
const home = 'KeyA KeyS KeyD KeyF KeyG KeyH KeyJ KeyK KeyL Semicolon Quote'
const upper = 'KeyQ KeyW KeyE KeyR KeyT KeyY KeyU KeyI KeyO KeyP BracketLeft BracketRight'

test('the home row holds the white keys from the base, the row above the black ones between them', () => {
  expect(namesOf(57, home)).toBe('A3 B3 C4 D4 E4 F4 G4 A4 B4 C5 D5')
  expect(namesOf(57, upper)).toBe('G#3 A#3 - C#4 D#4 - F#4 G#4 A#4 - C#5 D#5')
  expect(namesOf(60, home)).toBe('C4 D4 E4 F4 G4 A4 B4 C5 D5 E5 F5')
  expect(namesOf(60, upper)).toBe('- C#4 D#4 - F#4 G#4 A#4 - C#5 D#5 - F#5')
})

test('on every base each piano key in reach has one place, colours in their rows, rising to the right', () => {
  fc.assert(
    fc.property(fc.integer({ min: 21, max: 108 }), (base) => {
      const layout = layOut(key(base))
      for (const [row, black] of [
        [home, false],
        [upper, true],
      ] as const) {
        const keys = row.split(' ').flatMap((code) => layout.get(code) ?? [])
        expect(keys.every((k) => isBlackKey(k) === black)).toBe(true)
        expect(keys.every((k, i) => i === 0 || k > (keys[i - 1] ?? 0))).toBe(true)
      }
      expect(new Set(layout.values()).size).toBe(layout.size)
    }),
  )
})

test('the base for a chunk brings all its keys into reach, or there is none', () => {
  const inReach = (keys: number[]) => {
    const base = baseFor(keys.map(key))
    return base === undefined
      ? undefined
      : keys.every((k) => [...layOut(base).values()].includes(key(k)))
  }
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 48, max: 62 }), { minLength: 1 }), (keys) => {
      expect(inReach(keys)).toBe(true)
    }),
  )
  expect(baseFor([36, 84].map(key))).toBeUndefined()
})

test('a key press is a down and an up with the events’ own times, and the page does nothing else with it', () => {
  const { computer, heard } = setUp()
  expect(computer.down('KeyA', 10.5).defaultPrevented).toBe(true)
  computer.up('KeyA', 90)
  expect(inShort(heard)).toBe('down57@10.5 up57@90')
})

test('a held key does not repeat', () => {
  const { computer, heard } = setUp()
  computer.down('KeyA', 1)
  computer.down('KeyA', 500, { repeat: true })
  computer.up('KeyA', 600)
  expect(inShort(heard)).toBe('down57@1 up57@600')
})

test.each(['ctrlKey', 'altKey', 'metaKey'] as const)(
  'with %s it is a command, not music',
  (flag) => {
    const { computer, heard } = setUp()
    expect(computer.down('KeyA', 1, { [flag]: true }).defaultPrevented).toBe(false)
    expect(heard).toEqual([])
  },
)

test.each([
  ['INPUT', 'text', false],
  ['INPUT', undefined, false],
  ['INPUT', 'number', false],
  ['TEXTAREA', undefined, false],
  ['SELECT', undefined, false],
  ['INPUT', 'checkbox', true],
  ['INPUT', 'range', true],
  ['BUTTON', undefined, true],
])('in %s of type %s a letter plays: %s', (tagName, type, plays) => {
  const { computer, heard } = setUp()
  computer.down('KeyA', 1, { focus: { tagName, ...(type === undefined ? {} : { type }) } })
  expect(heard.length > 0).toBe(plays)
})

test('a key that goes up after the focus moved into a text box is not stuck', () => {
  const { computer, heard } = setUp()
  computer.down('KeyA', 1)
  computer.up('KeyA', 2, { focus: { tagName: 'INPUT', type: 'text' } })
  expect(inShort(heard)).toBe('down57@1 up57@2')
})

test('when the window loses the focus, and when nobody listens any more, all keys go up', () => {
  const { computer, heard, stop } = setUp()
  computer.down('KeyA', 1)
  computer.down('KeyD', 2)
  computer.blur(3)
  computer.down('KeyS', 4)
  stop()
  computer.down('KeyF', 5)
  expect(inShort(heard)).toBe('down57@1 down60@2 up57@3 up60@3 down59@4 up59@4')
})

test('moving the base lets go of what is down', () => {
  const { computer, keys, heard } = setUp()
  computer.down('KeyA', 1)
  keys.place(key(60))
  computer.up('KeyA', 2)
  computer.down('KeyA', 3)
  expect(inShort(heard)).toBe('down57@1 up57@1 down60@3')
})
